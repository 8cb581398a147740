import type { Panel } from '../../panel/panel.ts'
import type { Ring } from '../../panel/point.ts'
import type { PlacedBar } from '../../steel/steel-plan.ts'
import type { Assumed, Step } from '../../working/worked.ts'
import { Ground } from '../compaction/ground.ts'
import { CONGESTED_SHARE, type Congested } from '../compaction/parts.ts'
import { ASSUMED_MARGIN } from '../margin.ts'
import type { CompactionPlan } from '../pour-plan.ts'
import { coveringRadius, radiusOfAction } from '../vibrator.ts'
import { CLEAR_HEADS, CLOSE_STEEL, closeSteel } from './close-steel.ts'
import { overBars, type Tight } from './tight.ts'

export interface CongestedInput {
  readonly panel: Panel
  readonly placed: readonly PlacedBar[]
  readonly notLaid: readonly string[]
  /** Diameter of the head, mm, and its radius of action where the maker gives it. */
  readonly head: number
  readonly radius?: number | undefined
}

/** Where the reach is cut: what the drawing says, and what is found from the laid bars. */
export function congestedIn({ panel, placed, notLaid, head, radius }: CongestedInput): {
  readonly zones: readonly Congested[]
  readonly steps: readonly Step[]
  readonly assumed: readonly Assumed[]
} {
  const drawn = (panel.drawing.congested ?? []).map(
    ({ mark, outline, share }): Congested => ({ mark, outline: outline as unknown as Ring, share }),
  )
  const table = radiusOfAction(head)
  const action = radius ?? (table.known ? table.value : null)
  if (action === null) return { zones: drawn, steps: [], assumed: [] }
  const narrow = CONGESTED_SHARE * coveringRadius(action).radius
  const found = closeSteel({ region: panel.region, placed, head, narrow })
  return {
    zones: [...drawn, ...found.map((outline, i) => ({ mark: `close steel ${i + 1}`, outline }))],
    steps:
      placed.length === 0
        ? []
        : [
            {
              symbol: 'n_c',
              formula: 'zones farther than 2 d from the middle of a gap of 2 d between bars, seen from above',
              given: { d: head, narrow },
              result: found.length,
              unit: '',
              source: CLOSE_STEEL,
              by: 'search',
              note: `strips narrower than ${Math.round(narrow)} mm left out: reached from beside`,
            },
          ],
    assumed: [
      ...(found.length === 0
        ? []
        : [
            {
              field: 'clear gap of the head',
              value: CLEAR_HEADS,
              unit: 'head diameters',
              why: 'less is close steel, common practice',
            },
          ]),
      ...(placed.length > 0 && notLaid.length === 0
        ? []
        : [
            {
              field: 'close steel',
              value: 'only where drawn',
              unit: '',
              why:
                placed.length === 0
                  ? 'no bar is laid out, so none is looked at'
                  : `not looked at where bars are not laid out: ${notLaid.slice(0, 3).join('; ')}`,
            },
          ]),
    ],
  }
}

/** Insertions with little room: near a face, or over a bar with no gap within the slack of the pattern. */
export function tightIn({
  panel,
  placed,
  head,
  compaction,
}: {
  readonly panel: Panel
  readonly placed: readonly PlacedBar[]
  readonly head: number
  readonly compaction: CompactionPlan
}): Tight[] {
  const { insertions, close, radius, action } = compaction
  const ground = new Ground(panel.region, ASSUMED_MARGIN)
  const faces = close.flatMap((insertion): Tight[] => {
    const at = insertions[insertion]
    return at === undefined
      ? []
      : [{ insertion, at: 'face', clear: ground.clearance(at[0], at[1], ASSUMED_MARGIN) }]
  })
  const slack = insertions.map(() => (action === null ? 0 : action - radius))
  for (const zone of compaction.reduced)
    for (const at of zone.insertions) slack[at] = ((slack[at] ?? 0) * zone.radius) / radius
  return [...faces, ...overBars({ region: panel.region, placed, insertions, head, slack })].sort(
    (a, b) => a.insertion - b.insertion,
  )
}
