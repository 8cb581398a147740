import type { Point } from '../../panel/point.ts'

/** Two directions at right angles: `along`, and `across` a quarter turn to the left of it. Unit length. */
export interface Frame {
  readonly along: Point
  readonly across: Point
}

export function frameAt(angle: number): Frame {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  return { along: [cos, sin], across: [-sin, cos] }
}

/** Vector from one point to another. */
export function fromTo(a: Point, b: Point): Point {
  return [b[0] - a[0], b[1] - a[1]]
}

export function dot(a: Point, b: Point): number {
  return a[0] * b[0] + a[1] * b[1]
}

/** A point of a frame about `centre`, back in the coordinates of the face. */
export function placed(centre: Point, { along, across }: Frame, u: number, v: number): Point {
  return [centre[0] + u * along[0] + v * across[0], centre[1] + u * along[1] + v * across[1]]
}

/** Weighted middle of points. */
export function middle(at: readonly Point[], weights: readonly number[]): Point {
  let [x, y, all] = [0, 0, 0]
  for (const [k, point] of at.entries()) {
    const weight = weights[k] ?? 0
    x += weight * point[0]
    y += weight * point[1]
    all += weight
  }
  return [x / all, y / all]
}
