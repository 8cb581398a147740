/** Symmetric and banded: row by row, the diagonal last. */
export interface Band {
  readonly size: number
  readonly half: number
  readonly at: Float64Array
}

/** Adds to one place, above or below the diagonal alike. */
export function addTo({ at, half }: Band, row: number, column: number, value: number): void {
  const [low, high] = row < column ? [row, column] : [column, row]
  const place = high * (half + 1) + half - (high - low)
  at[place] = (at[place] as number) + value
}

/** Cholesky in place. */
export function factorBand({ size, half, at }: Band): void {
  const wide = half + 1
  for (let i = 0; i < size; i += 1) {
    const first = Math.max(0, i - half)
    for (let j = first; j <= i; j += 1) {
      const start = Math.max(first, j - half)
      let sum = at[i * wide + half - (i - j)] as number
      for (let k = start; k < j; k += 1)
        sum -= (at[i * wide + half - (i - k)] as number) * (at[j * wide + half - (j - k)] as number)
      at[i * wide + half - (i - j)] = i === j ? Math.sqrt(sum) : sum / (at[j * wide + half] as number)
    }
  }
}

/** With the factor in place of the matrix. */
export function solveBand({ size, half, at }: Band, load: Float64Array): Float64Array {
  const wide = half + 1
  const x = Float64Array.from(load)
  for (let i = 0; i < size; i += 1) {
    let sum = x[i] as number
    for (let k = Math.max(0, i - half); k < i; k += 1)
      sum -= (at[i * wide + half - (i - k)] as number) * (x[k] as number)
    x[i] = sum / (at[i * wide + half] as number)
  }
  for (let i = size - 1; i >= 0; i -= 1) {
    const value = (x[i] as number) / (at[i * wide + half] as number)
    x[i] = value
    for (let k = Math.max(0, i - half); k < i; k += 1)
      x[k] = (x[k] as number) - (at[i * wide + half - (i - k)] as number) * value
  }
  return x
}
