import type { DraftAct } from './act.ts'
import { nextMark } from './next-mark.ts'

/** A duct with the next free mark and the two ends of a line, still to be typed. */
export const addDuct: DraftAct<null> = {
  name: 'add-duct',
  label: 'Add a duct',
  next: (draft) => ({
    ...draft,
    ducts: [
      ...draft.ducts,
      {
        mark: nextMark('P', [...draft.voids, ...draft.ducts]),
        diameter: '',
        height: '',
        mass: '',
        corners: [
          { x: '', y: '' },
          { x: '', y: '' },
        ],
      },
    ],
  }),
}
