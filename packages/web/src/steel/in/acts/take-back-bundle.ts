import type { EntryDraft } from '../../../record/index.ts'

export interface TakeBackInput {
  readonly id: string
  /** Entry in force of the bundle that goes. */
  readonly entry: string
  readonly reason: string
}

/** A bundle that was recorded under a name that another has is taken back, to be recorded anew. */
export const takeBackBundle = {
  name: 'take-back-bundle',
  label: 'Take this one back',
  draft: ({ id, entry, reason }: TakeBackInput): EntryDraft => ({
    kind: 'correction',
    subject: { kind: 'bundle', id },
    about: entry,
    reason,
    value: null,
  }),
}
