import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { SEED } from '../testing.ts'
import { backward, factorOf, forward, inverseOf } from './factor.ts'

/** `M Mᵀ + I`: symmetric and positive definite. */
const matrices = fc
  .integer({ min: 1, max: 7 })
  .chain((n) => fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: n * n, maxLength: n * n }))
  .map((m) => {
    const n = Math.sqrt(m.length)
    const matrix = new Float64Array(n * n)
    for (let i = 0; i < n; i += 1)
      for (let j = 0; j < n; j += 1) {
        let sum = i === j ? 1 : 0
        for (let k = 0; k < n; k += 1) sum += (m[i * n + k] ?? 0) * (m[j * n + k] ?? 0)
        matrix[i * n + j] = sum
      }
    return { n, matrix }
  })

function timesVector(matrix: Float64Array, n: number, x: ArrayLike<number>): number[] {
  return Array.from({ length: n }, (_, i) =>
    Array.from({ length: n }, (__, j) => (matrix[i * n + j] ?? 0) * (x[j] ?? 0)).reduce((a, b) => a + b, 0),
  )
}

describe(`Cholesky factor (seed ${SEED})`, () => {
  it('solves what it factored', () => {
    fc.assert(
      fc.property(matrices, ({ n, matrix }) => {
        const factor = factorOf(matrix, n) as Float64Array
        const right = Array.from({ length: n }, (_, i) => i - 1.5)
        const x = backward(factor, n, forward(factor, n, right))
        for (const [i, value] of timesVector(matrix, n, x).entries())
          expect(value).toBeCloseTo(right[i] ?? 0, 6)
      }),
      { seed: SEED },
    )
  })

  it('gives the inverse, symmetric', () => {
    fc.assert(
      fc.property(matrices, ({ n, matrix }) => {
        const inverse = inverseOf(factorOf(matrix, n) as Float64Array, n)
        for (let j = 0; j < n; j += 1) {
          const column = Array.from({ length: n }, (_, i) => inverse[i * n + j] ?? 0)
          for (const [i, value] of timesVector(matrix, n, column).entries())
            expect(value).toBeCloseTo(i === j ? 1 : 0, 6)
          for (let i = 0; i < n; i += 1) expect(inverse[i * n + j]).toBe(inverse[j * n + i])
        }
      }),
      { seed: SEED },
    )
  })

  it('finds no factor where a matrix is not positive definite', () => {
    expect(factorOf(Float64Array.from([1, 2, 2, 1]), 2)).toBeNull()
    expect(factorOf(Float64Array.from([0]), 1)).toBeNull()
    expect(factorOf(Float64Array.from([Number.NaN]), 1)).toBeNull()
  })
})
