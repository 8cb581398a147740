import type { Source } from '../../../working/source.ts'

/** Bars as the standard lists them: nominal, not to be worked out from π. Inches, mm² and kg/m. */
export interface UsBar {
  readonly number: number
  readonly inches: number
  readonly area: number
  readonly massPerMetre: number
}

/** Table 1 of ASTM A615/A706; No. 14 and 18: mass from 7.65 and 13.60 lb/ft. */
export const US_BARS: readonly UsBar[] = [
  { number: 3, inches: 0.375, area: 71, massPerMetre: 0.56 },
  { number: 4, inches: 0.5, area: 129, massPerMetre: 0.994 },
  { number: 5, inches: 0.625, area: 199, massPerMetre: 1.552 },
  { number: 6, inches: 0.75, area: 284, massPerMetre: 2.235 },
  { number: 7, inches: 0.875, area: 387, massPerMetre: 3.042 },
  { number: 8, inches: 1, area: 510, massPerMetre: 3.973 },
  { number: 9, inches: 1.128, area: 645, massPerMetre: 5.06 },
  { number: 10, inches: 1.27, area: 819, massPerMetre: 6.404 },
  { number: 11, inches: 1.41, area: 1006, massPerMetre: 7.907 },
  { number: 14, inches: 1.693, area: 1452, massPerMetre: 11.38 },
  { number: 18, inches: 2.257, area: 2581, massPerMetre: 20.24 },
]

export const BAR_TABLE: Source = { standard: 'ASTM A706/A706M-16', clause: 'Table 1', status: 'seen' }

/** A drawing in mm may call a bar by its soft-metric size: 25 for a No. 8 of 25.4 mm. */
const MATCH = 0.5

/** The bar whose diameter is within half a millimetre, or null. */
export function usBar(diameter: number): UsBar | null {
  return US_BARS.find((bar) => Math.abs(bar.inches * 25.4 - diameter) <= MATCH + 1e-9) ?? null
}
