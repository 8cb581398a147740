/**
 * One-sided 95 % points of Student's t by degrees of freedom. Source: standard statistical tables (from memory); the
 * test integrates the density as the second method. Between rows the smaller number of degrees is read: a wider band.
 */
const ROWS: readonly (readonly [degrees: number, t: number])[] = [
  [1, 6.3138],
  [2, 2.92],
  [3, 2.3534],
  [4, 2.1318],
  [5, 2.015],
  [6, 1.9432],
  [7, 1.8946],
  [8, 1.8595],
  [9, 1.8331],
  [10, 1.8125],
  [12, 1.7823],
  [15, 1.7531],
  [20, 1.7247],
  [25, 1.7081],
  [30, 1.6973],
  [40, 1.6839],
  [60, 1.6706],
  [120, 1.6577],
]

/** t for one in twenty beyond it. Null for fewer than one degree of freedom. */
export function student95(degrees: number): number | null {
  return ROWS.findLast(([row]) => row <= degrees)?.[1] ?? null
}
