import { emptyLaid, type LaidForm } from '../laid-draft.ts'
import type { DraftAct } from './act.ts'
import { gradeOf } from './add-bar.ts'

/** Edge bars, trimmers, starters or ties. */
export const addLaid: DraftAct<LaidForm> = {
  name: 'add-laid',
  label: 'Add steel by where it goes',
  next: (draft, form) => ({
    ...draft,
    steel: [...draft.steel, emptyLaid(form, gradeOf(draft.steel.at(-1)))],
  }),
}
