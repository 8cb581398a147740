import { describe, expect, it } from 'vitest'
import type { AgeMethod } from '../age-method.ts'
import type { strengthOf } from '../strength-curve.ts'
import { gainOf } from './gain.ts'
import { openMixes } from './open-mixes.ts'
import { pourModel } from './pour-model.ts'
import { strengthPrior } from './prior.ts'

const METHOD: AgeMethod = { kind: 'ec2' }

function modelOf(curve: Parameters<typeof strengthOf>[0]) {
  const prior = strengthPrior({ source: { curve, scatter: 0.08 }, method: METHOD })
  if (!prior.known) throw new Error(prior.gaps.join('; '))
  return pourModel(prior.value, [])
}

describe('the code curve as prior of a pour', () => {
  // EN 1992-1-1:2004, 3.1.2(6), Eq. (3.1) and (3.2): β at 1, 3, 7, 14, 28, 90 days.
  it.each([
    [0.2, [0.4239, 0.663, 0.8187, 0.9205, 1, 1.0925]],
    [0.25, [0.342, 0.5982, 0.7788, 0.9016, 1, 1.1169]],
    [0.38, [0.1958, 0.458, 0.6839, 0.8544, 1, 1.183]],
  ])('has the means of EN 1992-1-1, s %d', (s, betas) => {
    const model = modelOf({ form: 'ec2', mean28: 48, s })
    for (const [at, days] of [1, 3, 7, 14, 28, 90].entries())
      expect(Math.abs((model.strength(days * 24) ?? Number.NaN) / 48 - (betas[at] ?? 0))).toBeLessThan(2e-4)
  })

  // ACI 209R-92, Eq. (2-1): t / (a + b t) of the strength at 28 days, t in days (from memory): a hyperbola with the ultimate
  // strength 1 / b and the rate b / a. Printed in the same place: moist cured type I 0.70 at 7 days; steam cured type III 0.93.
  it.each([
    ['moist, type I', 4, 0.85, 0.2062, 0.7035],
    ['moist, type III', 2.3, 0.92, 0.3106, 0.8009],
    ['steam, type I', 1, 0.95, 0.5128, 0.915],
    ['steam, type III', 0.7, 0.98, 0.5952, 0.9259],
  ])('has those of ACI 209R-92 as a hyperbola: %s', (_, a, b, day1, day7) => {
    const curve = { form: 'hyperbolic', ultimate: 40 / b, rate: b / a / 24, offset: 0 } as const
    const model = modelOf(curve)
    expect((model.strength(24) ?? Number.NaN) / 40).toBeCloseTo(day1, 4)
    expect((model.strength(168) ?? Number.NaN) / 40).toBeCloseTo(day7, 4)
  })
})

describe('strength at 28 days from early tests', () => {
  // Common practice, no source: 1 day over 28 days is 0.35 to 0.5 at 20 °C.
  it('has in its band what is usual from a test at one day', () => {
    const { strength, low, high } = gainOf({ tests: [{ age: 24, strength: 20 }], at: 672 })
    expect(low).toBeLessThan(20 / 0.5 + 2)
    expect(high).toBeGreaterThan(20 / 0.35)
    expect(strength).toBeGreaterThan(20 / 0.5)
  })

  // I-C. Yeh, "Concrete Compressive Strength", UCI Machine Learning Repository, 1998 (CC BY 4.0): a mix of 540 kg/m³ cement and
  // 173 kg/m³ water, 41.64 MPa at 3 days, 52.61 at 7, 67.31 at 28, 69.66 at 90.
  it('holds the later tests of a mix of the data in its band, from those up to 7 days alone', () => {
    const mix = openMixes().find(({ mark }) => mark === 'M427')
    const tests = [
      { age: 72, strength: 41.64 },
      { age: 168, strength: 52.61 },
    ]
    expect(mix?.tests.slice(0, 2).map(({ strength }) => strength)).toEqual([41.64, 52.61])
    for (const [days, found] of [
      [28, 67.31],
      [90, 69.66],
    ] as const) {
      const { low, high } = gainOf({ tests, at: days * 24 })
      expect(low).toBeLessThan(found)
      expect(high).toBeGreaterThan(found)
    }
  })
})
