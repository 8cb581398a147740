import { notAboveZero } from '../../../working/guard.ts'
import type { Source } from '../../../working/source.ts'
import { unknown, type Worked } from '../../../working/worked.ts'
import { bendTail, type HookTailInput } from '../../bend-tail.ts'
import { usBar } from '../astm/bars.ts'

const MAIN: Source = { standard: 'ACI 318-19', clause: 'Table 25.3.1', status: 'seen' }
const TIES: Source = { standard: 'ACI 318-19', clause: 'Table 25.3.2', status: 'seen' }
const MEMORY: Source = { ...TIES, status: 'from memory' }

const INCH = 25.4

/**
 * Least straight past the bend of a standard hook, mm, from the nominal diameter of the bar.
 *
 * Unknown for a diameter that is no US bar (0.5 mm either way), for plain bar, for other turns than 90, 135 and 180°, for main bars at 135°,
 * and for stirrups over No. 8. Example: No. 8, 90°: 304.8 mm.
 */
export function hookTail({ diameter, role, plain, turn }: HookTailInput): Worked<number> {
  const gaps = notAboveZero({ diameter })
  if (gaps.length > 0) return { known: false, gaps }
  const bar = usBar(diameter)
  if (bar === null) return unknown(`diameter: no US bar within 0.5 mm of ${diameter} mm`)
  if (plain) return unknown('plain: the tables of ACI 318-19 25.3 are for deformed bars')
  const tie = role === 'stirrup'
  if (tie && bar.number > 8) {
    return unknown(`diameter: ACI 318-19 Table 25.3.2 ends at No. 8, found No. ${bar.number}`)
  }
  const hook = { diameter: bar.inches * INCH, note: `No. ${bar.number} ${role} bar, ${turn}°` }
  if (turn === 180) return bendTail({ ...hook, times: 4, least: 2.5 * INCH, source: tie ? MEMORY : MAIN })
  if (turn === 90 && tie && bar.number <= 5) {
    return bendTail({ ...hook, times: 6, least: 3 * INCH, source: MEMORY })
  }
  if (turn === 90) return bendTail({ ...hook, times: 12, least: 0, source: tie ? TIES : MAIN })
  if (turn === 135 && tie) return bendTail({ ...hook, times: 6, least: 3 * INCH, source: MEMORY })
  return unknown(`turn: no confirmed tail of a ${role} bar at ${turn}°`)
}
