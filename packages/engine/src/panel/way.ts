import { distance, type Point } from './point.ts'
import { distanceToSegment, segmentsMeet } from './polygon.ts'

/** Straight parts of an open line of points. */
export function parts(line: readonly Point[]): [Point, Point][] {
  return line.slice(1).map((to, i) => [line[i] as Point, to])
}

/** Length along an open line of points, mm. */
export function lengthOf(line: readonly Point[]): number {
  return parts(line).reduce((sum, [a, b]) => sum + distance(a, b), 0)
}

/** Least distance between two straight parts, mm; 0 where they cross. */
export function partsApart(one: readonly [Point, Point], other: readonly [Point, Point]): number {
  if (segmentsMeet(one, other)) return 0
  return Math.min(
    distanceToSegment(one[0], other),
    distanceToSegment(one[1], other),
    distanceToSegment(other[0], one),
    distanceToSegment(other[1], one),
  )
}

/** Least distance between two open lines, mm. */
export function linesApart(one: readonly Point[], other: readonly Point[]): number {
  return parts(one).reduce(
    (least, part) => parts(other).reduce((near, its) => Math.min(near, partsApart(part, its)), least),
    Number.POSITIVE_INFINITY,
  )
}

/** Points along a line, one in the middle of each of the even pieces it is cut into, none longer than `longest` mm. */
export function alongLine(
  line: readonly Point[],
  longest: number,
): { readonly at: Point; readonly length: number }[] {
  return parts(line).flatMap(([a, b]) => {
    const whole = distance(a, b)
    const count = Math.max(1, Math.ceil(whole / longest - 1e-9))
    return Array.from({ length: count }, (_, i) => {
      const share = (i + 0.5) / count
      return {
        at: [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])] as Point,
        length: whole / count,
      }
    })
  })
}
