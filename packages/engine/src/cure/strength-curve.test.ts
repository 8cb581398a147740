import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { StrengthCurve } from '../yard/yard.ts'
import { ageAtStrength, strengthOf } from './strength-curve.ts'
import { SEED } from './testing.ts'

const HYPERBOLIC: StrengthCurve = { form: 'hyperbolic', ultimate: 55, rate: 0.036, offset: 4 }
const EXPONENTIAL: StrengthCurve = { form: 'exponential', ultimate: 60, tau: 20, shape: 0.9 }
const EC2: StrengthCurve = { form: 'ec2', mean28: 48, s: 0.2 }

describe('a strength curve', () => {
  it('gives nothing before it sets', () => {
    expect(strengthOf(HYPERBOLIC, 0)).toBe(0)
    expect(strengthOf(HYPERBOLIC, 4)).toBe(0)
    expect(strengthOf(HYPERBOLIC, 4.001)).toBeGreaterThan(0)
    expect(strengthOf(EXPONENTIAL, 0)).toBe(0)
  })

  it('of ec2 takes hours as days and says nothing below 12 h', () => {
    expect(strengthOf(EC2, 28 * 24)).toBeCloseTo(48, 12)
    expect(strengthOf(EC2, 12)).toBeCloseTo(48 * 0.2734, 2)
    expect(strengthOf(EC2, 11.999)).toBeNull()
  })

  it('never reaches its ultimate strength', () => {
    expect(ageAtStrength(HYPERBOLIC, 55)).toBeNull()
    expect(ageAtStrength(EXPONENTIAL, 60)).toBeNull()
    // exp(s) times the strength at 28 days is where the curve of ec2 ends.
    expect(ageAtStrength(EC2, 48 * Math.exp(0.2) * 0.999)).not.toBeNull()
    expect(ageAtStrength(EC2, 48 * Math.exp(0.2))).toBeNull()
  })

  it('that has passed a strength before it says anything meets it when it does', () => {
    expect(ageAtStrength(EC2, 5)).toBe(12)
  })

  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('has no age for a strength of %s', (strength) => {
    expect(ageAtStrength(HYPERBOLIC, strength)).toBeNull()
  })

  it.each([-1, Number.NaN, Number.POSITIVE_INFINITY])('has no strength at an age of %s', (age) => {
    for (const curve of [HYPERBOLIC, EXPONENTIAL, EC2]) expect(strengthOf(curve, age)).toBeNull()
  })

  it(`meets a strength at the age that has it (seed ${SEED})`, () => {
    fc.assert(
      fc.property(
        fc.constantFrom(HYPERBOLIC, EXPONENTIAL, EC2),
        fc.double({ min: 14, max: 50, noNaN: true }),
        (curve, strength) => {
          const age = ageAtStrength(curve, strength)
          expect(strengthOf(curve, age ?? Number.NaN)).toBeCloseTo(strength, 8)
        },
      ),
      { seed: SEED },
    )
  })
})
