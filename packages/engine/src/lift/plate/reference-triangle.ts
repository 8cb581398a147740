/**
 * The 21-term quintic on the reference triangle (0, 0), (1, 0), (0, 1), made once: its values at the corners (w, w_ξ, w_η, w_ξξ, w_ξη, w_ηη)
 * and one derivative at the middle of each side.
 */

export const TERMS = 21

/** Exponents of ξ and η of the 21 terms of a quintic. */
export const POWERS: readonly (readonly [number, number])[] = Array.from({ length: 6 }, (_, degree) =>
  Array.from({ length: degree + 1 }, (_, b): readonly [number, number] => [degree - b, b]),
).flat()

/** d^(m+n) / dξ^m dη^n of each term at a point of the reference triangle. */
export function terms(xi: number, eta: number, m: number, n: number): Float64Array {
  const out = new Float64Array(TERMS)
  for (let i = 0; i < TERMS; i += 1) {
    const [a, b] = POWERS[i]!
    if (a < m || b < n) continue
    out[i] = falling(a, m) * falling(b, n) * xi ** (a - m) * eta ** (b - n)
  }
  return out
}

function falling(a: number, m: number): number {
  let product = 1
  for (let k = 0; k < m; k += 1) product *= a - k
  return product
}

const CORNERS = [
  [0, 0],
  [1, 0],
  [0, 1],
] as const

/** Middle of each side and the direction in the reference triangle whose derivative is taken there. */
export const SIDES = [
  { from: 0, to: 1, at: [0.5, 0], along: [0, 1] },
  { from: 1, to: 2, at: [0.5, 0.5], along: [1, 1] },
  { from: 2, to: 0, at: [0, 0.5], along: [1, 0] },
] as const

/** Row-major 21 × 21: coefficients of the terms from the 21 values on the reference triangle. */
export const COEFFICIENTS = inverse(referenceValues())

function referenceValues(): Float64Array {
  const rows: Float64Array[] = []
  for (const [xi, eta] of CORNERS) {
    for (const [m, n] of [
      [0, 0],
      [1, 0],
      [0, 1],
      [2, 0],
      [1, 1],
      [0, 2],
    ] as const) {
      rows.push(terms(xi, eta, m, n))
    }
  }
  for (const { at, along } of SIDES) {
    const [x, y] = [terms(at[0], at[1], 1, 0), terms(at[0], at[1], 0, 1)]
    rows.push(x.map((value, i) => along[0] * value + along[1] * y[i]!))
  }
  const matrix = new Float64Array(TERMS * TERMS)
  for (const [i, row] of rows.entries()) matrix.set(row, i * TERMS)
  return matrix
}

/** Gauss–Jordan with row exchange, once at loading. */
function inverse(matrix: Float64Array): Float64Array {
  const n = TERMS
  const a = Float64Array.from(matrix)
  const out = new Float64Array(n * n)
  for (let i = 0; i < n; i += 1) out[i * n + i] = 1
  for (let k = 0; k < n; k += 1) {
    let pivot = k
    for (let i = k + 1; i < n; i += 1) {
      if (Math.abs(a[i * n + k]!) > Math.abs(a[pivot * n + k]!)) pivot = i
    }
    for (let j = 0; j < n; j += 1) {
      ;[a[k * n + j], a[pivot * n + j]] = [a[pivot * n + j]!, a[k * n + j]!]
      ;[out[k * n + j], out[pivot * n + j]] = [out[pivot * n + j]!, out[k * n + j]!]
    }
    const scale = 1 / a[k * n + k]!
    for (let j = 0; j < n; j += 1) {
      a[k * n + j]! *= scale
      out[k * n + j]! *= scale
    }
    for (let i = 0; i < n; i += 1) {
      const factor = a[i * n + k]!
      if (i === k || factor === 0) continue
      for (let j = 0; j < n; j += 1) {
        a[i * n + j]! -= factor * a[k * n + j]!
        out[i * n + j]! -= factor * out[k * n + j]!
      }
    }
  }
  return out
}

/** ∫ ξ^a η^b over the reference triangle. */
function monomial(a: number, b: number): number {
  return (factorial(a) * factorial(b)) / factorial(a + b + 2)
}

function factorial(n: number): number {
  return n < 2 ? 1 : n * factorial(n - 1)
}

export const SECOND = [
  [2, 0],
  [1, 1],
  [0, 2],
] as const

/** ∫ N_i,(p) N_j,(q) over the reference triangle for the pairs p ≤ q of second derivatives; symmetrised off the diagonal. */
export const PRODUCTS: readonly Float64Array[] = [
  [0, 0],
  [1, 1],
  [2, 2],
  [0, 1],
  [0, 2],
  [1, 2],
].map(([p, q]) => referenceProduct(SECOND[p!]!, SECOND[q!]!, p !== q))

function referenceProduct(
  [m, n]: readonly [number, number],
  [r, s]: readonly [number, number],
  both: boolean,
): Float64Array {
  const raw = new Float64Array(TERMS * TERMS)
  for (let i = 0; i < TERMS; i += 1) {
    const [a, b] = POWERS[i]!
    for (let j = 0; j < TERMS; j += 1) {
      const [c, d] = POWERS[j]!
      const factor = falling(a, m) * falling(b, n) * falling(c, r) * falling(d, s)
      if (factor !== 0) raw[i * TERMS + j] = factor * monomial(a - m + c - r, b - n + d - s)
    }
  }
  const half = new Float64Array(TERMS * TERMS)
  const out = new Float64Array(TERMS * TERMS)
  for (let i = 0; i < TERMS; i += 1) {
    for (let k = 0; k < TERMS; k += 1) {
      const factor = raw[i * TERMS + k]!
      if (factor === 0) continue
      for (let j = 0; j < TERMS; j += 1) half[i * TERMS + j]! += factor * COEFFICIENTS[k * TERMS + j]!
    }
  }
  for (let i = 0; i < TERMS; i += 1) {
    for (let j = 0; j < TERMS; j += 1) {
      let sum = 0
      for (let k = 0; k < TERMS; k += 1) sum += COEFFICIENTS[k * TERMS + i]! * half[k * TERMS + j]!
      out[i * TERMS + j]! += sum
      if (both) out[j * TERMS + i]! += sum
    }
  }
  return out
}

/** ∫ N_i over the reference triangle. */
export const REFERENCE_LOAD = Float64Array.from({ length: TERMS }, (_, i) =>
  POWERS.reduce((sum, [a, b], k) => sum + monomial(a, b) * COEFFICIENTS[k * TERMS + i]!, 0),
)

/** Second derivatives of the 21 shapes at the middles of the sides and of the triangle: 4 points × 3 × 21. */
export const SAMPLED = Float64Array.from(
  (
    [
      [0.5, 0],
      [0.5, 0.5],
      [0, 0.5],
      [1 / 3, 1 / 3],
    ] as const
  ).flatMap(([xi, eta]) =>
    SECOND.flatMap(([m, n]) => {
      const at = terms(xi, eta, m, n)
      return Array.from({ length: TERMS }, (_, i) =>
        at.reduce((sum, value, k) => sum + value * COEFFICIENTS[k * TERMS + i]!, 0),
      )
    }),
  ),
)
