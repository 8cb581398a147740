import type { Point, Ring } from '../panel/point.ts'
import { bounds } from '../panel/polygon.ts'

/** A measured point, mm, in any frame: the panel may lie, lean or stand. */
export type Point3 = readonly [x: number, y: number, z: number]

export function minus(a: Point3, b: Point3): Point3 {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

export function dot(a: Point3, b: Point3): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

export function cross(a: Point3, b: Point3): Point3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

export function span(a: Point3, b: Point3): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2])
}

export function unit(a: Point3): Point3 {
  const size = Math.hypot(...a)
  return [a[0] / size, a[1] / size, a[2] / size]
}

export function middleOf(points: readonly Point3[]): Point3 {
  const n = points.length
  return [0, 1, 2].map(
    (axis) => points.reduce((sum, point) => sum + (point[axis] ?? 0), 0) / n,
  ) as unknown as Point3
}

/**
 * Normal of the mean plane of corners in order, of length 1: the sum of the areas that the sides sweep. It turns with
 * the panel, so heights above the plane do not depend on how the panel stood when it was measured. Null for no area.
 */
export function normalOf(corners: readonly Point3[]): Point3 | null {
  const swept = sweptArea(corners)
  return Math.hypot(...swept) > 0 ? unit(swept) : null
}

/** Area that corners in order enclose, mm². */
export function areaOf(corners: readonly Point3[]): number {
  return Math.hypot(...sweptArea(corners)) / 2
}

function sweptArea(corners: readonly Point3[]): Point3 {
  const middle = middleOf(corners)
  let sum: Point3 = [0, 0, 0]
  for (const [index, corner] of corners.entries()) {
    const next = corners[(index + 1) % corners.length] as Point3
    const part = cross(minus(corner, middle), minus(next, middle))
    sum = [sum[0] + part[0], sum[1] + part[1], sum[2] + part[2]]
  }
  return sum
}

/**
 * Which four corners of an outline the diagonals run between: those of its box where it has all four, else its own where
 * it has just four. Indices in the order of the outline. Null for outlines such as gables.
 */
export function diagonalCorners(outline: Ring): readonly [number, number, number, number] | null {
  const { left, right, bottom, top } = bounds(outline)
  const boxed = outline.flatMap(([x, y], index) =>
    (x === left || x === right) && (y === bottom || y === top) ? [index] : [],
  )
  const four = boxed.length === 4 ? boxed : outline.length === 4 ? [0, 1, 2, 3] : null
  return four as readonly [number, number, number, number] | null
}

/** Measured corners of an outline's box, in order; null where they were not measured or the outline has not all four. */
export function boxCorners(
  corners: readonly Point3[],
  outline: Ring,
): readonly [Point3, Point3, Point3, Point3] | null {
  const four = diagonalCorners(outline)
  if (four === null || corners.length < outline.length) return null
  const { left, right, bottom, top } = bounds(outline)
  const boxed = four.every((index) => {
    const [x, y] = outline[index] as Point
    return (x === left || x === right) && (y === bottom || y === top)
  })
  return boxed
    ? (four.map((index) => corners[index]) as unknown as readonly [Point3, Point3, Point3, Point3])
    : null
}
