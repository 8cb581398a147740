import { OPEN_TESTS } from './aged-strength.ts'
import { readAge } from './covariance.ts'
import { POPULATION, WIDEN } from './learned.ts'
import type { Gaussian } from './open-process.ts'
import type { StrengthPrior } from './strength-prior.ts'

/** Numbers of the law of ln strength over all mixes: `mean + slope · growth`, each with its deviation. Pure numbers. */
export interface Population {
  /** ln MPa at 28 days, and its deviation among mixes. */
  readonly mean: number
  readonly level: number
  /** Mean slope over `1 − √(28 / days)`, its deviation, and its correlation with the level. */
  readonly slopeMean: number
  readonly slope: number
  readonly turn: number
  /** Deviation of a mix's curve from that straight line, and its reach in ln age. */
  readonly bend: number
  readonly bendReach: number
  /** One test about its mix's curve. */
  readonly test: number
}

/** Law of ln strength of any concrete of which nothing is known, at some ages, days. */
export function populationLaw(days: readonly number[], by: Population = POPULATION): Gaussian {
  const ages = days.map(readAge)
  const mean = Float64Array.from(ages, ({ growth }) => by.mean + by.slopeMean * growth)
  const covariance = Float64Array.from(
    ages.flatMap((a) =>
      ages.map(
        (b) =>
          by.level ** 2 + by.turn * by.level * by.slope * (a.growth + b.growth) + shapeCovariance(a, b, by),
      ),
    ),
  )
  return { mean, covariance }
}

/** Covariance of the shape alone: what differs from the mean curve with the level at 28 days left out. */
export function shapeCovariance(
  a: ReturnType<typeof readAge>,
  b: ReturnType<typeof readAge>,
  by: Pick<Population, 'slope' | 'bend' | 'bendReach'> = POPULATION,
): number {
  const near = Math.exp(-(((a.ln - b.ln) / by.bendReach) ** 2) / 2)
  return by.slope ** 2 * a.growth * b.growth + by.bend ** 2 * near
}

/** What the open tests say of a mix of which only early tests are known. */
export const POPULATION_PRIOR: StrengthPrior = {
  law: (days) => populationLaw(days),
  scatter: POPULATION.test,
  widen: WIDEN.withoutMix,
  from: 1,
  to: 365,
  restsOn: 'open tests of 339 mixes, whatever their proportions',
  source: OPEN_TESTS,
}
