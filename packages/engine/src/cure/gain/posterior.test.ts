import { describe, expect, it } from 'vitest'
import { curveLawAfter, laterTests, takeIn } from './posterior.ts'
import type { StrengthPrior } from './strength-prior.ts'

/** ln strength flat in age at 3.5 ± 0.3, a test scatters by 0.1. */
const FLAT: StrengthPrior = {
  law: (days) => ({
    mean: new Float64Array(days.length).fill(3.5),
    covariance: new Float64Array(days.length ** 2).fill(0.09),
  }),
  scatter: 0.1,
  widen: 1,
  from: 1,
  to: 365,
  restsOn: 'a level',
  source: { standard: 'test', clause: '', status: 'computed' },
}
const at = (days: number, ln: number) => ({ days, strength: Math.exp(ln) })

describe('tests taken into what was thought before', () => {
  it('is the mean weighed by both variances, computed by hand for one test', () => {
    const test = [at(3, 3.7)]
    const [law] = laterTests(FLAT, takeIn(FLAT, test), [28])
    // Weight of the test: 0.09 / (0.09 + 0.01) = 0.9; curve 0.09 · 0.1 = 0.009; later test + 0.01.
    expect(law?.mean).toBeCloseTo(3.5 + 0.9 * 0.2, 12)
    expect(law?.deviation).toBeCloseTo(Math.sqrt(0.019), 12)
  })

  it('is what was thought before where there are no tests', () => {
    const [law] = laterTests(FLAT, takeIn(FLAT, []), [28])
    expect([law?.mean, law?.deviation]).toEqual([3.5, Math.sqrt(0.09 + 0.01)])
  })

  it('does not depend on the order of tests', () => {
    const tests = [at(1, 3.2), at(3, 3.4), at(7, 3.45), at(7, 5)]
    const [one] = laterTests(FLAT, takeIn(FLAT, tests), [28])
    const [other] = laterTests(FLAT, takeIn(FLAT, tests.toReversed()), [28])
    expect(other?.mean).toBeCloseTo(one?.mean ?? Number.NaN, 10)
    expect(other?.deviation).toBeCloseTo(one?.deviation ?? Number.NaN, 10)
  })

  it('counts a repeated row once', () => {
    const taken = takeIn(FLAT, [at(3, 3.7), at(3, 3.7), at(3, 3.6)])
    expect(taken.repeats).toBe(1)
    expect(taken.tests).toHaveLength(2)
  })

  it('gives a slipped result less weight the farther off it is, and names it', () => {
    const others = [at(1, 3.6), at(3, 3.62), at(7, 3.58)]
    const clean = laterTests(FLAT, takeIn(FLAT, others), [28])[0]?.mean ?? Number.NaN
    const pulled = [2.9, 2, 0.5].map((ln) => {
      const taken = takeIn(FLAT, [...others, at(14, ln)])
      expect(taken.slipped).toEqual([3])
      expect(taken.stretch).toBe(1)
      return Math.abs((laterTests(FLAT, taken, [28])[0]?.mean ?? Number.NaN) - clean)
    })
    expect(pulled[0]).toBeLessThan(0.1)
    expect(pulled[1]).toBeLessThan(pulled[0] ?? 0)
    expect(pulled[2]).toBeLessThan(pulled[1] ?? 0)
  })

  it('keeps the weight of a lone test that is a surprise, and widens the band instead', () => {
    const taken = takeIn(FLAT, [at(3, 1.5)])
    // 2 / √0.1 = 6.32 deviations, of which three are taken as fitting.
    expect(taken.slipped).toEqual([])
    expect(taken.stretch).toBeCloseTo(2 / Math.sqrt(0.1) / 3, 9)
    const [law] = laterTests(FLAT, taken, [28])
    expect(law?.mean).toBeCloseTo(3.5 - 0.9 * 2, 9)
    expect(law?.deviation).toBeCloseTo(taken.stretch * Math.sqrt(0.019), 9)
  })

  it('gives up at most half of the tests', () => {
    const taken = takeIn(FLAT, [at(1, 3.5), at(3, 3.52), at(5, 1), at(7, 5.5), at(9, 0.2)])
    expect(taken.slipped.length).toBeLessThanOrEqual(2)
  })

  it('gives a law of several ages whose diagonal is that of each alone', () => {
    const taken = takeIn(FLAT, [at(3, 3.7)])
    const { mean, covariance } = curveLawAfter(FLAT, taken, [7, 28])
    expect(mean[0]).toBeCloseTo(mean[1] ?? 0, 12)
    expect(covariance[1]).toBeCloseTo(0.009, 12)
    expect(covariance[0]).toBeCloseTo(0.009, 12)
  })
})
