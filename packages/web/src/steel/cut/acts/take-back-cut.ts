import type { CutFacts } from '@castwright/record'
import type { EntryDraft } from '../../../record/index.ts'

export interface TakeBackCutInput {
  readonly facts: CutFacts
  readonly reason: string
}

/** A cut that was ticked off by mistake: its bars go back to the bundle or the rack, and its pieces are owed again. */
export const takeBackCut = {
  name: 'take-back-cut',
  label: 'Take this cut back',
  draft: ({ facts: { cut, tip }, reason }: TakeBackCutInput): EntryDraft => ({
    kind: 'correction',
    subject: { kind: 'bar', id: `${cut.diameter} ${cut.grade}` },
    about: tip,
    reason,
    value: null,
  }),
}
