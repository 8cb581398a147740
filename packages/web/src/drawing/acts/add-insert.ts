import type { DraftAct } from './act.ts'
import { nextLetter } from './next-mark.ts'

/** A lifting insert with the next free letter, of the kind of the one before. */
export const addInsert: DraftAct<null> = {
  name: 'add-insert',
  label: 'Add an insert',
  next: (draft) => {
    const last = draft.inserts.at(-1)
    return {
      ...draft,
      inserts: [
        ...draft.inserts,
        { mark: nextLetter(draft.inserts), x: '', y: '', kind: last?.kind ?? 'face', type: last?.type ?? '' },
      ],
    }
  },
}
