import { notAboveZero } from '../working/guard.ts'
import type { Source } from '../working/source.ts'
import { known, type Worked } from '../working/worked.ts'
import type { BarRole } from './steel-rules.ts'

export interface HookTailInput {
  /** mm */
  readonly diameter: number
  readonly role: BarRole
  readonly plain: boolean
  /** Turn of the last bend, degrees. */
  readonly turn: number
  /** Inside diameter of that bend, mm. */
  readonly inside: number
}

export interface BendTail {
  readonly diameter: number
  readonly times: number
  /** Floor of the rule, mm; 0 where it has none. */
  readonly least: number
  readonly source: Source
  readonly note: string
}

/** A least straight past a hook's bend as a multiple of the bar with a floor, mm, with its working. */
export function bendTail({ diameter, times, least, source, note }: BendTail): Worked<number> {
  const gaps = notAboveZero({ diameter })
  if (gaps.length > 0) return { known: false, gaps }
  const tail = Math.max(times * diameter, least)
  return known(tail, [
    {
      symbol: 'tail',
      formula: 'max(n d, t_min)',
      given: { n: times, d: diameter, t_min: least },
      result: tail,
      unit: 'mm',
      source,
      note,
    },
  ])
}
