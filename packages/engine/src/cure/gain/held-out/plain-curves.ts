import { strengthDevelopment } from '../../../codes/eu/en1992-1-1-2004/strength-development.ts'
import type { AgedStrength } from '../aged-strength.ts'

/** Median strength of early tests at each age, in order of age. */
function byAge(early: readonly AgedStrength[]): AgedStrength[] {
  const ages = [...new Set(early.map(({ days }) => days))].sort((a, b) => a - b)
  return ages.map((days) => ({
    days,
    strength: median(early.filter((test) => test.days === days).map((test) => test.strength)),
  }))
}

/** Straight line of strength over ln age through the early tests; null with fewer than two ages. */
export function logLinear(early: readonly AgedStrength[], late: number): number | null {
  const points = byAge(early).map(({ days, strength }) => [Math.log(days), strength] as const)
  if (points.length < 2) return null
  const [x, y] = [0, 1].map((at) => points.reduce((sum, point) => sum + (point[at] ?? 0), 0) / points.length)
  const [mx, my] = [x ?? 0, y ?? 0]
  const slope =
    points.reduce((sum, [a, b]) => sum + (a - mx) * (b - my), 0) /
    points.reduce((sum, [a]) => sum + (a - mx) ** 2, 0)
  return my + slope * (Math.log(late) - mx)
}

/** The curve of EN 1992-1-1:2004, 3.1.2(6) through the last early test. */
export function codeCurve(early: readonly AgedStrength[], late: number, s: number): number {
  const last = byAge(early).at(-1) as AgedStrength
  return (last.strength * strengthDevelopment(late, s)) / strengthDevelopment(last.days, s)
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  const middle = sorted.length >> 1
  return sorted.length % 2 === 1
    ? (sorted[middle] ?? Number.NaN)
    : ((sorted[middle - 1] ?? Number.NaN) + (sorted[middle] ?? Number.NaN)) / 2
}
