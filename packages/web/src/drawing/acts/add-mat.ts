import type { DraftMat } from '../draft.ts'
import type { DraftAct } from './act.ts'

/** A mat; layer and direction go on from the mats that are there, the rest is copied from the last one. */
export const addMat: DraftAct<null> = {
  name: 'add-mat',
  label: 'Add a mat',
  next: (draft) => {
    const mats = draft.steel.filter((steel): steel is DraftMat => steel.kind === 'mat')
    const last = mats.at(-1)
    const next: DraftMat = {
      kind: 'mat',
      layer: mats.length % 4 < 2 ? 'mould' : 'top',
      direction: mats.length % 2 === 0 ? 'x' : 'y',
      diameter: last?.diameter ?? '',
      grade: last?.grade ?? '',
      spacing: last?.spacing ?? '',
    }
    return { ...draft, steel: [...draft.steel, next] }
  },
}
