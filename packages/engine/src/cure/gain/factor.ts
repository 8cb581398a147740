/**
 * Lower Cholesky factor of a symmetric positive definite matrix, row by row in one array; the upper part stays 0. Null
 * where a pivot is not above 0.
 */
export function factorOf(matrix: Float64Array, size: number): Float64Array | null {
  const factor = new Float64Array(size * size)
  for (let row = 0; row < size; row += 1) {
    const at = row * size
    for (let column = 0; column <= row; column += 1) {
      const other = column * size
      let sum = matrix[at + column] as number
      for (let k = 0; k < column; k += 1) sum -= (factor[at + k] as number) * (factor[other + k] as number)
      if (row === column) {
        if (!(sum > 0)) return null
        factor[at + row] = Math.sqrt(sum)
      } else factor[at + column] = sum / (factor[other + column] as number)
    }
  }
  return factor
}

/** Solves `L x = b`. */
export function forward(factor: Float64Array, size: number, right: ArrayLike<number>): Float64Array {
  const x = new Float64Array(size)
  for (let row = 0; row < size; row += 1) {
    const at = row * size
    let sum = right[row] as number
    for (let k = 0; k < row; k += 1) sum -= (factor[at + k] as number) * (x[k] as number)
    x[row] = sum / (factor[at + row] as number)
  }
  return x
}

/** Solves `Lᵀ x = b`. */
export function backward(factor: Float64Array, size: number, right: ArrayLike<number>): Float64Array {
  const x = Float64Array.from(right)
  for (let row = size - 1; row >= 0; row -= 1) {
    const at = row * size
    const value = (x[row] as number) / (factor[at + row] as number)
    x[row] = value
    for (let k = 0; k < row; k += 1) x[k] = (x[k] as number) - (factor[at + k] as number) * value
  }
  return x
}

/** Inverse from the factor: the whole symmetric matrix. */
export function inverseOf(factor: Float64Array, size: number): Float64Array {
  // Rows of the inverse of L, in which everything right of the diagonal is 0.
  const lower = new Float64Array(size * size)
  for (let row = 0; row < size; row += 1) {
    const at = row * size
    const pivot = factor[at + row] as number
    for (let k = 0; k < row; k += 1) {
      const share = (factor[at + k] as number) / pivot
      if (share === 0) continue
      for (let j = 0; j <= k; j += 1)
        lower[at + j] = (lower[at + j] as number) - share * (lower[k * size + j] as number)
    }
    lower[at + row] = 1 / pivot
  }
  const inverse = new Float64Array(size * size)
  for (let row = 0; row < size; row += 1) {
    for (let i = 0; i <= row; i += 1) {
      const share = lower[row * size + i] as number
      if (share === 0) continue
      for (let j = 0; j <= i; j += 1)
        inverse[i * size + j] = (inverse[i * size + j] as number) + share * (lower[row * size + j] as number)
    }
  }
  for (let i = 0; i < size; i += 1)
    for (let j = 0; j < i; j += 1) inverse[j * size + i] = inverse[i * size + j] as number
  return inverse
}
