import type { Draft, DraftCorner } from '../draft.ts'
import type { DraftAct } from './act.ts'

/** Outline by length and width, or by its corners. Going to corners starts from the rectangle that was typed. */
export const shapeOutline: DraftAct<{ readonly form: Draft['form'] }> = {
  name: 'shape-outline',
  label: 'the kind of outline',
  next: (draft, { form }) => {
    if (form === draft.form) return draft
    const corners =
      form === 'corners' && draft.corners.length === 0 ? rectangle(draft.length, draft.width) : draft.corners
    return { ...draft, form, corners }
  },
}

/** Four corners with the texts of the sizes. */
export function rectangle(length: string, width: string): DraftCorner[] {
  return [
    { x: '0', y: '0' },
    { x: length, y: '0' },
    { x: length, y: width },
    { x: '0', y: width },
  ]
}
