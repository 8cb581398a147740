import type { Asked } from '@castwright/engine/working'
import type { Entry } from '@castwright/record'
import { type EntryAct, stamped } from './act.ts'
import { judged } from './record-value.ts'

export interface CorrectValueInput {
  readonly asked: Asked
  /** Entry that is corrected. */
  readonly about: string
  readonly value: Entry['value']
  readonly reason: string
}

/** A recorded value was wrong: a new entry that points at the old one. The old one stays. */
export const correctValue: EntryAct<CorrectValueInput> = {
  name: 'correct-value',
  label: 'Correct',
  draft: (place, { asked, about, value, reason }) => ({
    ...stamped(place),
    kind: 'correction',
    step: asked.step,
    check: asked.id,
    about,
    value,
    reason,
    ...judged(asked, value),
  }),
}
