/** x to the right, y up, seen from above into the mould, mm; origin at a panel corner. */
export type Point = readonly [x: number, y: number]

/** Corners of a simple polygon in order, either direction, the last not repeated. */
export type Ring = readonly Point[]

export function distance(a: Point, b: Point): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1])
}
