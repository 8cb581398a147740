import type { CardRow, StepId } from '@castwright/engine/steps'
import { type EntryAct, stamped } from './act.ts'

export interface DecideInput {
  readonly step: StepId
  readonly row: CardRow
  readonly reason: string
}

/** Somebody entitled goes on in spite of a fail or a not-known, with a reason. It shows on every later card. */
export const decide: EntryAct<DecideInput> = {
  name: 'decide',
  label: 'Decide',
  draft: (place, { step, row, reason }) => ({
    ...stamped(place),
    kind: 'decision',
    step,
    check: row.id,
    value: null,
    verdict: row.verdict,
    limit: row.limit,
    reason,
  }),
}
