import type { Source } from '../../../working/source.ts'
import { known, type Worked } from '../../../working/worked.ts'
import { type HookAnchorageInput, hookGaps } from '../../hook-anchorage.ts'
import { lap, RANGE } from './lap.ts'

const HOOK: Source = { standard: 'EN 1992-1-1:2004', clause: '8.4.4, Table 8.2', status: 'from memory' }

/**
 * Anchorage of a bent bar or hook in tension, along its centreline, mm; without credit for transverse bars and pressure. Both α1 and α2 of
 * bent bars need a cover over 3 φ.
 *
 * Unknown as the straight bar is. Example: 12 mm in C25, cd 35, good bond: 484.3 · 1.0 · 1.0 = 484.3 mm.
 */
export function hookAnchorage(input: HookAnchorageInput): Worked<number> {
  const gaps = hookGaps(input, RANGE)
  if (gaps.length > 0) return { known: false, gaps }
  const straight = lap({ ...input, share: 100, apart: 0 })
  if (!straight.known) return straight
  const steps = straight.working.slice(
    0,
    straight.working.findIndex(({ symbol }) => symbol === 'α2'),
  )
  const required = Number(steps.find(({ symbol }) => symbol === 'lb,rqd')?.result)
  const { diameter: φ, cover, gap, sideCover } = input
  const cd = Math.min(cover, gap / 2, sideCover)
  const α1 = cd > 3 * φ ? 0.7 : 1
  const α2 = Math.max(0.7, Math.min(1, 1 - (0.15 * (cd - 3 * φ)) / φ))
  const length = Math.max(α1 * α2 * required, 0.3 * required, 10 * φ, 100)
  return known(length, [
    ...steps,
    {
      symbol: 'α2',
      formula: 'max(0.7, min(1, 1 − 0.15 · (min(cover, gap / 2, side) − 3 · φ) / φ))',
      given: { cover, gap, side: sideCover, φ },
      result: α2,
      unit: '',
      source: HOOK,
      note: 'bent bar',
    },
    {
      symbol: 'lbd',
      formula: 'max(α1 · α2 · lb, 0.3 · lb, 10 · φ, 100)',
      given: { α1, α2, lb: required, φ },
      result: length,
      unit: 'mm',
      source: HOOK,
      note: α1 < 1 ? 'cover over 3 φ' : 'cover up to 3 φ: no credit for the bend',
    },
  ])
}
