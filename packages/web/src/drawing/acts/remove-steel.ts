import type { DraftAct } from './act.ts'

export const removeSteel: DraftAct<{ readonly index: number }> = {
  name: 'remove-steel',
  label: 'Remove this steel',
  next: (draft, { index }) => ({ ...draft, steel: draft.steel.filter((_, place) => place !== index) }),
}
