/**
 * Largest c·x over x ≥ 0 with A x ≤ b, b ≥ 0: the simplex method on a dense table from x = 0, which is allowed. Null where it has no bound.
 *
 * Source: G. B. Dantzig, Linear Programming and Extensions (1963) (from memory); least index against cycling: R. G. Bland (1977) (from memory).
 */
export function maximise(
  gain: readonly number[],
  rows: readonly (readonly number[])[],
  limits: readonly number[],
): number[] | null {
  const [n, m] = [gain.length, rows.length]
  const width = n + m + 1
  const table = new Float64Array((m + 1) * width)
  for (const [i, row] of rows.entries()) {
    for (let j = 0; j < n; j += 1) table[i * width + j] = row[j]!
    table[i * width + n + i] = 1
    table[i * width + width - 1] = Math.max(0, limits[i]!)
  }
  for (let j = 0; j < n; j += 1) table[m * width + j] = -gain[j]!
  const basis = Int32Array.from({ length: m }, (_, i) => n + i)
  for (let round = 0; round < ROUNDS; round += 1) {
    const column = entering(table, m, width, round > ROUNDS / 4)
    if (column < 0) return valuesOf(table, basis, n, width)
    const row = leaving(table, m, width, column, basis)
    if (row < 0) return null
    pivot(table, m, width, row, column)
    basis[row] = column
  }
  return valuesOf(table, basis, n, width)
}

/** Rounds after which what is found so far is taken: it is allowed, only not the best. */
const ROUNDS = 2000
const ZERO = 1e-11

function entering(table: Float64Array, m: number, width: number, first: boolean): number {
  let [best, least] = [-1, -ZERO]
  for (let j = 0; j < width - 1; j += 1) {
    const value = table[m * width + j]!
    if (value >= least) continue
    best = j
    least = value
    if (first) break
  }
  return best
}

function leaving(table: Float64Array, m: number, width: number, column: number, basis: Int32Array): number {
  let [best, least] = [-1, Number.POSITIVE_INFINITY]
  for (let i = 0; i < m; i += 1) {
    const by = table[i * width + column]!
    if (!(by > ZERO)) continue
    const ratio = table[i * width + width - 1]! / by
    if (ratio < least - ZERO || (ratio <= least + ZERO && best >= 0 && basis[i]! < basis[best]!)) {
      best = i
      least = Math.min(least, ratio)
    }
  }
  return best
}

function pivot(table: Float64Array, m: number, width: number, row: number, column: number): void {
  const by = table[row * width + column]!
  for (let j = 0; j < width; j += 1) table[row * width + j]! /= by
  for (let i = 0; i <= m; i += 1) {
    const factor = table[i * width + column]!
    if (i === row || factor === 0) continue
    for (let j = 0; j < width; j += 1) table[i * width + j]! -= factor * table[row * width + j]!
  }
}

function valuesOf(table: Float64Array, basis: Int32Array, n: number, width: number): number[] {
  const out = new Array<number>(n).fill(0)
  for (const [i, j] of basis.entries()) if (j < n) out[j] = table[i * width + width - 1]!
  return out
}
