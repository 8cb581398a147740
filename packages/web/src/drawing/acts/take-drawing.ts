import type { Drawing } from '@castwright/engine/panel'
import { draftOf } from '../draft.ts'
import type { DraftAct } from './act.ts'

/** Everything from a drawing file; the job stays as it was typed where the file names none. */
export const takeDrawing: DraftAct<{ readonly drawing: Drawing }> = {
  name: 'take-drawing',
  label: 'Bring in a file',
  next: (draft, { drawing }) => {
    const read = draftOf(drawing)
    return { ...read, job: read.job === '' ? draft.job : read.job }
  },
}
