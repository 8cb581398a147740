import { type EntryAct, stamped } from './act.ts'

/** An engineer confirms the lifting design of the revision in force. */
export const confirmDesign: EntryAct<{ readonly reference: string; readonly reason: string }> = {
  name: 'confirm-design',
  label: 'Confirm the lifting design',
  draft: (place, { reference, reason }) => ({
    ...stamped(place),
    kind: 'design',
    step: 'strip',
    value: { reference },
    ...(reason.trim() === '' ? {} : { reason: reason.trim() }),
  }),
}
