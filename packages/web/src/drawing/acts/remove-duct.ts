import type { DraftAct } from './act.ts'

export const removeDuct: DraftAct<{ readonly index: number }> = {
  name: 'remove-duct',
  label: 'Remove this duct',
  next: (draft, { index }) => ({ ...draft, ducts: draft.ducts.filter((_, place) => place !== index) }),
}
