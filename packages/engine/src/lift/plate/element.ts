/**
 * The quintic triangle whose normal slope is cubic along each side (18 unknowns): six at each corner, in the order
 * w, w_x, w_y, w_xx, w_xy, w_yy. Deflection and slope run on without a break from triangle to triangle.
 *
 * Source: K. Bell, A refined triangular plate bending finite element, International Journal for Numerical Methods in
 * Engineering 1 (1969), 101–122 (from memory). The matrices are derived here from the 21-term quintic.
 */

export const NODE_UNKNOWNS = 6
export const ELEMENT_UNKNOWNS = 18
const TERMS = 21

/** Exponents of ξ and η of the 21 terms of a quintic. */
const POWERS: readonly (readonly [number, number])[] = Array.from({ length: 6 }, (_, degree) =>
  Array.from({ length: degree + 1 }, (_, b): readonly [number, number] => [degree - b, b]),
).flat()

/** d^(m+n) / dξ^m dη^n of each term at a point of the reference triangle. */
function terms(xi: number, eta: number, m: number, n: number): Float64Array {
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
const SIDES = [
  { from: 0, to: 1, at: [0.5, 0], along: [0, 1] },
  { from: 1, to: 2, at: [0.5, 0.5], along: [1, 1] },
  { from: 2, to: 0, at: [0, 0.5], along: [1, 0] },
] as const

/** Row-major 21 × 21: coefficients of the terms from the 21 values on the reference triangle. */
const COEFFICIENTS = inverse(referenceValues())

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

const SECOND = [
  [2, 0],
  [1, 1],
  [0, 2],
] as const

/** ∫ N_i,(p) N_j,(q) over the reference triangle for the pairs p ≤ q of second derivatives; symmetrised off the diagonal. */
const PRODUCTS: readonly Float64Array[] = [
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
    for (let j = 0; j < TERMS; j += 1) {
      let sum = 0
      for (let k = 0; k < TERMS; k += 1) sum += raw[i * TERMS + k]! * COEFFICIENTS[k * TERMS + j]!
      half[i * TERMS + j] = sum
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
const REFERENCE_LOAD = Float64Array.from({ length: TERMS }, (_, i) =>
  POWERS.reduce((sum, [a, b], k) => sum + monomial(a, b) * COEFFICIENTS[k * TERMS + i]!, 0),
)

/** Corners of a triangle, counter-clockwise: x0, y0, x1, y1, x2, y2, mm. */
export type Corners = readonly [number, number, number, number, number, number]

/** Twice the area of the triangle, mm². */
export function doubleArea([x0, y0, x1, y1, x2, y2]: Corners): number {
  return (x1 - x0) * (y2 - y0) - (x2 - x0) * (y1 - y0)
}

/**
 * Row-major 21 × 18: the values on the reference triangle from the 18 unknowns. The slope across the middle of a side follows from
 * its two ends because it runs as a cubic, the slope along it because the deflection runs as a quintic.
 */
export function toReference(
  corners: Corners,
  out: Float64Array = new Float64Array(TERMS * 18),
): Float64Array {
  out.fill(0)
  const [x0, y0, x1, y1, x2, y2] = corners
  const [a, b, c, d] = [x1 - x0, x2 - x0, y1 - y0, y2 - y0]
  for (let v = 0; v < 3; v += 1) {
    const at = (row: number, column: number): number => (6 * v + row) * 18 + 6 * v + column
    out[at(0, 0)] = 1
    out[at(1, 1)] = a
    out[at(1, 2)] = c
    out[at(2, 1)] = b
    out[at(2, 2)] = d
    out[at(3, 3)] = a * a
    out[at(3, 4)] = 2 * a * c
    out[at(3, 5)] = c * c
    out[at(4, 3)] = a * b
    out[at(4, 4)] = a * d + b * c
    out[at(4, 5)] = c * d
    out[at(5, 3)] = b * b
    out[at(5, 4)] = 2 * b * d
    out[at(5, 5)] = d * d
  }
  for (let e = 0; e < 3; e += 1) {
    const { from, to, along } = SIDES[e]!
    const dx = corners[2 * to]! - corners[2 * from]!
    const dy = corners[2 * to + 1]! - corners[2 * from + 1]!
    const length = Math.hypot(dx, dy)
    const [co, si] = [dx / length, dy / length]
    const px = a * along[0] + b * along[1]
    const py = c * along[0] + d * along[1]
    const tangent = px * co + py * si
    const normal = -px * si + py * co
    const row = (18 + e) * 18
    for (const [node, sign] of [
      [from, -1],
      [to, 1],
    ] as const) {
      const at = row + 6 * node
      out[at] = (sign * tangent * 15) / (8 * length)
      out[at + 1] = (-7 / 16) * tangent * co - 0.5 * normal * si
      out[at + 2] = (-7 / 16) * tangent * si + 0.5 * normal * co
      const tt = (sign * tangent * length) / 32
      const nt = (-sign * normal * length) / 8
      out[at + 3] = tt * co * co - nt * co * si
      out[at + 4] = 2 * tt * co * si + nt * (co * co - si * si)
      out[at + 5] = tt * si * si + nt * co * si
    }
  }
  return out
}

/** Inverse of the map: ξ_x, ξ_y, η_x, η_y. */
function inverseMap(corners: Corners): [number, number, number, number] {
  const [x0, y0, x1, y1, x2, y2] = corners
  const det = doubleArea(corners)
  return [(y2 - y0) / det, -(x2 - x0) / det, -(y1 - y0) / det, (x1 - x0) / det]
}

/** The one bending matrix, for stiffness and moments: D, ν. */
export interface Bending {
  /** E t³ / 12 (1 − ν²), N·mm. */
  readonly rigidity: number
  readonly poisson: number
}

/** mx, my, mxy, N·mm/mm, from second derivatives of the deflection downward, 1/mm; sagging positive. */
export function momentsOf(
  { rigidity, poisson }: Bending,
  [xx, xy, yy]: readonly [number, number, number],
): [number, number, number] {
  return [-rigidity * (xx + poisson * yy), -rigidity * (yy + poisson * xx), -rigidity * (1 - poisson) * xy]
}

const kHat = new Float64Array(TERMS * TERMS)
const kHalf = new Float64Array(TERMS * 18)
const map = new Float64Array(TERMS * 18)

/** Stiffness of one triangle, row-major 18 × 18 into `out` from `offset`; N, mm. */
export function stiffnessInto(out: Float64Array, offset: number, corners: Corners, bending: Bending): void {
  const { rigidity, poisson } = bending
  const [xX, xY, nX, nY] = inverseMap(corners)
  // w_xx, w_yy, w_xy from the three reference derivatives.
  const s = [
    [xX * xX, 2 * xX * nX, nX * nX],
    [xY * xY, 2 * xY * nY, nY * nY],
    [xX * xY, xX * nY + nX * xY, nX * nY],
  ] as const
  const det = doubleArea(corners)
  const pair = (p: number, q: number): number =>
    det *
    rigidity *
    (s[0][p]! * s[0][q]! +
      s[1][p]! * s[1][q]! +
      poisson * (s[0][p]! * s[1][q]! + s[1][p]! * s[0][q]!) +
      2 * (1 - poisson) * s[2][p]! * s[2][q]!)
  const weights = [pair(0, 0), pair(1, 1), pair(2, 2), pair(0, 1), pair(0, 2), pair(1, 2)]
  const [p0, p1, p2, p3, p4, p5] = PRODUCTS as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ]
  const [w0, w1, w2, w3, w4, w5] = weights as [number, number, number, number, number, number]
  for (let i = 0; i < TERMS * TERMS; i += 1) {
    kHat[i] = w0 * p0[i]! + w1 * p1[i]! + w2 * p2[i]! + w3 * p3[i]! + w4 * p4[i]! + w5 * p5[i]!
  }
  toReference(corners, map)
  // K̂ T: a corner column of T has entries in the six rows of its corner and the three of the sides.
  for (let i = 0; i < TERMS; i += 1) {
    const row = i * TERMS
    for (let j = 0; j < 18; j += 1) {
      const first = 6 * ((j / 6) | 0)
      let sum = 0
      for (let k = first; k < first + 6; k += 1) sum += kHat[row + k]! * map[k * 18 + j]!
      sum += kHat[row + 18]! * map[18 * 18 + j]! + kHat[row + 19]! * map[19 * 18 + j]!
      kHalf[i * 18 + j] = sum + kHat[row + 20]! * map[20 * 18 + j]!
    }
  }
  for (let i = 0; i < 18; i += 1) {
    const first = 6 * ((i / 6) | 0)
    for (let j = 0; j <= i; j += 1) {
      let sum = 0
      for (let k = first; k < first + 6; k += 1) sum += map[k * 18 + i]! * kHalf[k * 18 + j]!
      for (let k = 18; k < 21; k += 1) sum += map[k * 18 + i]! * kHalf[k * 18 + j]!
      out[offset + i * 18 + j] = sum
      out[offset + j * 18 + i] = sum
    }
  }
}

/** Loads of 1 N/mm² over the triangle on its 18 unknowns, consistent with its shapes. */
export function uniformLoad(corners: Corners): Float64Array {
  const t = toReference(corners, map)
  const det = doubleArea(corners)
  return Float64Array.from({ length: 18 }, (_, j) => {
    let sum = 0
    for (let i = 0; i < TERMS; i += 1) sum += t[i * 18 + j]! * REFERENCE_LOAD[i]!
    return sum * det
  })
}

/** The deflection of one triangle as a quintic in its reference coordinates. */
export function quintic(corners: Corners, unknowns: ArrayLike<number>): Float64Array {
  const t = toReference(corners, map)
  const values = new Float64Array(TERMS)
  for (let i = 0; i < TERMS; i += 1) {
    let sum = 0
    for (let j = 0; j < 18; j += 1) sum += t[i * 18 + j]! * unknowns[j]!
    values[i] = sum
  }
  const out = new Float64Array(TERMS)
  for (let i = 0; i < TERMS; i += 1) {
    let sum = 0
    for (let j = 0; j < TERMS; j += 1) sum += COEFFICIENTS[i * TERMS + j]! * values[j]!
    out[i] = sum
  }
  return out
}

export interface Shape {
  readonly w: number
  readonly x: number
  readonly y: number
  readonly xx: number
  readonly xy: number
  readonly yy: number
}

/** Deflection, slopes and second derivatives at (x, y) of the quintic of a triangle. */
export function shapeAt(corners: Corners, coefficients: Float64Array, x: number, y: number): Shape {
  const [xX, xY, nX, nY] = inverseMap(corners)
  const [dx, dy] = [x - corners[0], y - corners[1]]
  const [xi, eta] = [xX * dx + xY * dy, nX * dx + nY * dy]
  const p = [1, xi, xi * xi, xi ** 3, xi ** 4, xi ** 5]
  const q = [1, eta, eta * eta, eta ** 3, eta ** 4, eta ** 5]
  let [w, u, v, uu, uv, vv] = [0, 0, 0, 0, 0, 0]
  for (let i = 0; i < TERMS; i += 1) {
    const [a, b] = POWERS[i]!
    const c = coefficients[i]!
    w += c * p[a]! * q[b]!
    if (a > 0) u += c * a * p[a - 1]! * q[b]!
    if (b > 0) v += c * b * p[a]! * q[b - 1]!
    if (a > 1) uu += c * a * (a - 1) * p[a - 2]! * q[b]!
    if (a > 0 && b > 0) uv += c * a * b * p[a - 1]! * q[b - 1]!
    if (b > 1) vv += c * b * (b - 1) * p[a]! * q[b - 2]!
  }
  return {
    w,
    x: xX * u + nX * v,
    y: xY * u + nY * v,
    xx: xX * xX * uu + 2 * xX * nX * uv + nX * nX * vv,
    xy: xX * xY * uu + (xX * nY + nX * xY) * uv + nX * nY * vv,
    yy: xY * xY * uu + 2 * xY * nY * uv + nY * nY * vv,
  }
}

/** Weights of the 18 unknowns in the deflection at (x, y): the element's own interpolation. */
export function deflectionWeights(corners: Corners, x: number, y: number): Float64Array {
  const t = toReference(corners, map)
  const [xX, xY, nX, nY] = inverseMap(corners)
  const [dx, dy] = [x - corners[0], y - corners[1]]
  const at = terms(xX * dx + xY * dy, nX * dx + nY * dy, 0, 0)
  const n = new Float64Array(TERMS)
  for (let i = 0; i < TERMS; i += 1) {
    for (let k = 0; k < TERMS; k += 1) n[i]! += at[k]! * COEFFICIENTS[k * TERMS + i]!
  }
  return Float64Array.from({ length: 18 }, (_, j) => {
    let sum = 0
    for (let i = 0; i < TERMS; i += 1) sum += n[i]! * t[i * 18 + j]!
    return sum
  })
}

/** Second derivatives of the 21 shapes at the middles of the sides and of the triangle: 4 points × 3 × 21. */
const SAMPLED = Float64Array.from(
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

/** Points of `sampleInto` by their weights of the three corners. */
export const SAMPLES = [
  [0.5, 0.5, 0],
  [0, 0.5, 0.5],
  [0.5, 0, 0.5],
  [1 / 3, 1 / 3, 1 / 3],
] as const

const sampleValues = new Float64Array(TERMS)

/** w_xx, w_xy, w_yy at the four points of `SAMPLES` into `out`, 1/mm. */
export function sampleInto(out: Float64Array, corners: Corners, unknowns: Float64Array): void {
  toReference(corners, map)
  for (let i = 0; i < TERMS; i += 1) {
    const [first, last] = i < 18 ? [6 * ((i / 6) | 0), 6 * ((i / 6) | 0) + 6] : [0, 18]
    let sum = 0
    for (let j = first; j < last; j += 1) sum += map[i * 18 + j]! * unknowns[j]!
    sampleValues[i] = sum
  }
  const [xX, xY, nX, nY] = inverseMap(corners)
  for (let p = 0; p < SAMPLES.length; p += 1) {
    let [uu, uv, vv] = [0, 0, 0]
    const from = p * 3 * TERMS
    for (let i = 0; i < TERMS; i += 1) {
      const value = sampleValues[i]!
      uu += SAMPLED[from + i]! * value
      uv += SAMPLED[from + TERMS + i]! * value
      vv += SAMPLED[from + 2 * TERMS + i]! * value
    }
    out[3 * p] = xX * xX * uu + 2 * xX * nX * uv + nX * nX * vv
    out[3 * p + 1] = xX * xY * uu + (xX * nY + nX * xY) * uv + nX * nY * vv
    out[3 * p + 2] = xY * xY * uu + 2 * xY * nY * uv + nY * nY * vv
  }
}
