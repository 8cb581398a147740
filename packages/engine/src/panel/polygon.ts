import { orient2d } from 'robust-predicates'
import { distance, type Point, type Ring } from './point.ts'

/** Edges of a ring, the closing one included. */
export function edges(ring: Ring): [Point, Point][] {
  return ring.map((corner, index) => [corner, ring[(index + 1) % ring.length] as Point])
}

/**
 * Area, mm², positive when the ring runs counter-clockwise. Coordinates are taken from the first corner, so that a
 * panel far from the origin loses no digits.
 */
export function signedArea(ring: Ring): number {
  const [x0, y0] = ring[0] ?? [0, 0]
  let twice = 0
  for (const [a, b] of edges(ring)) twice += (a[0] - x0) * (b[1] - y0) - (b[0] - x0) * (a[1] - y0)
  return twice / 2
}

/** Area, mm², whatever the direction. */
export function area(ring: Ring): number {
  return Math.abs(signedArea(ring))
}

/** Centre of area, mm. Not defined for a ring of no area: null. */
export function centroid(ring: Ring): Point | null {
  const size = signedArea(ring)
  if (!(Math.abs(size) > 0)) return null
  const [x0, y0] = ring[0] ?? [0, 0]
  let x = 0
  let y = 0
  for (const [a, b] of edges(ring)) {
    const cross = (a[0] - x0) * (b[1] - y0) - (b[0] - x0) * (a[1] - y0)
    x += (a[0] + b[0] - 2 * x0) * cross
    y += (a[1] + b[1] - 2 * y0) * cross
  }
  return [x0 + x / (6 * size), y0 + y / (6 * size)]
}

export interface Bounds {
  readonly left: number
  readonly right: number
  readonly bottom: number
  readonly top: number
}

export function bounds(ring: Ring): Bounds {
  let [left, right, bottom, top] = [
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ]
  for (const [x, y] of ring) {
    left = Math.min(left, x)
    right = Math.max(right, x)
    bottom = Math.min(bottom, y)
    top = Math.max(top, y)
  }
  return { left, right, bottom, top }
}

/** The ring counter-clockwise, as outlines are kept. */
export function counterClockwise(ring: Ring): Ring {
  return signedArea(ring) < 0 ? [...ring].reverse() : ring
}

/**
 * First fault that keeps a ring from being a simple polygon, by corner index, or null. Repeated corners, an edge that
 * crosses or touches another, and a ring of no area are faults. Exact predicates: no tolerance decides.
 */
export function ringFault(ring: Ring): { readonly corner: number; readonly fault: string } | null {
  const sides = edges(ring)
  for (const [index, [a, b]] of sides.entries()) {
    if (a[0] === b[0] && a[1] === b[1])
      return { corner: (index + 1) % ring.length, fault: 'repeats the corner before it' }
  }
  const last = sides.length - 1
  for (const [i, first] of sides.entries()) {
    for (let j = i + 1; j <= last; j += 1) {
      const second = sides[j] as [Point, Point]
      if (boxesApart(first, second)) continue
      const closing = i === 0 && j === last
      const met =
        j === i + 1
          ? foldsBack([first, second])
          : closing
            ? foldsBack([second, first])
            : segmentsMeet(first, second)
      if (met) return { corner: j, fault: `the edge from here meets the edge from corner ${i}` }
    }
  }
  if (area(ring) === 0) return { corner: 0, fault: 'the corners enclose no area' }
  return null
}

/** A quick no for edges far from each other: an outline of many corners is mostly such pairs. */
function boxesApart([a, b]: readonly [Point, Point], [c, d]: readonly [Point, Point]): boolean {
  return (
    Math.max(a[0], b[0]) < Math.min(c[0], d[0]) ||
    Math.max(c[0], d[0]) < Math.min(a[0], b[0]) ||
    Math.max(a[1], b[1]) < Math.min(c[1], d[1]) ||
    Math.max(c[1], d[1]) < Math.min(a[1], b[1])
  )
}

/** Whether two rings have a point of their edges in common, touching included. Exact. */
export function ringsMeet(one: Ring, other: Ring): boolean {
  const others = edges(other)
  return edges(one).some((edge) => others.some((side) => !boxesApart(edge, side) && segmentsMeet(edge, side)))
}

/** Two edges that share a corner lie on each other. */
function foldsBack([[a, b], [, c]]: readonly [[Point, Point], [Point, Point]]): boolean {
  if (orient2d(a[0], a[1], b[0], b[1], c[0], c[1]) !== 0) return false
  return (a[0] - b[0]) * (c[0] - b[0]) + (a[1] - b[1]) * (c[1] - b[1]) > 0
}

/** Whether two closed segments have a point in common, touching included. Exact. */
export function segmentsMeet([a, b]: readonly [Point, Point], [c, d]: readonly [Point, Point]): boolean {
  const o1 = Math.sign(orient2d(a[0], a[1], b[0], b[1], c[0], c[1]))
  const o2 = Math.sign(orient2d(a[0], a[1], b[0], b[1], d[0], d[1]))
  const o3 = Math.sign(orient2d(c[0], c[1], d[0], d[1], a[0], a[1]))
  const o4 = Math.sign(orient2d(c[0], c[1], d[0], d[1], b[0], b[1]))
  if (o1 !== o2 && o3 !== o4) return true
  return (
    (o1 === 0 && inBox(c, a, b)) ||
    (o2 === 0 && inBox(d, a, b)) ||
    (o3 === 0 && inBox(a, c, d)) ||
    (o4 === 0 && inBox(b, c, d))
  )
}

function inBox(p: Point, a: Point, b: Point): boolean {
  return (
    p[0] >= Math.min(a[0], b[0]) &&
    p[0] <= Math.max(a[0], b[0]) &&
    p[1] >= Math.min(a[1], b[1]) &&
    p[1] <= Math.max(a[1], b[1])
  )
}

/** Where a point lies to a ring. On an edge or corner is `edge`; exact. */
export function placeInRing(point: Point, ring: Ring): 'inside' | 'edge' | 'outside' {
  let inside = false
  for (const [a, b] of edges(ring)) {
    const turn = orient2d(a[0], a[1], b[0], b[1], point[0], point[1])
    if (turn === 0 && inBox(point, a, b)) return 'edge'
    if (a[1] > point[1] !== b[1] > point[1] && turn > 0 === a[1] > b[1]) inside = !inside
  }
  return inside ? 'inside' : 'outside'
}

/** Nearest distance from a point to a segment, mm. */
export function distanceToSegment(point: Point, [a, b]: readonly [Point, Point]): number {
  return distance(point, nearestOnSegment(point, [a, b]))
}

export function nearestOnSegment(point: Point, [a, b]: readonly [Point, Point]): Point {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  const square = dx * dx + dy * dy
  const along = square > 0 ? ((point[0] - a[0]) * dx + (point[1] - a[1]) * dy) / square : 0
  const t = Math.min(1, Math.max(0, along))
  return [a[0] + t * dx, a[1] + t * dy]
}

/** Nearest distance from a point to the line of a ring, mm. */
export function distanceToRing(point: Point, ring: Ring): number {
  return edges(ring).reduce(
    (least, edge) => Math.min(least, distanceToSegment(point, edge)),
    Number.POSITIVE_INFINITY,
  )
}
