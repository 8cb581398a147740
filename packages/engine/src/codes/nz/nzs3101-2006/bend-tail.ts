import type { Source } from '../../../working/source.ts'
import { unknown, type Worked } from '../../../working/worked.ts'
import { bendTail, type HookTailInput } from '../../bend-tail.ts'

const HOOKS: Source = { standard: 'NZS 3101:2006', clause: '8.4.2.1', status: 'from memory' }

/**
 * Least straight past the bend of a standard hook, mm.
 *
 * Unknown for other turns than 90, 135 and 180°, and for main bars at 135°. Example: 12 mm, 180°: 65 mm.
 */
export function hookTail({ diameter, role, plain, turn }: HookTailInput): Worked<number> {
  const hook = { diameter, least: 0, source: HOOKS }
  if (turn === 180) return bendTail({ ...hook, times: 4, least: 65, note: 'hook of 180°' })
  if (turn === 90) return bendTail({ ...hook, times: 12, note: 'hook of 90°' })
  if (turn === 135 && role === 'stirrup') {
    return bendTail({ ...hook, times: plain ? 8 : 6, note: `${plain ? 'plain' : 'deformed'} tie, 135°` })
  }
  return unknown(`turn: no confirmed tail of a ${role} bar at ${turn}°`)
}
