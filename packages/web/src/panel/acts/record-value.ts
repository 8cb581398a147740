import { type Asked, judge, limitOf } from '@castwright/engine/working'
import type { Entry } from '@castwright/record'
import { type EntryAct, stamped } from './act.ts'

export interface RecordValueInput {
  readonly asked: Asked
  readonly value: Entry['value']
}

/** Something asked at a step was seen or measured. */
export const recordValue: EntryAct<RecordValueInput> = {
  name: 'record-value',
  label: 'Record',
  draft: (place, { asked, value }) => ({
    ...stamped(place),
    kind: 'value',
    step: asked.step,
    check: asked.id,
    value,
    ...judged(asked, value),
  }),
}

/** Unit, verdict, limit and source as they stood when the value was seen. */
export function judged(
  asked: Asked,
  value: Entry['value'],
): Pick<Entry, 'unit' | 'verdict' | 'limit' | 'source'> {
  return {
    ...(asked.unit === '' ? {} : { unit: asked.unit }),
    verdict: judge(asked, value),
    limit: limitOf(asked),
    source: { ...asked.source },
  }
}
