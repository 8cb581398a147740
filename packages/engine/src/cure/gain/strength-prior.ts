import type { Source } from '../../working/source.ts'
import type { Gaussian } from './open-process.ts'

/**
 * What is thought of a mix's strength before it is tested: a joint normal law of ln strength (MPa) at any ages, days at the
 * reference temperature.
 */
export interface StrengthPrior {
  readonly law: (days: readonly number[]) => Gaussian
  /** Standard deviation of one test about the curve, ln strength. */
  readonly scatter: number
  /** Factor on the deviation of a later test, so that a 90 % band held 90 % of what was held out; 1 where it was not needed. */
  readonly widen: number
  /** Ages between which the prior has something to go by, days. */
  readonly from: number
  readonly to: number
  /** In words: what it rests on. */
  readonly restsOn: string
  readonly source: Source
}
