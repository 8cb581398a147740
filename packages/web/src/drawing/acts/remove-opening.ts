import type { DraftAct } from './act.ts'

export const removeOpening: DraftAct<{ readonly index: number }> = {
  name: 'remove-opening',
  label: 'Remove this opening',
  next: (draft, { index }) => ({ ...draft, openings: draft.openings.filter((_, place) => place !== index) }),
}
