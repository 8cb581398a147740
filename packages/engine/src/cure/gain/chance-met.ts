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
