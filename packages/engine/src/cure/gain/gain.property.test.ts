import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { SEED } from '../testing.ts'
import { gainOf } from './gain.ts'
import { openMixes } from './open-mixes.ts'

const someTests = fc.array(
  fc.record({
    age: fc.double({ min: 0.01, max: 20_000, noNaN: true }),
    strength: fc.double({ min: 1e-3, max: 250, noNaN: true }),
  }),
  { minLength: 1, maxLength: 6 },
)
const someMix = fc.option(
  fc.nat({ max: openMixes().length - 1 }).map((at) => openMixes()[at]?.proportions),
  { nil: undefined },
)

describe(`gain of any tests (seed ${SEED})`, () => {
  it('is a number inside its band, or unknown with the reason, never half of it', () => {
    fc.assert(
      fc.property(someTests, someMix, fc.double({ min: 0.1, max: 20_000, noNaN: true }), (tests, mix, at) => {
        const { strength, low, high, unknown } = gainOf({ tests, at, ...(mix === undefined ? {} : { mix }) })
        if (unknown.length > 0) {
          expect([strength, low, high]).toEqual([null, null, null])
          return
        }
        expect([strength, low, high].every((each) => each !== null && Number.isFinite(each))).toBe(true)
        expect(low).toBeGreaterThanOrEqual(0)
        expect(low).toBeLessThan(strength ?? Number.NaN)
        expect(strength).toBeLessThan(high ?? Number.NaN)
      }),
      { seed: SEED, numRuns: 60 },
    )
  })

  it('does not depend on the order of tests', () => {
    fc.assert(
      fc.property(someTests, (tests) => {
        const [one, other] = [gainOf({ tests, at: 672 }), gainOf({ tests: tests.toReversed(), at: 672 })]
        expect(Math.log((other.strength ?? 1) / (one.strength ?? 1))).toBeCloseTo(0, 6)
      }),
      { seed: SEED, numRuns: 60 },
    )
  })
})
