import { notAboveZero } from '../../../working/guard.ts'
import type { Source } from '../../../working/source.ts'
import { unknown, type Worked } from '../../../working/worked.ts'
import { bendMultiple } from '../../bend-multiple.ts'

const WELDED: Source = { standard: 'EN 1992-1-1:2004', clause: 'Table 8.1N b)', status: 'from memory' }

export interface WeldedBendInput {
  /** mm */
  readonly diameter: number
  /** From the start of the bend to the nearest weld, mm; 0 for a weld in the bend. */
  readonly weldAway: number
}

/**
 * Least mandrel diameter of a bar or mesh that is bent after welding, mm. The rule for bars without welds holds beside it.
 *
 * Unknown where the distance of the weld is missing. Example: 10 mm, weld 30 mm away: 50 mm; 29 mm away: 200 mm.
 */
export function leastBendWelded({ diameter, weldAway }: WeldedBendInput): Worked<number> {
  const gaps = notAboveZero({ diameter })
  if (gaps.length > 0) return { known: false, gaps }
  if (!(weldAway >= 0 && Number.isFinite(weldAway))) return unknown('weldAway: a number not below 0')
  const far = weldAway >= 3 * diameter * (1 - 1e-9)
  return bendMultiple({
    diameter,
    times: far ? 5 : 20,
    source: WELDED,
    note: far ? 'weld 3 diameters or more from the bend' : 'weld in the bend or nearer than 3 diameters',
  })
}
