import { LEFT_TOO_LONG, type VisitRow, WALK_ROWS } from '@castwright/engine/pour/live'
import { LEFT_VALUES } from '@castwright/engine/steps'
import type { Asked } from '@castwright/engine/working'
import type { EntryDraft } from '../../record/index.ts'
import { type PanelPlace, stamped } from './act.ts'
import { recordValue } from './record-value.ts'

export interface ZoneInput {
  readonly asked: Asked
  /** Id of the zone: where it lies along the panel. */
  readonly zone: string
  /** Names the walk of this device. */
  readonly walk: string
  /** This device's visits in the zone. */
  readonly rows: readonly VisitRow[]
  /** Stops of all vibrators and layers, by this device and the record. */
  readonly reached: number
  readonly of: number
  /** Longest wait in the zone, minutes; null where nothing joined worked concrete yet. */
  readonly wait: number | null
  /** Whether the zone gets its tick: not where another vibrator's share is still to come. */
  readonly tick: boolean
}

/**
 * A zone was vibrated: the walk's visits by place, the longest wait, and the tick on the card, true only where every insertion of every
 * vibrator was reached.
 */
export const recordZone = {
  name: 'record-zone',
  label: 'Record the zone',
  drafts: (place: PanelPlace, input: ZoneInput): readonly EntryDraft[] => [
    {
      ...valueDraft(place, `${WALK_ROWS}${input.zone}:${input.walk}`),
      value: input.rows.map((row) => [...row]),
      unit: 's',
      verdict: 'unknown',
      reason: 'insertion, x, y, layer, begin in s since 1970, length in s, reach in mm of each visit',
    },
    ...(input.wait === null
      ? []
      : [
          {
            ...valueDraft(place, `${LEFT_VALUES}${input.zone}:${input.walk}`),
            value: Math.ceil(input.wait * 10) / 10,
            unit: 'min',
            verdict: input.wait > LEFT_TOO_LONG ? ('fail' as const) : ('pass' as const),
            limit: LEFT_TOO_LONG,
            reason: 'longest that concrete waited in this zone before what joins it was worked',
          },
        ]),
    ...(input.tick ? [tickDraft(place, input)] : []),
  ],
}

function valueDraft(
  place: PanelPlace,
  check: string,
): Pick<EntryDraft, 'subject' | 'revision' | 'edition' | 'step' | 'check'> & { readonly kind: 'value' } {
  return { ...stamped(place), kind: 'value', step: 'place', check }
}

function tickDraft(place: PanelPlace, { asked, reached, of, rows, wait }: ZoneInput): EntryDraft {
  const seconds = Math.round(rows.reduce((sum, [, , , , , length]) => sum + length, 0))
  const waited = wait === null ? '' : `, longest wait ${Math.ceil(wait)} min`
  return {
    ...recordValue.draft(place, { asked, value: reached === of }),
    reason: `${reached} of ${of} insertions reached, ${rows.length} visits of this device, ${seconds} s${waited}`,
  }
}
