import type { CoverTolerance } from '../../mould-rules.ts'

/**
 * Class 1: under the drawn cover by Δc,dev, 10 mm unless the drawing says less; over it by a value that grows with the
 * thickness, straight between 150, 400 and 2500 mm.
 *
 * Null where the thickness is not a size.
 */
export function coverTolerance({ thickness }: { readonly thickness: number }): CoverTolerance {
  return {
    below: 10,
    above: thickness > 0 && Number.isFinite(thickness) ? plus(thickness) : null,
    source: { standard: 'EN 13670:2009', clause: 'Figure 4, class 1', status: 'from memory' },
  }
}

function plus(thickness: number): number {
  if (thickness <= 150) return 10
  if (thickness <= 400) return 10 + (5 * (thickness - 150)) / 250
  if (thickness <= 2500) return 15 + (5 * (thickness - 400)) / 2100
  return 20
}
