import type { Point } from '../../panel/point.ts'
import { bounds, edges } from '../../panel/polygon.ts'
import type { Piece } from '../../panel/region.ts'

export type Side = 'bottom' | 'top' | 'left' | 'right'
export type Axis = 'x' | 'y'

/** Sides of an outline within this of its farthest extent lie on that edge of the panel, mm. */
const ON_SIDE = 1

/** Points of a line support stand at most this many thicknesses apart: finer changes the peak by less than 0.5 %. */
const SPACING = 3
/** From the end of a line to its first point, mm: an end on an edge lies in the concrete. */
const INSET = 10

/** The parts of a panel's edge that lie on its farthest extent to one side; empty where that is a single corner. */
export function partsOnSide({ outline }: Piece, side: Side): (readonly [Point, Point])[] {
  const box = bounds(outline)
  const [axis, at] =
    side === 'bottom' || side === 'top' ? ([1, box[side]] as const) : ([0, box[side]] as const)
  return edges(outline).filter(
    ([a, b]) => Math.abs(a[axis] - at) <= ON_SIDE && Math.abs(b[axis] - at) <= ON_SIDE,
  )
}

/** The parts of the line x = `at` (axis `x`) or y = `at` that lie in the concrete. */
export function partsOnLine({ outline, holes }: Piece, axis: Axis, at: number): (readonly [Point, Point])[] {
  const [fixed, free] = axis === 'x' ? ([0, 1] as const) : ([1, 0] as const)
  const crossings: number[] = []
  for (const [a, b] of [outline, ...holes].flatMap(edges)) {
    // A corner on the line counts with the side that lies above it: each crossing once.
    if (a[fixed] > at === b[fixed] > at) continue
    crossings.push(a[free] + ((at - a[fixed]) / (b[fixed] - a[fixed])) * (b[free] - a[free]))
  }
  crossings.sort((p, q) => p - q)
  const parts: (readonly [Point, Point])[] = []
  for (let i = 0; i + 1 < crossings.length; i += 2) {
    const [from, to] = [crossings[i]!, crossings[i + 1]!]
    if (to - from > 4 * INSET)
      parts.push(
        axis === 'x'
          ? [
              [at, from],
              [at, to],
            ]
          : [
              [from, at],
              [to, at],
            ],
      )
  }
  return parts
}

/** Points along a line that carry what lies on it. */
export function pointsAlong([a, b]: readonly [Point, Point], thickness: number): Point[] {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1])
  const inset = Math.min(INSET, length / 4)
  const count = Math.max(2, Math.ceil((length - 2 * inset) / (SPACING * thickness)) + 1)
  return Array.from({ length: count }, (_, i): Point => {
    const s = (inset + (i * (length - 2 * inset)) / (count - 1)) / length
    return [a[0] + s * (b[0] - a[0]), a[1] + s * (b[1] - a[1])]
  })
}

/** Unit vector along the longest side of the outline: the way that a panel's strips are taken. The first of equals. */
export function panelAxis({ outline }: Piece): Point {
  let axis: Point = [1, 0]
  let longest = 0
  for (const [a, b] of edges(outline)) {
    const length = Math.hypot(b[0] - a[0], b[1] - a[1])
    if (length > longest * (1 + 1e-9))
      [axis, longest] = [[(b[0] - a[0]) / length, (b[1] - a[1]) / length], length]
  }
  return axis
}
