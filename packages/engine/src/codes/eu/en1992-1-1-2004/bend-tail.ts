import type { Source } from '../../../working/source.ts'
import { unknown, type Worked } from '../../../working/worked.ts'
import { bendTail, type HookTailInput } from '../../bend-tail.ts'

const LINKS: Source = { standard: 'EN 1992-1-1:2004', clause: '8.5, Figure 8.5', status: 'from memory' }
const GENERAL: Source = { standard: 'BS 8666:2005', clause: 'Table 2', status: 'seen' }

/**
 * Least straight past the last bend, mm: of links by EN 1992-1-1, of other bars the five diameters of BS 8666.
 *
 * Unknown for links that turn less than 90°, or more than it and less than 135°. Example: 8 mm link, 135°: 50 mm.
 */
export function hookTail({ diameter, role, turn }: HookTailInput): Worked<number> {
  if (!(turn > 0 && turn <= 180)) return unknown(`turn: above 0 to 180 degrees, found ${turn}`)
  if (role === 'main') return bendTail({ diameter, times: 5, least: 0, source: GENERAL, note: 'any bend' })
  if (turn >= 135) {
    return bendTail({ diameter, times: 5, least: 50, source: LINKS, note: 'link, 135° or more' })
  }
  if (turn === 90) return bendTail({ diameter, times: 10, least: 70, source: LINKS, note: 'link, 90°' })
  return unknown(`turn: no confirmed tail of a link at ${turn}°`)
}
