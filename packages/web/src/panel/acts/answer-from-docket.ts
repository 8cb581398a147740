import type { CardRow } from '@castwright/engine/steps'
import type { Entry } from '@castwright/record'
import type { EntryDraft } from '../../record/index.ts'
import type { PanelPlace } from './act.ts'
import type { DocketInput } from './record-docket.ts'
import { recordValue } from './record-value.ts'

/** What a docket says to the questions of the card, by the id of what is asked. */
function answersOf(docket: DocketInput): Readonly<Record<string, Entry['value'] | undefined>> {
  const { batched, discharged } = docket
  return {
    'docket-number': docket.number,
    truck: docket.truck,
    'batch-time': batched,
    slump: docket.slump,
    'concrete-temperature': docket.temperature,
    'water-added': docket.waterAdded === 0 ? 'none' : undefined,
    'age-at-discharge':
      batched === undefined || discharged === undefined
        ? undefined
        : (Date.parse(discharged) - Date.parse(batched)) / 60_000,
  }
}

/** Values for those rows of the card that nothing is recorded for yet, so that a docket is typed once. */
export function answersFromDocket(
  place: PanelPlace,
  docket: DocketInput,
  rows: readonly Pick<CardRow, 'asked' | 'recorded'>[],
): EntryDraft[] {
  const answers = answersOf(docket)
  return rows.flatMap(({ asked, recorded }) => {
    const value = asked === null || recorded !== null ? undefined : answers[asked.id]
    return asked === null || value === undefined ? [] : [recordValue.draft(place, { asked, value })]
  })
}
