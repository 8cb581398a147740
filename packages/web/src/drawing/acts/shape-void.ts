import type { DraftVoid } from '../draft.ts'
import type { DraftAct } from './act.ts'
import { reshaped } from './shape-opening.ts'

/** A void former by place and size, or by its corners. */
export const shapeVoid: DraftAct<{ readonly index: number; readonly form: DraftVoid['form'] }> = {
  name: 'shape-void',
  label: 'the kind of void former',
  next: (draft, { index, form }) => ({
    ...draft,
    voids: draft.voids.map((old, place) => (place === index ? reshaped(old, form) : old)),
  }),
}
