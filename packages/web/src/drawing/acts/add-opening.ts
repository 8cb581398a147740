import type { DraftAct } from './act.ts'
import { nextMark } from './next-mark.ts'

/** An opening with the next free mark; its place and size are still to be typed. */
export const addOpening: DraftAct<{ readonly letter: 'D' | 'N' }> = {
  name: 'add-opening',
  label: 'Add an opening',
  next: (draft, { letter }) => ({
    ...draft,
    openings: [
      ...draft.openings,
      {
        mark: nextMark(letter, draft.openings),
        form: 'box',
        x: '',
        y: letter === 'D' ? '0' : '',
        width: '',
        height: '',
        corners: [],
      },
    ],
  }),
}
