import type { CoverTolerance } from '../../mould-rules.ts'

const INCH = 25.4

/**
 * Under the drawn cover: 3/8 in where the section is up to 8 in deep, 1/2 in above, never more than a third of the cover. What
 * may be over it follows from the effective depth and is not said here.
 *
 * Null where thickness or cover is not a size.
 */
export function coverTolerance({
  thickness,
  cover,
}: {
  readonly thickness: number
  readonly cover: number
}): CoverTolerance {
  const sized = thickness > 0 && cover > 0 && Number.isFinite(thickness) && Number.isFinite(cover)
  const depthShare = thickness <= 8 * INCH ? (3 / 8) * INCH : INCH / 2
  return {
    below: sized ? Math.min(depthShare, cover / 3) : null,
    above: null,
    source: { standard: 'ACI 318-19 / ACI 117-10', clause: '26.6.2', status: 'from memory' },
  }
}
