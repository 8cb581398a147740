import type { DraftAct } from './act.ts'

export const removeVoid: DraftAct<{ readonly index: number }> = {
  name: 'remove-void',
  label: 'Remove this void former',
  next: (draft, { index }) => ({ ...draft, voids: draft.voids.filter((_, place) => place !== index) }),
}
