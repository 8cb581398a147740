import { describe, expect, it } from 'vitest'
import type { AgeMethod } from './age-method.ts'
import type { Reading } from './readings.ts'
import { strengthFromLog, strengthNow } from './strength-from-log.ts'
import { strengthModel } from './strength-model.ts'

const METHOD: AgeMethod = { kind: 'arrhenius', reference: 20, activation: 40_000 }
const CURVE = { form: 'hyperbolic', ultimate: 55, rate: 0.036, offset: 4 } as const
const DAY: Reading[] = [
  [0, 20],
  [24, 20],
]
/** 55 · 0.036 · 20 / (1 + 0.036 · 20), by hand. */
const AT_DAY = 39.6 / 1.72

describe('the strength of a log', () => {
  it('is read from the curve at its equivalent age, with the band of its scatter', () => {
    const found = strengthFromLog({
      readings: DAY,
      source: { curve: CURVE, scatter: 0.1 },
      method: METHOD,
      datum: 0,
    })
    expect(found.maturity).toBe(480)
    expect(found.equivalentAge).toBeCloseTo(24, 10)
    expect(found.strength).toBeCloseTo(AT_DAY, 8)
    expect(found.low).toBeCloseTo(AT_DAY * (1 - 0.164485), 4)
    expect(found.high).toBeCloseTo(AT_DAY * (1 + 0.164485), 4)
    expect(found.unknown).toEqual([])
  })

  it('has no band without scatter: never one of no width', () => {
    const found = strengthFromLog({ readings: DAY, source: { curve: CURVE }, method: METHOD, datum: 0 })
    expect(found).toMatchObject({ low: null, high: null })
    expect(found.strength).not.toBeNull()
    expect(found.unknown).toEqual([expect.stringMatching(/scatter/)])
  })

  it('of ec2 is not known before 12 h, though maturity is', () => {
    const found = strengthFromLog({
      readings: [
        [0, 20],
        [11, 20],
      ],
      source: { curve: { form: 'ec2', mean28: 48, s: 0.2 }, scatter: 0.1 },
      method: METHOD,
      datum: 0,
    })
    expect(found).toMatchObject({ maturity: 220, strength: null, low: null, high: null })
    expect(found.unknown).toEqual([expect.stringMatching(/11 h, only from 12 h on/)])
  })

  it('has a low edge that stays at 0 or above', () => {
    const found = strengthFromLog({
      readings: DAY,
      source: { curve: CURVE, scatter: 0.9 },
      method: METHOD,
      datum: 0,
    })
    expect(found.low).toBe(0)
  })

  it('says that the hours before the first reading count as nothing', () => {
    const found = strengthFromLog({
      readings: [
        [3, 20],
        [24, 20],
      ],
      source: { curve: CURVE },
      method: METHOD,
      datum: 0,
    })
    expect(found.equivalentAge).toBeCloseTo(21, 10)
    expect(found.assumed).toEqual([expect.objectContaining({ field: 'readings', value: 3 })])
  })

  it.each([0, -0.1, 1.1, Number.NaN])('is not known with a scatter of %s', (scatter) => {
    expect(strengthModel({ source: { curve: CURVE, scatter }, method: METHOD }).known).toBe(false)
  })

  it('is not known of a mix that has neither curve nor tests, or an impossible curve', () => {
    expect(strengthModel({ source: {}, method: METHOD }).known).toBe(false)
    expect(strengthModel({ source: { curve: { ...CURVE, rate: 0 } }, method: METHOD }).known).toBe(false)
    expect(strengthModel({ source: { curve: { ...CURVE, offset: -1 } }, method: METHOD }).known).toBe(false)
  })
})

const TESTS = [
  { age: 12, strength: 11.1 },
  { age: 18, strength: 18.6 },
  { age: 24, strength: 22.5 },
  { age: 48, strength: 34.3 },
  { age: 72, strength: 38.6 },
  { age: 168, strength: 47.4 },
]

