import {
  DEVELOPMENT_FROM_DAYS,
  developmentAge,
  STRENGTH_DEVELOPMENT_SOURCE,
  strengthDevelopment,
} from '../codes/eu/en1992-1-1-2004/strength-development.ts'
import type { Source } from '../working/source.ts'
import type { Step } from '../working/worked.ts'
import type { StrengthCurve } from '../yard/yard.ts'

const FORM_SOURCE: Record<StrengthCurve['form'], Source> = {
  hyperbolic: {
    standard: 'ASTM C1074, edition not noted',
    clause: 'strength-maturity function, hyperbolic',
    status: 'from memory',
  },
  exponential: {
    standard: 'Freiesleben Hansen and Pedersen 1977',
    clause: 'three-parameter exponential',
    status: 'from memory',
  },
  ec2: STRENGTH_DEVELOPMENT_SOURCE,
}

/** Age from which a curve says anything, h at its reference temperature. */
export function curveFrom(curve: StrengthCurve): number {
  return curve.form === 'ec2' ? DEVELOPMENT_FROM_DAYS * 24 : 0
}

/** Mean strength at an equivalent age, h: MPa; null before the curve says anything. The bare arithmetic. */
export function strengthOf(curve: StrengthCurve, age: number): number | null {
  if (!(age >= curveFrom(curve)) || !Number.isFinite(age)) return null
  switch (curve.form) {
    case 'hyperbolic': {
      const after = Math.max(age - curve.offset, 0)
      return (curve.ultimate * curve.rate * after) / (1 + curve.rate * after)
    }
    case 'exponential':
      return age === 0 ? 0 : curve.ultimate * Math.exp(-((curve.tau / age) ** curve.shape))
    case 'ec2':
      return curve.mean28 * strengthDevelopment(age / 24, curve.s)
  }
}

/**
 * Equivalent age, h, at which a curve first reaches a strength, MPa; null where it never does. A strength that the curve
 * has passed before it says anything is met at the age from which it does.
 */
export function ageAtStrength(curve: StrengthCurve, strength: number): number | null {
  if (!(strength > 0) || !Number.isFinite(strength)) return null
  const age = inverse(curve, strength)
  return Number.isFinite(age) ? Math.max(age, curveFrom(curve)) : null
}

function inverse(curve: StrengthCurve, strength: number): number {
  switch (curve.form) {
    case 'hyperbolic':
      return strength < curve.ultimate
        ? curve.offset + strength / (curve.rate * (curve.ultimate - strength))
        : Number.POSITIVE_INFINITY
    case 'exponential':
      return strength < curve.ultimate
        ? curve.tau / Math.log(curve.ultimate / strength) ** (1 / curve.shape)
        : Number.POSITIVE_INFINITY
    case 'ec2':
      return 24 * developmentAge(strength / curve.mean28, curve.s)
  }
}

/** The step that shows how a strength was read from the curve at an age. */
export function strengthStep(curve: StrengthCurve, age: number, strength: number): Step {
  const base = { symbol: 'S', result: strength, unit: 'MPa', source: FORM_SOURCE[curve.form] }
  switch (curve.form) {
    case 'hyperbolic':
      return {
        ...base,
        formula: 'Su k max(te − t0, 0) / (1 + k max(te − t0, 0))',
        given: { Su: curve.ultimate, k: curve.rate, te: age, t0: curve.offset },
      }
    case 'exponential':
      return age === 0
        ? { ...base, formula: '0 Su', given: { Su: curve.ultimate }, note: 'no age, no strength' }
        : {
            ...base,
            formula: 'Su exp(−(τ / te)^a)',
            given: { Su: curve.ultimate, τ: curve.tau, te: age, a: curve.shape },
          }
    case 'ec2':
      return {
        ...base,
        formula: 'fcm exp(s · (1 − √(28 · 24 / te)))',
        given: { fcm: curve.mean28, s: curve.s, te: age },
      }
  }
}

/** The step that shows at which age the curve reaches a strength; `age` as `ageAtStrength` gave it. */
export function ageStep(curve: StrengthCurve, strength: number, age: number): Step {
  const base = { symbol: 'te', result: age, unit: 'h', source: FORM_SOURCE[curve.form] }
  switch (curve.form) {
    case 'hyperbolic':
      return {
        ...base,
        formula: 't0 + S / (k (Su − S))',
        given: { t0: curve.offset, S: strength, k: curve.rate, Su: curve.ultimate },
      }
    case 'exponential':
      return {
        ...base,
        formula: 'τ / ln(Su / S)^(1 / a)',
        given: { τ: curve.tau, Su: curve.ultimate, S: strength, a: curve.shape },
      }
    case 'ec2':
      return {
        ...base,
        formula: 'max(24 · 28 / (1 − ln(S / fcm) / s)², 12)',
        given: { S: strength, fcm: curve.mean28, s: curve.s },
        note: 'not read below 12 h',
      }
  }
}
