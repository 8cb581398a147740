import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type AgeMethod, ageRate, GAS_CONSTANT, ICE_POINT } from './age-method.ts'
import { ageOf, equivalentAge } from './equivalent-age.ts'
import type { Reading } from './readings.ts'
import { readingsUntil } from './readings.ts'
import { SEED, someReadings } from './testing.ts'

const ARRHENIUS: AgeMethod = { kind: 'arrhenius', reference: 20, activation: 40_000 }
const METHODS: AgeMethod[] = [ARRHENIUS, { kind: 'nurse-saul', reference: 20, datum: -5 }, { kind: 'ec2' }]

describe('equivalent age', () => {
  it('is the clock at the reference temperature', () => {
    const day: Reading[] = [
      [0, 20],
      [24, 20],
    ]
    expect(ageOf(day, ARRHENIUS)).toBeCloseTo(24, 12)
    expect(ageOf(day, { kind: 'nurse-saul', reference: 20, datum: -10 })).toBeCloseTo(24, 12)
  })

  it('is the integral of the rate, not the rate of the mean', () => {
    // Simpson's rule on 20 000 parts as the second method.
    const [from, to] = [5, 65]
    const parts = 20_000
    let sum = 0
    for (let i = 0; i <= parts; i += 1) {
      const weight = i === 0 || i === parts ? 1 : i % 2 === 1 ? 4 : 2
      sum += weight * ageRate(ARRHENIUS, from + ((to - from) * i) / parts)
    }
    const simpson = (sum * 10) / parts / 3
    const found = ageOf(
      [
        [0, from],
        [10, to],
      ],
      ARRHENIUS,
    )
    expect(Math.abs(found / simpson - 1)).toBeLessThan(1e-10)
    expect(found).toBeGreaterThan(10 * ageRate(ARRHENIUS, (from + to) / 2))
  })

  it('knows no age where the clause says nothing: 0 and 80 °C are its edges', () => {
    const at = (celsius: number) =>
      equivalentAge({
        readings: [
          [0, celsius],
          [1, celsius],
        ],
        method: { kind: 'ec2' },
      })
    expect(at(0).known).toBe(true)
    expect(at(80).known).toBe(true)
    expect(at(-0.01)).toMatchObject({ known: false, gaps: [expect.stringMatching(/readings\[0\].*0 to 80/)] })
    expect(at(80.01).known).toBe(false)
  })

  it.each([
    ['an activation energy of 0', { kind: 'arrhenius', reference: 20, activation: 0 }],
    ['a reference that is none', { kind: 'arrhenius', reference: Number.NaN, activation: 40_000 }],
    ['a reference below absolute zero', { kind: 'arrhenius', reference: -300, activation: 40_000 }],
    ['a datum at the reference', { kind: 'nurse-saul', reference: 20, datum: 20 }],
  ] as [string, AgeMethod][])('is not known with %s', (_, method) => {
    expect(
      equivalentAge({
        readings: [
          [0, 20],
          [1, 20],
        ],
        method,
      }).known,
    ).toBe(false)
  })

  it('takes the gas constant and the ice point as its docs say', () => {
    expect([GAS_CONSTANT, ICE_POINT]).toEqual([8.314, 273.15])
  })

  it(`adds up over a log split anywhere, by every method (seed ${SEED})`, () => {
    fc.assert(
      fc.property(
        someReadings,
        fc.constantFrom(...METHODS),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        (readings, method, share) => {
          const [first, last] = [readings[0]?.[0] ?? 0, readings.at(-1)?.[0] ?? 0]
          const head = readingsUntil(readings, first + share * (last - first))
          const at = head.at(-1) as Reading
          const tail = [at, ...readings.filter(([hour]) => hour > at[0])]
          const parts =
            (head.length > 1 ? ageOf(head, method) : 0) + (tail.length > 1 ? ageOf(tail, method) : 0)
          const whole = ageOf(readings, method)
          expect(Math.abs(parts - whole)).toBeLessThan(1e-8 * (1 + whole))
        },
      ),
      { seed: SEED },
    )
  })

  it(`grows with every reading that is warmer (seed ${SEED})`, () => {
    fc.assert(
      fc.property(
        someReadings,
        fc.constantFrom(...METHODS),
        fc.nat(),
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        (readings, method, pick, more) => {
          const warmer = readings.map(
            ([hour, celsius], index): Reading => [
              hour,
              celsius + (index === pick % readings.length ? more : 0),
            ],
          )
          expect(ageOf(warmer, method)).toBeGreaterThan(ageOf(readings, method))
        },
      ),
      { seed: SEED },
    )
  })
})
