/**
 * The quintic triangle whose normal slope is cubic along each side (18 unknowns): six at each corner, in the order
 * w, w_x, w_y, w_xx, w_xy, w_yy. Deflection and slope run on without a break from triangle to triangle.
 *
 * Source: K. Bell, A refined triangular plate bending finite element, International Journal for Numerical Methods in
 * Engineering 1 (1969), 101–122 (from memory). The matrices are derived here from the 21-term quintic.
 */

import * as reference from './reference-triangle.ts'

// Local names: where modules are not bundled an imported name is looked up at each use, and these are used in the innermost loops.
const { COEFFICIENTS, POWERS, PRODUCTS, REFERENCE_LOAD, SAMPLED, SIDES, TERMS, terms } = reference

export const NODE_UNKNOWNS = 6
export const ELEMENT_UNKNOWNS = 18
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

/** What the bending of a plate depends on. */
export interface Bending {
  /** E t³ / 12 (1 − ν²), N·mm. */
  readonly rigidity: number
  readonly poisson: number
}

/** The bending matrix, for stiffness and moments alike, N·mm: mx = −(own w_xx + cross w_yy), mxy = −twist w_xy. */
function bendingMatrix({ rigidity, poisson }: Bending): { own: number; cross: number; twist: number } {
  return { own: rigidity, cross: poisson * rigidity, twist: (1 - poisson) * rigidity }
}

/** mx, my, mxy, N·mm/mm, from second derivatives of the deflection downward, 1/mm; sagging positive. */
export function momentsOf(
  bending: Bending,
  [xx, xy, yy]: readonly [number, number, number],
): [number, number, number] {
  const { own, cross, twist } = bendingMatrix(bending)
  return [-(own * xx + cross * yy), -(own * yy + cross * xx), -twist * xy]
}

const kHat = new Float64Array(TERMS * TERMS)
const kHalf = new Float64Array(TERMS * 18)
const map = new Float64Array(TERMS * 18)

/** Stiffness of one triangle, row-major 18 × 18 into `out` from `offset`; N, mm. */
export function stiffnessInto(out: Float64Array, offset: number, corners: Corners, bending: Bending): void {
  const { own, cross, twist } = bendingMatrix(bending)
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
    (own * (s[0][p]! * s[0][q]! + s[1][p]! * s[1][q]!) +
      cross * (s[0][p]! * s[1][q]! + s[1][p]! * s[0][q]!) +
      2 * twist * s[2][p]! * s[2][q]!)
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
  for (let i = 0; i < TERMS; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      const k = i * TERMS + j
      kHat[k] = w0 * p0[k]! + w1 * p1[k]! + w2 * p2[k]! + w3 * p3[k]! + w4 * p4[k]! + w5 * p5[k]!
      kHat[j * TERMS + i] = kHat[k]!
    }
  }
  toReference(corners, map)
  for (let i = 0; i < TERMS; i += 1) {
    const row = i * TERMS
    const k0 = kHat[row + 18]!
    const k1 = kHat[row + 19]!
    const k2 = kHat[row + 20]!
    for (let j = 0; j < 18; j += 1) {
      let sum = k0 * map[18 * 18 + j]! + k1 * map[19 * 18 + j]! + k2 * map[20 * 18 + j]!
      for (let k = ROWS_FROM[j]!; k < ROWS_TO[j]!; k += 1) sum += kHat[row + k]! * map[k * 18 + j]!
      kHalf[i * 18 + j] = sum
    }
  }
  for (let i = 0; i < 18; i += 1) {
    const t0 = map[18 * 18 + i]!
    const t1 = map[19 * 18 + i]!
    const t2 = map[20 * 18 + i]!
    const from = ROWS_FROM[i]!
    const to = ROWS_TO[i]!
    for (let j = 0; j <= i; j += 1) {
      let sum = t0 * kHalf[18 * 18 + j]! + t1 * kHalf[19 * 18 + j]! + t2 * kHalf[20 * 18 + j]!
      for (let k = from; k < to; k += 1) sum += map[k * 18 + i]! * kHalf[k * 18 + j]!
      out[offset + i * 18 + j] = sum
      out[offset + j * 18 + i] = sum
    }
  }
}

/** Rows of the map to the reference triangle, those of the sides apart, in which a column is not zero: w, slopes, curvatures of its own corner. */
const ROWS_FROM = Int32Array.from({ length: 18 }, (_, j) => 6 * ((j / 6) | 0) + [0, 1, 1, 3, 3, 3][j % 6]!)
const ROWS_TO = Int32Array.from({ length: 18 }, (_, j) => 6 * ((j / 6) | 0) + [1, 3, 3, 6, 6, 6][j % 6]!)

/** Loads of 1 N/mm² over the triangle on its 18 unknowns, consistent with its shapes. */
export function uniformLoad(corners: Corners, out: Float64Array = new Float64Array(18)): Float64Array {
  toReference(corners, map)
  const det = doubleArea(corners)
  for (let j = 0; j < 18; j += 1) {
    let sum = 0
    for (let i = 18; i < TERMS; i += 1) sum += map[i * 18 + j]! * REFERENCE_LOAD[i]!
    for (let i = ROWS_FROM[j]!; i < ROWS_TO[j]!; i += 1) sum += map[i * 18 + j]! * REFERENCE_LOAD[i]!
    out[j] = sum * det
  }
  return out
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

const EXPONENTS_X = Int32Array.from(POWERS, ([a]) => a)
const EXPONENTS_Y = Int32Array.from(POWERS, ([, b]) => b)
const powersX = new Float64Array(8)
const powersY = new Float64Array(8)

/** 0, 0, 1, t … t⁵. */
function raise(powers: Float64Array, t: number): void {
  powers[2] = 1
  for (let i = 3; i < 8; i += 1) powers[i] = powers[i - 1]! * t
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
  raise(powersX, xi)
  raise(powersY, eta)
  let w = 0
  let u = 0
  let v = 0
  let uu = 0
  let uv = 0
  let vv = 0
  for (let i = 0; i < TERMS; i += 1) {
    const a = EXPONENTS_X[i]!
    const b = EXPONENTS_Y[i]!
    const c = coefficients[i]!
    // Two zeros stand before each first power, so that a derivative of a low one is zero.
    const p0 = powersX[a + 2]!
    const p1 = a * powersX[a + 1]!
    const p2 = a * (a - 1) * powersX[a]!
    const q0 = powersY[b + 2]!
    const q1 = b * powersY[b + 1]!
    const q2 = b * (b - 1) * powersY[b]!
    w += c * p0 * q0
    u += c * p1 * q0
    v += c * p0 * q1
    uu += c * p2 * q0
    uv += c * p1 * q1
    vv += c * p0 * q2
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
    const first = i < 18 ? 6 * ((i / 6) | 0) : 0
    const last = i < 18 ? first + 6 : 18
    let sum = 0
    for (let j = first; j < last; j += 1) sum += map[i * 18 + j]! * unknowns[j]!
    sampleValues[i] = sum
  }
  const [xX, xY, nX, nY] = inverseMap(corners)
  for (let p = 0; p < SAMPLES.length; p += 1) {
    let uu = 0
    let uv = 0
    let vv = 0
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
