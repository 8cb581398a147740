import type { Asked } from '@castwright/engine/working'
import type { EntryDraft } from '../../record/index.ts'
import { type PanelPlace, stamped } from './act.ts'
import { recordValue } from './record-value.ts'

export interface ZoneInput {
  readonly asked: Asked
  readonly zone: number
  /** Insertion from 1, start and length in seconds, a row a visit. */
  readonly rows: readonly (readonly [insertion: number, start: number, seconds: number])[]
  readonly reached: number
  readonly of: number
}

/** A zone was vibrated: the tick on the card, true only where every insertion was reached, and the walk itself beside it. */
export const recordZone = {
  name: 'record-zone',
  label: 'Record the zone',
  draft: (place: PanelPlace, { asked, reached, of, rows }: ZoneInput): EntryDraft => ({
    ...recordValue.draft(place, { asked, value: reached === of }),
    reason: `${reached} of ${of} insertions reached, ${rows.length} visits, ${Math.round(rows.reduce((sum, [, , seconds]) => sum + seconds, 0))} s`,
  }),
  drafts: (place: PanelPlace, input: ZoneInput): readonly EntryDraft[] => [
    {
      ...stamped(place),
      kind: 'value',
      step: 'place',
      check: `walk:${input.zone}`,
      value: input.rows.map((row) => [...row]),
      unit: 's',
      verdict: 'unknown',
      reason: 'insertion, start and length of each visit',
    },
    recordZone.draft(place, input),
  ],
}
