import type { Source } from '../../../working/source.ts'

export const STRENGTH_DEVELOPMENT_SOURCE: Source = {
  standard: 'EN 1992-1-1:2004',
  clause: '3.1.2(6), Eq. (3.1) and (3.2)',
  status: 'seen',
}

/** Youngest age at which the curve is read here, days at 20 °C: earlier its shape means nothing. */
export const DEVELOPMENT_FROM_DAYS = 0.5

/**
 * Mean strength at an age as a share of that at 28 days. `days`: age at 20 °C, not clock age of a heated bed; `s` by
 * cement: 0.20 class R, 0.25 class N, 0.38 class S.
 *
 * Source: EN 1992-1-1:2004, 3.1.2(6) (seen). Example: 1 day, s 0.20: 0.4239.
 */
export function strengthDevelopment(days: number, s: number): number {
  return Math.exp(s * (1 - Math.sqrt(28 / days)))
}

/** Age, days, at which that share is reached. Infinity where it never is. */
export function developmentAge(share: number, s: number): number {
  const root = 1 - Math.log(share) / s
  return root > 0 ? 28 / root ** 2 : Number.POSITIVE_INFINITY
}
