import type { DraftAct } from './act.ts'
import { nextMark } from './next-mark.ts'

/** A void former with the next free mark; its place and size are still to be typed. */
export const addVoid: DraftAct<null> = {
  name: 'add-void',
  label: 'Add a void former',
  next: (draft) => ({
    ...draft,
    voids: [
      ...draft.voids,
      {
        mark: nextMark('V', [...draft.voids, ...draft.ducts]),
        form: 'box',
        x: '',
        y: '',
        width: '',
        height: '',
        corners: [],
        depth: '',
        above: '',
        mass: '',
        density: '',
        section: '',
      },
    ],
  }),
}
