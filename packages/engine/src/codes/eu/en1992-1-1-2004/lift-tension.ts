import { notAboveZero } from '../../../working/guard.ts'
import type { Source } from '../../../working/source.ts'
import { known, unknown, type Worked } from '../../../working/worked.ts'

const FLEXURAL: Source = { standard: 'EN 1992-1-1:2004', clause: '3.1.8(1)', status: 'from memory' }
const DESIGN: Source = { standard: 'EN 1992-1-1:2004', clause: '3.1.6(2)', status: 'from memory' }

/**
 * Design flexural tension of the concrete at the hour of the lift: MPa. Mean flexural strength by depth, 0.7 of it
 * (5 % fractile) over 1.5.
 *
 * `strength`: cylinder strength at that hour, MPa; above 0 and at most 50, beyond which the clause's formula for the mean changes: unknown.
 * `thickness`: mm, above 0.
 *
 * Source: EN 1992-1-1:2004, 3.1.8 and 3.1.6 (from memory).
 * Example: 15 MPa, 150 mm: f_ctm,fl = 2.646, design 1.235 MPa.
 */
export function liftTension({
  strength,
  thickness,
}: {
  readonly strength: number
  readonly thickness: number
}): Worked<number> {
  const gaps = notAboveZero({ strength, thickness })
  if (gaps.length > 0) return unknown(...gaps)
  if (strength > 50) return unknown(`strength: at most 50 MPa for this formula, found ${strength}`)
  const mean = 0.3 * strength ** (2 / 3)
  const flexural = Math.max(1.6 - thickness / 1000, 1) * mean
  const design = (0.7 * flexural) / 1.5
  return known(design, [
    {
      symbol: 'fctm',
      formula: '0.30 f^(2/3)',
      given: { f: strength },
      result: mean,
      unit: 'MPa',
      source: { ...FLEXURAL, clause: 'Table 3.1' },
    },
    {
      symbol: 'fctm,fl',
      formula: 'max(1.6 − t / 1000, 1) fctm',
      given: { t: thickness, fctm: mean },
      result: flexural,
      unit: 'MPa',
      source: FLEXURAL,
    },
    {
      symbol: 'fctd,fl',
      formula: '0.7 fm / 1.5',
      given: { fm: flexural },
      result: design,
      unit: 'MPa',
      source: DESIGN,
    },
  ])
}
