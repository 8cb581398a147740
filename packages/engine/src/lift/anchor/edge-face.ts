import { distance, type Point } from '../../panel/point.ts'
import { distanceToSegment, edges } from '../../panel/polygon.ts'
import { type Region, ringsOf } from '../../panel/region.ts'
import { known, unknown, type Worked } from '../../working/worked.ts'
import { dot, fromTo } from './frame.ts'

/** How far an edge insert may lie from its edge, mm. */
const ON_EDGE = 1

/** The face that an edge insert enters: length of the edge × thickness of the panel; x along the edge, y across the thickness. */
export interface EdgeFace {
  readonly region: Region
  /** Inserts on it, half way through the thickness. */
  readonly at: readonly Point[]
  /** Concrete behind the face at the inserts, mm. */
  readonly thickness: number
}

/**
 * Turns inserts on one edge of a panel into a case on that edge's own face. The face ends where, at any depth down to that of the insert,
 * the concrete ends; it is as thick as the concrete straight behind the inserts.
 *
 * Unknown where an insert is on no edge, or the inserts are on more than one.
 */
export function edgeFace({
  region,
  at,
  depth,
  thickness,
}: {
  readonly region: Region
  readonly at: readonly Point[]
  readonly depth: number
  /** Of the panel, mm. */
  readonly thickness: number
}): Worked<EdgeFace> {
  const sides = ringsOf(region).flatMap(edges)
  const nearest = (point: Point) =>
    sides.reduce((a, b) => (distanceToSegment(point, b) < distanceToSegment(point, a) ? b : a))
  const first = at[0]
  if (first === undefined || sides.length === 0) return unknown('at: an insert on an edge')
  const [from, to] = nearest(first)
  if (at.some((point) => distanceToSegment(point, [from, to]) > ON_EDGE)) {
    return unknown('at: edge inserts of one group lie on one edge')
  }
  const length = distance(from, to)
  const along: Point = [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
  // Concrete lies to the left of an edge.
  const inward: Point = [-along[1], along[0]]
  const places = at.map((point) => dot(fromTo(from, point), along))
  const [low, high] = [Math.min(...places), Math.max(...places)]
  let [start, end, behind] = [0, length, Number.POSITIVE_INFINITY]
  for (const [a, b] of sides) {
    const [p, q] = [a, b].map((corner) => {
      const arm = fromTo(from, corner)
      return [dot(arm, along), dot(arm, inward)] as const
    }) as [readonly [number, number], readonly [number, number]]
    const within = spanWithin(p, q, depth)
    if (within !== null) {
      if (within[1] <= low) start = Math.max(start, within[1])
      else if (within[0] >= high) end = Math.min(end, within[0])
    }
    behind = Math.min(behind, depthOver(p, q, low, high))
  }
  if (!(start < low && high < end)) return unknown('at: an edge insert at a corner of its edge')
  if (!Number.isFinite(behind)) return unknown('outline: no concrete behind the edge insert')
  return known(
    {
      region: [
        {
          outline: [
            [start, 0],
            [end, 0],
            [end, thickness],
            [start, thickness],
          ],
          holes: [],
        },
      ],
      at: places.map((t): Point => [t, thickness / 2]),
      thickness: behind,
    },
    [],
  )
}

/** Extent along the edge of the part of a side that lies behind it by more than nothing and not deeper than `depth`; null where none does. */
function spanWithin(
  p: readonly [number, number],
  q: readonly [number, number],
  depth: number,
): [number, number] | null {
  const [lower, upper] = p[1] <= q[1] ? [p, q] : [q, p]
  const least = 1e-6
  if (upper[1] <= least || lower[1] >= depth) return null
  const at = (y: number) => lower[0] + ((upper[0] - lower[0]) * (y - lower[1])) / (upper[1] - lower[1])
  const one = lower[1] < least ? at(least) : lower[0]
  const other = upper[1] > depth ? at(depth) : upper[0]
  return one < other ? [one, other] : [other, one]
}

/** Least depth of a side straight behind the stretch from `low` to `high`; infinite where it is not behind it. */
function depthOver(
  p: readonly [number, number],
  q: readonly [number, number],
  low: number,
  high: number,
): number {
  const [left, right] = p[0] <= q[0] ? [p, q] : [q, p]
  if (right[0] < low || left[0] > high) return Number.POSITIVE_INFINITY
  const at = (t: number) =>
    right[0] > left[0] ? left[1] + ((right[1] - left[1]) * (t - left[0])) / (right[0] - left[0]) : left[1]
  const depths = [at(Math.max(low, left[0])), at(Math.min(high, right[0]))].filter((y) => y > 1e-6)
  return right[0] > left[0]
    ? Math.min(Number.POSITIVE_INFINITY, ...depths)
    : Math.min(Number.POSITIVE_INFINITY, ...[left[1], right[1]].filter((y) => y > 1e-6))
}
