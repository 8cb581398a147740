import type { BundleDecision } from '@castwright/engine/steel/incoming'
import type { EntryDraft } from '../../../record/index.ts'

export interface DecisionInput {
  readonly id: string
  /** The readings that it is made on: entry or correction in force. */
  readonly on: string
  readonly decision: BundleDecision['decision']
  readonly reason: string
}

/** A person accepts a bundle, keeps it apart, or sends it back. */
export const decideBundle = {
  name: 'decide-bundle',
  label: 'Decide',
  draft: ({ id, on, decision, reason }: DecisionInput): EntryDraft => ({
    kind: 'release',
    subject: { kind: 'bundle', id },
    value: { decision },
    about: on,
    ...(reason.trim() === '' ? {} : { reason: reason.trim() }),
  }),
}
