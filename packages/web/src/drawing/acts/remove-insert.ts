import type { DraftAct } from './act.ts'

export const removeInsert: DraftAct<{ readonly index: number }> = {
  name: 'remove-insert',
  label: 'Remove this insert',
  next: (draft, { index }) => ({ ...draft, inserts: draft.inserts.filter((_, place) => place !== index) }),
}
