import { type EntryAct, stamped } from './act.ts'

export interface SettleInput {
  /** Entry of the defect. */
  readonly about: string
  readonly decision: 'accept' | 'repair' | 'reject'
  readonly reason: string
}

/** Somebody entitled decides what becomes of a defect. */
export const settleDefect: EntryAct<SettleInput> = {
  name: 'settle-defect',
  label: 'Record the decision',
  draft: (place, { about, decision, reason }) => ({
    ...stamped(place),
    kind: 'disposition',
    about,
    value: { decision },
    reason,
  }),
}
