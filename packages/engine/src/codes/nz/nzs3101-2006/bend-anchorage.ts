import type { Source } from '../../../working/source.ts'
import { known, type Worked } from '../../../working/worked.ts'
import { type HookAnchorageInput, hookGaps } from '../../hook-anchorage.ts'
import { RANGE } from './lap.ts'

const HOOK: Source = { standard: 'NZS 3101:2006', clause: '8.6', status: 'from memory' }

/**
 * Development of a standard hook in tension, from the critical section to the outside of the hook, mm; without credit for ties that confine it
 * or for spare steel.
 *
 * Unknown outside the ranges of the straight bar. Example: HD12, 500 MPa in 30 MPa, well covered: 184.0 mm.
 */
export function hookAnchorage(input: HookAnchorageInput): Worked<number> {
  const gaps = hookGaps(input, RANGE)
  if (gaps.length > 0) return { known: false, gaps }
  const { diameter: db, yield: fy, concrete: fc, sideCover, tailCover } = input
  const covered = db <= 32 && sideCover >= 60 && tailCover >= 40
  const α1 = covered ? 0.7 : 1
  const length = Math.max((0.24 * α1 * fy * db) / Math.sqrt(Math.min(fc, 70)), 8 * db)
  return known(length, [
    {
      symbol: 'Ldh',
      formula: 'max(0.24 · α1 · fy · db / √(min(fc, 70)), 8 · db)',
      given: { α1, fy, db, fc },
      result: length,
      unit: 'mm',
      source: HOOK,
      note: covered ? 'side cover 60, tail cover 40 mm or more' : 'no credit for side and tail cover',
    },
  ])
}
