import { notAboveZero } from '../../../working/guard.ts'
import type { Source } from '../../../working/source.ts'
import { unknown, type Worked } from '../../../working/worked.ts'
import { bendMultiple } from '../../bend-multiple.ts'

const PINS: Source = { standard: 'AS 3600:2018', clause: '17.2.3.2', status: 'from memory' }

/** Pins of bends that are meant to be straightened or bent again, in bar diameters; sizes in mm, both included. */
export const PINS_BENT_BACK = [
  { from: 0, to: 16, times: 4 },
  { from: 20, to: 24, times: 5 },
  { from: 28, to: 50, times: 6 },
] as const

/**
 * Least inside diameter of a bend that is meant to be straightened or bent again, mm; the rule for any bend holds beside it, and whether
 * the bar may be bent back at all is another question (`acts.ts`).
 *
 * Unknown between and outside the rows. Example: N20: 100 mm.
 */
export function leastBendBack({ diameter }: { readonly diameter: number }): Worked<number> {
  const gaps = notAboveZero({ diameter })
  if (gaps.length > 0) return { known: false, gaps }
  const row = PINS_BENT_BACK.find(({ from, to }) => diameter >= from && diameter <= to)
  if (row === undefined) return unknown(`diameter: AS 3600 17.2.3.2 has no row for ${diameter} mm`)
  return bendMultiple({
    diameter,
    times: row.times,
    source: PINS,
    note: `meant to be bent back, ${row.from === 0 ? 'up to' : `${row.from} to`} ${row.to} mm`,
  })
}
