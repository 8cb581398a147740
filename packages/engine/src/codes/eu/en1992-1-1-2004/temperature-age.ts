import type { Source } from '../../../working/source.ts'

export const TEMPERATURE_AGE_SOURCE: Source = {
  standard: 'EN 1992-1-1:2004',
  clause: 'B.1(3), Eq. (B.10)',
  status: 'from memory',
}

/**
 * Hours of age at 20 °C gained in one hour at a temperature, °C; NaN outside the 0 to 80 °C of the clause. At 20 °C it is
 * 0.9981 and not 1: the clause rounds its constant.
 *
 * Source: EN 1992-1-1:2004, Eq. (B.10) (from memory). Example: 40 °C: 2.388.
 */
export function ageFactorEn1992(celsius: number): number {
  if (!(celsius >= 0 && celsius <= 80)) return Number.NaN
  return Math.exp(-(4000 / (273 + celsius) - 13.65))
}
