import { readNumber } from '../../look/index.ts'
import type { DraftCorner, DraftOpening } from '../draft.ts'
import type { DraftAct } from './act.ts'

export interface ShapeOpeningInput {
  readonly index: number
  readonly form: DraftOpening['form']
}

/** An opening by place and size, or by its corners; going to corners starts from the box that was typed. */
export const shapeOpening: DraftAct<ShapeOpeningInput> = {
  name: 'shape-opening',
  label: 'the kind of opening',
  next: (draft, { index, form }) => ({
    ...draft,
    openings: draft.openings.map((old, place) =>
      place !== index || old.form === form
        ? old
        : {
            ...old,
            form,
            corners: form === 'corners' && old.corners.length === 0 ? boxCorners(old) : old.corners,
          },
    ),
  }),
}

function boxCorners({ x, y, width, height }: DraftOpening): DraftCorner[] {
  const [right, top] = [sum(x, width), sum(y, height)]
  return [
    { x, y },
    { x: right, y },
    { x: right, y: top },
    { x, y: top },
  ]
}

function sum(from: string, size: string): string {
  const [a, b] = [readNumber(from), readNumber(size)]
  return a === null || b === null ? '' : String(a + b)
}
