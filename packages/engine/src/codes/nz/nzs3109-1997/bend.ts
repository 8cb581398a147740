import { notAboveZero } from '../../../working/guard.ts'
import type { Source } from '../../../working/source.ts'
import { unknown, type Worked } from '../../../working/worked.ts'
import { bendMultiple } from '../../bend-multiple.ts'
import type { BendRuleInput } from '../../steel-rules.ts'

const TABLE_3_1: Source = { standard: 'NZS 3109:1997', clause: 'Table 3.1', status: 'seen' }
const GALVANISED: Source = { standard: 'NZS 3101:2006', clause: '8.4.2', status: 'from memory' }

/** Rows of Table 3.1: least inside diameter in bar diameters, grades 300 and 500 alike; sizes in mm, both included. */
const ROWS = [
  { role: 'stirrup', from: 6, to: 20, plain: 2, deformed: 4 },
  { role: 'stirrup', from: 24, to: 24, plain: 3, deformed: 6 },
  { role: 'main', from: 6, to: 20, plain: 5, deformed: 5 },
  { role: 'main', from: 24, to: 40, plain: 6, deformed: 6 },
] as const

/**
 * Least inside diameter of a bend, mm.
 *
 * Unknown for sizes between and outside the rows (stirrups over 24 mm among them), for other grades, and for galvanised plain bar.
 * Example: 16 mm main bar: 80 mm.
 */
export function leastBend({ diameter, grade, role, plain, galvanised }: BendRuleInput): Worked<number> {
  const gaps = notAboveZero({ diameter })
  if (gaps.length > 0) return { known: false, gaps }
  const row = ROWS.find((each) => each.role === role && diameter >= each.from && diameter <= each.to)
  if (row === undefined) {
    return unknown(`diameter: NZS 3109 Table 3.1 has no row for a ${diameter} mm ${role} bar`)
  }
  if (!/^[35]00/.test(grade)) {
    return unknown(`grade: NZS 3109 Table 3.1 is for grades 300 and 500, found ${grade}`)
  }
  const black = plain ? row.plain : row.deformed
  if (!galvanised) {
    return bendMultiple({
      diameter,
      times: black,
      source: TABLE_3_1,
      note: `${role} bar, ${plain ? 'plain' : 'deformed'}, ${row.from} to ${row.to} mm`,
    })
  }
  if (plain) return unknown('galvanised: no confirmed value for plain bar')
  const coated = diameter <= 16 ? 5 : diameter >= 20 ? 8 : null
  if (coated === null) return unknown(`diameter: no galvanised rule between 16 and 20 mm, found ${diameter}`)
  return bendMultiple({
    diameter,
    times: Math.max(black, coated),
    source: GALVANISED,
    note: `galvanised deformed bar, ${diameter <= 16 ? 'up to 16 mm' : '20 mm and over'}`,
  })
}

/** Advice for all 300 and 500 grades. */
export const COLDEST = {
  temperature: 5,
  source: { standard: 'BRANZ Build Right: Reinforcing steel', clause: '', status: 'seen' },
} as const
