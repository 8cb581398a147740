import type { Step } from '../../working/worked.ts'
import { BAND_DEVIATE, type StrengthModel } from '../strength-model.ts'
import type { AgedStrength } from './aged-strength.ts'
import { normalBelow } from './normal.ts'
import { laterTests, type Posterior, takeIn } from './posterior.ts'
import type { StrengthPrior } from './strength-prior.ts'

/** A pour ready to be asked. The strength is the median of one later test, MPa; ages in h at the reference temperature. */
export interface PourModel extends StrengthModel {
  /** Probability that one later test at an age reaches a strength; null outside the ages. */
  readonly chance: (age: number, wanted: number) => number | null
  /** Places of the cylinders that are too high to fit, and count for less. */
  readonly slipped: readonly number[]
  /** Places of those that do not fit and count all the same, with a wider band: find out why. */
  readonly kept: readonly number[]
  readonly restsOn: string
}

/**
 * The prior brought up to date by cylinders of the pour itself: what the band rests on from then on. With the cylinders
 * ages are those of the panel's log, or of their own. A cylinder too high to fit counts for less; one too low counts as it is.
 */
export function pourModel(prior: StrengthPrior, cylinders: readonly AgedStrength[]): PourModel {
  const taken = takeIn(prior, cylinders, { keepLow: true })
  const ages = cylinders.map(({ days }) => days)
  const [from, to] = [Math.min(prior.from, ...ages) * 24, Math.max(prior.to, ...ages) * 24]
  const placeOf = (place: number) => cylinders.indexOf(taken.tests[place] as AgedStrength)
  // Strength, band and chance of one age are asked one after the other: its law is found once.
  let last: { readonly age: number; readonly law: Posterior | null } | null = null
  const law = (age: number): Posterior | null => {
    if (last?.age === age) return last.law
    const inside = age >= from * (1 - 1e-12) && age <= to * (1 + 1e-12)
    const found = inside ? (laterTests(prior, taken, [age / 24])[0] ?? null) : null
    last = { age, law: found }
    return found
  }
  const strength = (age: number) => {
    const found = law(age)
    return found === null ? null : Math.exp(found.mean)
  }
  const band = (age: number) => {
    const found = law(age)
    if (found === null) return null
    const half = BAND_DEVIATE * found.deviation
    return { low: Math.exp(found.mean - half), high: Math.exp(found.mean + half) }
  }
  const steps = (age: number, edge: -1 | 0 | 1): Step[] => {
    const found = law(age)
    if (found === null) return []
    const { mean, deviation } = found
    const formula = edge === 0 ? 'exp(μ)' : edge < 0 ? 'exp(μ − z σ)' : 'exp(μ + z σ)'
    const given = edge === 0 ? { μ: mean } : { μ: mean, σ: deviation, z: BAND_DEVIATE }
    return [
      {
        symbol: edge === 0 ? 'S' : edge < 0 ? 'Slow' : 'Shigh',
        formula,
        given,
        result: Math.exp(mean + edge * BAND_DEVIATE * deviation),
        unit: 'MPa',
        source: prior.source,
        note: restsOn,
      },
    ]
  }
  const restsOn =
    cylinders.length === 0
      ? prior.restsOn
      : `${cylinders.length} ${cylinders.length === 1 ? 'cylinder' : 'cylinders'} of this pour; ${prior.restsOn}`
  return {
    curve: null,
    from,
    to,
    strength,
    band,
    bandGaps: [],
    share: null,
    steps: (age) => steps(age, 0),
    bandSteps: (age) => [...steps(age, -1), ...steps(age, 1)],
    chance: (age, wanted) => {
      const found = law(age)
      if (found === null || !(wanted > 0)) return null
      return normalBelow((found.mean - Math.log(wanted)) / found.deviation)
    },
    slipped: taken.slipped.map(placeOf),
    kept: taken.kept.map(placeOf),
    restsOn,
  }
}
