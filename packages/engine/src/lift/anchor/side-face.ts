import type { Point } from '../../panel/point.ts'
import { dot, fromTo } from './frame.ts'

/** An edge of the face, concrete on its left; the side face of the panel stands below it. */
export interface SideFace {
  readonly from: Point
  readonly to: Point
  /** Unit vector along the edge. */
  readonly along: Point
  /** Unit vector out of the concrete. */
  readonly outward: Point
}

/** An edge between two corners. */
export type Side = readonly [Point, Point]

/** @param sides of a region, outlines counter-clockwise, holes clockwise */
export function sideFaces(sides: readonly Side[]): SideFace[] {
  return sides.flatMap(([from, to]) => {
    const [x, y] = fromTo(from, to)
    const length = Math.hypot(x, y)
    if (!(length > 0)) return []
    return [{ from, to, along: [x / length, y / length], outward: [y / length, -x / length] } as const]
  })
}

/** Distance from a point straight to the line of a side face, mm; not above 0 where the point lies behind it. */
export function straightTo(face: SideFace, point: Point): number {
  return dot(fromTo(point, face.from), face.outward)
}

/** A boundary segment seen from an insert: along the side face and toward it, mm. */
type Seen = readonly [readonly [t: number, y: number], readonly [t: number, y: number]]

/** What stands between an insert and a line parallel to a side face, `edge` away from it. */
export interface Sight {
  /** Whether nothing stands straight between. */
  readonly open: boolean
  /** Parts of the line that are in sight, from the foot of the insert, mm, in order; within `half` either way. */
  readonly spans: readonly (readonly [number, number])[]
  /** Nearest edge to the left and to the right, looking along the side face, mm; null where none stands before the line. */
  readonly sides: readonly [number | null, number | null]
}

/**
 * Looks from an insert at a line parallel to a side face. A line nearer than the face stands for a face with the concrete beyond taken off.
 */
export function sightOf({
  sides,
  face,
  point,
  edge,
  half,
}: {
  /** Every edge of the face that the insert enters. */
  readonly sides: readonly Side[]
  readonly face: SideFace
  readonly point: Point
  readonly edge: number
  readonly half: number
}): Sight {
  const before = edge * (1 - 1e-7)
  const seen = sides.flatMap(([a, b]) => {
    const cut = between(
      [
        [dot(fromTo(point, a), face.along), dot(fromTo(point, a), face.outward)],
        [dot(fromTo(point, b), face.along), dot(fromTo(point, b), face.outward)],
      ],
      edge * 1e-9,
      before,
    )
    return cut === null ? [] : [cut]
  })
  const hidden = seen.map(([[ta, ya], [tb, yb]]): readonly [number, number] => {
    const [p, q] = [(ta * edge) / ya, (tb * edge) / yb]
    return p < q ? [p, q] : [q, p]
  })
  const left = seen.flatMap(([[ta], [tb]]) => (Math.max(ta, tb) < 0 ? [-Math.max(ta, tb)] : []))
  const right = seen.flatMap(([[ta], [tb]]) => (Math.min(ta, tb) > 0 ? [Math.min(ta, tb)] : []))
  return {
    open: !hidden.some(([p, q]) => p < -1e-9 * edge && q > 1e-9 * edge),
    spans: less([-half, half], hidden),
    sides: [left.length > 0 ? Math.min(...left) : null, right.length > 0 ? Math.min(...right) : null],
  }
}

/** The part of a segment with y from `low` to `high`, or null. */
function between([a, b]: Seen, low: number, high: number): Seen | null {
  const [lower, upper] = a[1] <= b[1] ? [a, b] : [b, a]
  if (upper[1] <= low || lower[1] >= high) return null
  const at = (y: number): readonly [number, number] => [
    lower[0] + ((upper[0] - lower[0]) * (y - lower[1])) / (upper[1] - lower[1]),
    y,
  ]
  return [lower[1] < low ? at(low) : lower, upper[1] > high ? at(high) : upper]
}

/** An interval less others. */
function less(
  [from, to]: readonly [number, number],
  others: readonly (readonly [number, number])[],
): [number, number][] {
  const spans: [number, number][] = []
  let start = from
  for (const [p, q] of [...others].sort((a, b) => a[0] - b[0])) {
    if (p > start) spans.push([start, Math.min(p, to)])
    start = Math.max(start, q)
    if (start >= to) break
  }
  if (start < to) spans.push([start, to])
  return spans.filter(([p, q]) => q > p)
}

/** Length of intervals together, mm. */
export function unionLength(spans: readonly (readonly [number, number])[]): number {
  let [length, end] = [0, Number.NEGATIVE_INFINITY]
  for (const [p, q] of [...spans].sort((a, b) => a[0] - b[0])) {
    length += Math.max(0, q - Math.max(p, end))
    end = Math.max(end, q)
  }
  return length
}
