/** Gauss–Jordan with row pivots; null where the matrix is singular. `matrix` is overwritten. */
export function invert(matrix: Float64Array, rows: number): Float64Array | null {
  const inverse = new Float64Array(rows * rows)
  for (let row = 0; row < rows; row += 1) inverse[row * rows + row] = 1
  for (let place = 0; place < rows; place += 1) {
    let best = place
    for (let row = place + 1; row < rows; row += 1) {
      if (Math.abs(matrix[row * rows + place] as number) > Math.abs(matrix[best * rows + place] as number))
        best = row
    }
    const by = matrix[best * rows + place] as number
    if (Math.abs(by) < 1e-11) return null
    if (best !== place) {
      swapRows(matrix, rows, best, place)
      swapRows(inverse, rows, best, place)
    }
    const at = place * rows
    const inRow: number[] = []
    const inInverse: number[] = []
    for (let k = 0; k < rows; k += 1) {
      if (k >= place && (matrix[at + k] as number) !== 0) {
        matrix[at + k] = (matrix[at + k] as number) / by
        inRow.push(k)
      }
      if ((inverse[at + k] as number) !== 0) {
        inverse[at + k] = (inverse[at + k] as number) / by
        inInverse.push(k)
      }
    }
    for (let row = 0; row < rows; row += 1) {
      const rate = matrix[row * rows + place] as number
      if (row === place || rate === 0) continue
      const to = row * rows
      for (const k of inRow) matrix[to + k] = (matrix[to + k] as number) - rate * (matrix[at + k] as number)
      for (const k of inInverse)
        inverse[to + k] = (inverse[to + k] as number) - rate * (inverse[at + k] as number)
    }
  }
  return inverse
}

function swapRows(matrix: Float64Array, rows: number, a: number, b: number): void {
  const kept = matrix.slice(a * rows, (a + 1) * rows)
  matrix.copyWithin(a * rows, b * rows, (b + 1) * rows)
  matrix.set(kept, b * rows)
}
