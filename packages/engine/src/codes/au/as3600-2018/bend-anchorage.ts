import type { Source } from '../../../working/source.ts'
import { known, type Worked } from '../../../working/worked.ts'
import { type HookAnchorageInput, hookGaps } from '../../hook-anchorage.ts'
import { lap, RANGE } from './lap.ts'

const HOOK: Source = { standard: 'AS 3600:2018', clause: '13.1.2', status: 'seen' }

/**
 * Development of a standard hook or cog in tension, from the critical section to the outside of the hook, mm: half that of the straight bar.
 *
 * Unknown as the straight bar is. Example: N12, 25 MPa, cd 20: 225 mm.
 */
export function hookAnchorage(input: HookAnchorageInput): Worked<number> {
  const gaps = hookGaps(input, RANGE)
  if (gaps.length > 0) return { known: false, gaps }
  const straight = lap({ ...input, share: 100, apart: 0 })
  if (!straight.known) return straight
  const { development } = straight.value
  const length = 0.5 * development
  const untilThere = straight.working.filter(({ symbol }) => symbol !== 'Lsy.t.lap')
  return known(length, [
    ...untilThere,
    {
      symbol: 'Lsy.hook',
      formula: '0.5 · Lsy',
      given: { Lsy: development },
      result: length,
      unit: 'mm',
      source: HOOK,
    },
  ])
}