describe('a mix known by its tests', () => {
  const model = strengthModel({ source: { tests: TESTS }, method: METHOD })
  const known = model.known ? model.value : null

  it('gives strength and band between its tests', () => {
    const [strength, band] = [known?.strength(24) ?? 0, known?.band(24)]
    expect(Math.abs(strength - 22.7)).toBeLessThan(1)
    expect(band?.low).toBeLessThan(strength)
    expect(band?.high).toBeGreaterThan(strength)
  })

  it('says nothing outside the ages of its tests', () => {
    expect(known?.strength(11.9)).toBeNull()
    expect(known?.strength(12)).not.toBeNull()
    expect(known?.strength(168)).not.toBeNull()
    expect(known?.strength(168.1)).toBeNull()
    expect(known?.band(11.9)).toBeNull()
  })

  it('lists the temperature of the tests as assumed where they give none', () => {
    expect(model.assumed).toEqual([expect.objectContaining({ field: 'tests[].temperature', value: 20 })])
  })

  it('brings tests to the reference temperature', () => {
    const warm = strengthModel({
      source: { tests: TESTS.map((test) => ({ ...test, temperature: 30 })) },
      method: METHOD,
    })
    expect(warm.known && warm.value.from).toBeCloseTo(12 * 1.7184, 2)
  })

  it('needs three ages', () => {
    const two = [TESTS[0], TESTS[1], TESTS[1]].flatMap((test) => (test ? [test] : []))
    expect(strengthModel({ source: { tests: two }, method: METHOD }).known).toBe(false)
  })

  it('has a wide band from three tests: one degree is left to scatter', () => {
    const three = strengthModel({ source: { tests: TESTS.slice(0, 3) }, method: METHOD })
    expect(three.known && three.value.band(18)?.low).toBeLessThan(17)
  })

  it('has no band from tests that lie on a curve to the last digit: those were not measured', () => {
    const made = [10, 20, 30, 40, 60].map((age) => ({
      age,
      strength: (55 * 0.036 * (age - 4)) / (1 + 0.036 * (age - 4)),
    }))
    const exact = strengthModel({ source: { tests: made }, method: METHOD })
    expect(exact.known && exact.value.strength(25)).toBeCloseTo((55 * 0.036 * 21) / (1 + 0.036 * 21), 4)
    expect(exact.known && exact.value.band(25)).toBeNull()
    expect(exact.known && exact.value.bandGaps).toHaveLength(1)
  })

  it('takes the wider of its own scatter and the given one', () => {
    const wide = strengthModel({ source: { tests: TESTS, scatter: 0.4 }, method: METHOD })
    expect(wide.known && wide.value.band(24)?.low).toBeLessThan(known?.band(24)?.low ?? 0)
  })

  it.each([
    ['an age of 0', { age: 0, strength: 20 }],
    ['a strength that is none', { age: 24, strength: Number.NaN }],
  ])('is not known with %s', (_, test) => {
    expect(strengthModel({ source: { tests: [...TESTS, test] }, method: METHOD }).known).toBe(false)
  })
})

describe('strength now', () => {
  const mix = { curve: CURVE, scatter: 0.07, reference: 20, activation: 40_000 }

  it('takes the log up to this hour', () => {
    const found = strengthNow({
      mix,
      readings: [
        [0, 20],
        [48, 20],
      ],
      hour: 24,
    })
    expect(found.strength).toBeCloseTo(AT_DAY, 8)
  })

  it('counts to the end of a log that stopped, and says so', () => {
    const found = strengthNow({ mix, readings: DAY, hour: 30 })
    expect(found.strength).toBeCloseTo(AT_DAY, 8)
    expect(found.assumed).toContainEqual(expect.objectContaining({ field: 'readings', value: 24 }))
  })

  it('lists the constants that the mix does not give', () => {
    const { assumed } = strengthNow({ mix: { curve: CURVE }, readings: DAY, hour: 24 })
    expect(assumed.map(({ field }) => field)).toEqual(['reference', 'activation', 'datum'])
  })

  it.each([Number.NaN, -1])('is not known at hour %s', (hour) => {
    const found = strengthNow({ mix, readings: DAY, hour })
    expect(found).toMatchObject({ strength: null, low: null, high: null })
    expect(found.unknown[0]).toMatch(/hour/)
  })

  it('is not known before two readings', () => {
    expect(strengthNow({ mix, readings: [], hour: 5 }).strength).toBeNull()
    expect(strengthNow({ mix, readings: [[0, 20]], hour: 5 }).strength).toBeNull()
  })
})
