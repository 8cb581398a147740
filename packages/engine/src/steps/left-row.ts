import { LEFT_SOURCE, LEFT_TOO_LONG } from '../pour/left-too-long.ts'
import { compare } from '../working/check.ts'
import type { CardRow } from './card.ts'
import type { PanelFacts } from './facts.ts'
import { checkRow } from './rows.ts'

/** Begin of the ids under which the record keeps the longest wait of a zone, minutes, one id a zone and walk. */
export const LEFT_VALUES = 'left:'
/** Begin of the row's id. */
export const LEFT_ROW = 'left-too-long'
export const LEFT_WHAT = 'Longest that fresh concrete waited before what joins it was worked'

/** The longest wait that the walks over a panel recorded; none where nobody recorded a walk: the card then asks by word alone. */
export function leftRows({ steps, revision }: Pick<PanelFacts, 'steps' | 'revision'>): CardRow[] {
  const waits = Object.entries(steps.place.values).flatMap(([id, recorded]) =>
    id.startsWith(LEFT_VALUES) && recorded.revision === revision && typeof recorded.value === 'number'
      ? [{ zone: id.split(':')[1] ?? '', minutes: recorded.value, entry: recorded.entry }]
      : [],
  )
  if (waits.length === 0) return []
  const worst = waits.reduce((a, b) => (b.minutes > a.minutes ? b : a))
  const over = [...new Set(waits.filter(({ minutes }) => minutes > LEFT_TOO_LONG).map(({ zone }) => zone))]
  const check = compare({
    // With its minutes: a decision on 16 min is none on 60.
    id: `${LEFT_ROW}:${Math.ceil(worst.minutes)}`,
    step: 'place',
    what: LEFT_WHAT,
    demand: worst.minutes,
    limit: LEFT_TOO_LONG,
    unit: 'min',
    sense: 'at most',
    source: LEFT_SOURCE,
    note:
      over.length === 0
        ? 'By the walks recorded.'
        : `Too long in the part at ${over.join(', ')} mm along the panel. A head that no longer sinks in by itself has found a joint.`,
  })
  return [
    checkRow(
      check,
      'record',
      waits.map(({ entry }) => entry),
    ),
  ]
}
