/**
 * Solves a small dense system by elimination with row exchange, rows scaled first. `null` where it is singular: a pivot
 * below `10⁻¹¹` of its row.
 */
export function solveDense(
  matrix: readonly (readonly number[])[],
  right: readonly number[],
): number[] | null {
  const n = right.length
  const a = matrix.map((row, i) => [...row, right[i]!])
  for (const row of a) {
    const largest = row.slice(0, n).reduce((most, value) => Math.max(most, Math.abs(value)), 0)
    if (!(largest > 0)) return null
    for (let j = 0; j <= n; j += 1) row[j]! /= largest
  }
  for (let k = 0; k < n; k += 1) {
    let pivot = k
    for (let i = k + 1; i < n; i += 1) if (Math.abs(a[i]![k]!) > Math.abs(a[pivot]![k]!)) pivot = i
    if (!(Math.abs(a[pivot]![k]!) > SINGULAR)) return null
    ;[a[k], a[pivot]] = [a[pivot]!, a[k]!]
    for (let i = k + 1; i < n; i += 1) {
      const factor = a[i]![k]! / a[k]![k]!
      if (factor === 0) continue
      for (let j = k; j <= n; j += 1) a[i]![j]! -= factor * a[k]![j]!
    }
  }
  const out = new Array<number>(n).fill(0)
  for (let i = n - 1; i >= 0; i -= 1) {
    let sum = a[i]![n]!
    for (let j = i + 1; j < n; j += 1) sum -= a[i]![j]! * out[j]!
    out[i] = sum / a[i]![i]!
  }
  return out
}

const SINGULAR = 1e-11
