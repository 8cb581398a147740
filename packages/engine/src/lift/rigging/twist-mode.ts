import type { Point } from '../../panel/point.ts'
import { IN_LINE } from '../supports.ts'

/**
 * Loads of four picks that are in balance among themselves, the greatest of size 1: a rectangle's are +1, −1, +1, −1 round it. Null where all four
 * are in one line.
 *
 * Each is the area of the triangle of the other three, signs in turn.
 *
 * Source: statics.
 */
export function nullMode(points: readonly Point[]): readonly [number, number, number, number] | null {
  const [a, b, c, d] = points
  if (a === undefined || b === undefined || c === undefined || d === undefined || points.length !== 4)
    return null
  const mode = [area(b, c, d), -area(a, c, d), area(a, b, d), -area(a, b, c)] as const
  const most = Math.max(...mode.map(Math.abs))
  const span = Math.max(...points.flatMap((p) => points.map((q) => Math.hypot(p[0] - q[0], p[1] - q[1]))))
  if (!(most > IN_LINE * span)) return null
  const [va, vb, vc, vd] = mode
  return [va / most, vb / most, vc / most, vd / most]
}

/** Twice the area, mm²; positive when a, b, c turn left. */
function area(a: Point, b: Point, c: Point): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
}
