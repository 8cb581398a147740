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
    openings: draft.openings.map((old, place) => (place === index ? reshaped(old, form) : old)),
  }),
}

/** A shape in the other form; its corners start from the box where none were typed. */
export function reshaped<T extends Omit<DraftOpening, 'mark'>>(old: T, form: DraftOpening['form']): T {
  if (old.form === form) return old
  const corners = form === 'corners' && old.corners.length === 0 ? boxCorners(old) : old.corners
  return { ...old, form, corners }
}

function boxCorners({ x, y, width, height }: Omit<DraftOpening, 'mark'>): DraftCorner[] {
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
