import type { LoadDecision } from '@castwright/engine/pour/loads'
import { type EntryAct, stamped } from './act.ts'

export interface DecideLoadInput {
  /** Entry of the docket. */
  readonly about: string
  readonly decision: LoadDecision['decision']
  readonly reason: string
}

/** Somebody entitled takes a load in spite of a fail or a not-known, or sends it back, with a reason. */
export const decideLoad: EntryAct<DecideLoadInput> = {
  name: 'decide-load',
  label: 'Decide',
  draft: (place, { about, decision, reason }) => ({
    ...stamped(place),
    kind: 'docket-decision',
    step: 'deliver',
    about,
    value: { decision },
    reason,
  }),
}
