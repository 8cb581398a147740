import { type Drawing, type Point, type Ring, signedArea } from '@castwright/engine/panel'
import { type Ground, type MarkShapes, markShapes } from './marks.ts'

/** More corners than this are not numbered. */
export const MOST_NUMBERED = 24

/** Numbers of the corners in the order of the drawing, each a little inside its corner. `only`: corners from 0, where not all are meant. */
export function cornerNumbers(
  ground: Ground & { readonly scale: number },
  drawing: Drawing,
  only?: readonly number[],
): MarkShapes {
  const outline = drawing.outline as unknown as Ring
  const meant = only ?? outline.map((_, index) => index)
  if (meant.length > MOST_NUMBERED) return { shapes: [], notes: [] }
  return markShapes(
    ground,
    'zone-mark',
    meant.map((index) => ({ at: numberPlace(ground, outline, index), letter: String(index + 1) })),
  )
}

/** Where the number of a corner stands, mm of the panel. */
export function numberPlace(
  { text, scale }: { readonly text: number; readonly scale: number },
  outline: Ring,
  index: number,
): Point {
  return insideOf(outline, index, (text * 1.5) / scale)
}

/** A place on the concrete's side of a corner, so far from it along the line that halves it. */
function insideOf(outline: Ring, index: number, away: number): Point {
  const count = outline.length
  const [p, q, r] = [index + count - 1, index, index + 1].map((k) => outline[k % count] as Point) as [
    Point,
    Point,
    Point,
  ]
  const turn = Math.sign(signedArea(outline)) || 1
  const [a, b] = [inward(p, q, turn), inward(q, r, turn)]
  const [x, y] = [a[0] + b[0], a[1] + b[1]]
  const size = Math.hypot(x, y)
  // Far enough that both sides keep their distance, but never far away in a sharp corner.
  const share = size > 0 ? Math.min(2, 2 / size) / size : 0
  return [q[0] + x * away * share, q[1] + y * away * share]
}

/** Of length 1, across a side towards the concrete. */
export function inward([ax, ay]: Point, [bx, by]: Point, turn: number): Point {
  const length = Math.hypot(bx - ax, by - ay) || 1
  return [(-(by - ay) / length) * turn, ((bx - ax) / length) * turn]
}
