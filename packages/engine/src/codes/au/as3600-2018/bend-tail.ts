import { notAboveZero } from '../../../working/guard.ts'
import type { Source } from '../../../working/source.ts'
import { known, unknown, type Worked } from '../../../working/worked.ts'
import { bendTail, type HookTailInput } from '../../bend-tail.ts'

const HOOKS: Source = { standard: 'AS 3600:2018', clause: '13.1.2.7', status: 'from memory' }

/**
 * Least straight past the bend of a standard hook or cog, mm. A cog of 90° and a tie hook of 135° are as long in all as the hook of 180° of
 * that bar on the same pin.
 *
 * Unknown for other turns, for a cog on a pin over 8 d, and for main bars at 135°. Example: N12, 180°: 70 mm.
 */
export function hookTail({ diameter, role, turn, inside }: HookTailInput): Worked<number> {
  const gaps = notAboveZero({ diameter, inside })
  if (gaps.length > 0) return { known: false, gaps }
  const whole = bendTail({ diameter, times: 4, least: 70, source: HOOKS, note: 'hook of 180°' })
  if (turn === 180 || !whole.known) return whole
  if (turn === 90 && inside > 8 * diameter) {
    return unknown(`inside: a cog is bent on a pin of at most 8 diameters, found ${inside} mm`)
  }
  if (turn === 90 || (turn === 135 && role === 'stirrup')) {
    const tail = whole.value + (((180 - turn) * Math.PI) / 180) * (inside / 2 + diameter / 2)
    return known(tail, [
      ...whole.working,
      {
        symbol: 'tail_θ',
        formula: 'tail + π (180 − θ) / 180 · (D / 2 + d / 2)',
        given: { tail: whole.value, θ: turn, D: inside, d: diameter },
        result: tail,
        unit: 'mm',
        source: HOOKS,
        note: 'as long in all as the hook of 180°',
      },
    ])
  }
  return unknown(`turn: no confirmed tail of a ${role} bar at ${turn}°`)
}
