import { BAND_DEVIATE, type StrengthModel } from '../strength-model.ts'
import { normalBelow } from './normal.ts'
import type { PourModel } from './pour-model.ts'

/**
 * Probability that one later test at an age, h, reaches a strength, MPa. By the model's own law where it has one, else by
 * the normal law of its band. Null outside its ages, without a band, or for a strength that is not above 0.
 */
export function chanceMet(model: StrengthModel | PourModel, age: number, wanted: number): number | null {
  if (!(wanted > 0)) return null
  if ('chance' in model) return model.chance(age, wanted)
  const [strength, band] = [model.strength(age), model.band(age)]
  if (strength === null || band === null) return null
  const deviation = (band.high - strength) / BAND_DEVIATE
  if (!(deviation > 0)) return strength >= wanted ? 1 : 0
  return normalBelow((strength - wanted) / deviation)
}

/** First hour at which the probability reaches `wanted`, straight between its hours; null where it never does. */
export function hourAtChance(
  chance: readonly (readonly [hour: number, probability: number])[],
  wanted: number,
): number | null {
  const after = chance.findIndex(([, probability]) => probability >= wanted)
  const [b, a] = [chance[after], chance[after - 1]]
  if (b === undefined) return null
  if (a === undefined || !(b[1] > a[1])) return b[0]
  return a[0] + ((wanted - a[1]) / (b[1] - a[1])) * (b[0] - a[0])
}
