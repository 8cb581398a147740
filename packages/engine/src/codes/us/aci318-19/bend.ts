import { notAboveZero } from '../../../working/guard.ts'
import type { Source } from '../../../working/source.ts'
import { unknown, type Worked } from '../../../working/worked.ts'
import { bendMultiple } from '../../bend-multiple.ts'
import type { BendRuleInput } from '../../steel-rules.ts'
import { usBar } from '../astm/bars.ts'

const MAIN: Source = { standard: 'ACI 318-19', clause: 'Table 25.3.1', status: 'seen' }
const TIES: Source = { standard: 'ACI 318-19', clause: 'Table 25.3.2', status: 'seen' }
const COATED: Source = { standard: 'ASTM A767, edition not noted', clause: 'Table 2', status: 'seen' }

/**
 * Least inside diameter of a standard hook or stirrup, mm, from the nominal diameter of the bar.
 *
 * Unknown for a diameter that is no US bar (0.5 mm either way), for stirrups over No. 8, for plain bar, and for galvanised
 * bar of grades 80 and 100. Example: No. 8 main bar: 152.4 mm.
 */
export function leastBend({ diameter, grade, role, plain, galvanised }: BendRuleInput): Worked<number> {
  const gaps = notAboveZero({ diameter })
  if (gaps.length > 0) return { known: false, gaps }
  const bar = usBar(diameter)
  if (bar === null) return unknown(`diameter: no US bar within 0.5 mm of ${diameter} mm`)
  if (plain) return unknown('plain: the tables of ACI 318-19 25.3 are for deformed bars')
  if (role === 'stirrup' && bar.number > 8) {
    return unknown(`diameter: ACI 318-19 Table 25.3.2 ends at No. 8, found No. ${bar.number}`)
  }
  const black = role === 'main' ? mainTimes(bar.number) : bar.number <= 5 ? 4 : 6
  const size = { diameter: bar.inches * 25.4 }
  if (!galvanised) {
    return bendMultiple({
      ...size,
      times: black,
      source: role === 'main' ? MAIN : TIES,
      note: `No. ${bar.number} ${role} bar`,
    })
  }
  if (grade !== '40' && grade !== '60') {
    return unknown(`grade: ASTM A767 Table 2 holds grades 40 to 75, found ${grade}`)
  }
  const coated = bar.number <= 6 || (bar.number <= 8 && grade === '40') ? 6 : bar.number <= 11 ? 8 : 10
  return bendMultiple({
    ...size,
    times: Math.max(black, coated),
    source: COATED,
    note: `No. ${bar.number}, grade ${grade}, bent before galvanising`,
  })
}

function mainTimes(number: number): number {
  return number <= 8 ? 6 : number <= 11 ? 8 : 10
}
