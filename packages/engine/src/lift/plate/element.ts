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

// A panel is solved for once by a process that has just started: the loops here are small functions with places read by index, which
// the engine compiles in a moment. Taking arrays apart by pattern or passing closures makes it compile for longer than it computes.

/** Twice the area of the triangle, mm². */
export function doubleArea(c: Corners): number {
  return (c[2] - c[0]) * (c[5] - c[1]) - (c[4] - c[0]) * (c[3] - c[1])
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
  const a = corners[2] - corners[0]
  const b = corners[4] - corners[0]
  const c = corners[3] - corners[1]
  const d = corners[5] - corners[1]
  for (let v = 0; v < 3; v += 1) cornerRows(out, 6 * v * 19, a, b, c, d)
  for (let e = 0; e < 3; e += 1) {
    const side = SIDES[e]!
    const from = side.from
    const to = side.to
    const dx = corners[2 * to]! - corners[2 * from]!
    const dy = corners[2 * to + 1]! - corners[2 * from + 1]!
    const px = a * side.along[0] + b * side.along[1]
    const py = c * side.along[0] + d * side.along[1]
    const row = (18 + e) * 18
    sideRow(out, row + 6 * from, -1, dx, dy, px, py)
    sideRow(out, row + 6 * to, 1, dx, dy, px, py)
  }
  return out
}

/** Value, slopes and curvatures of one corner. */
function cornerRows(out: Float64Array, at: number, a: number, b: number, c: number, d: number): void {
  out[at] = 1
  out[at + 19] = a
  out[at + 20] = c
  out[at + 37] = b
  out[at + 38] = d
  out[at + 57] = a * a
  out[at + 58] = 2 * a * c
  out[at + 59] = c * c
  out[at + 75] = a * b
  out[at + 76] = a * d + b * c
  out[at + 77] = c * d
  out[at + 93] = b * b
  out[at + 94] = 2 * b * d
  out[at + 95] = d * d
}

/** Part of one end (`sign` −1: first) in the slope along (px, py) at the middle of the side (dx, dy). */
function sideRow(
  out: Float64Array,
  at: number,
  sign: number,
  dx: number,
  dy: number,
  px: number,
  py: number,
): void {
  const length = Math.sqrt(dx * dx + dy * dy)
  const co = dx / length
  const si = dy / length
  const tangent = px * co + py * si
  const normal = -px * si + py * co
  out[at] = (sign * tangent * 15) / (8 * length)
  out[at + 1] = (-7 / 16) * tangent * co - 0.5 * normal * si
  out[at + 2] = (-7 / 16) * tangent * si + 0.5 * normal * co
  const tt = (sign * tangent * length) / 32
  const nt = (-sign * normal * length) / 8
  out[at + 3] = tt * co * co - nt * co * si
  out[at + 4] = 2 * tt * co * si + nt * (co * co - si * si)
  out[at + 5] = tt * si * si + nt * co * si
}

/** Inverse of the map: ξ_x, ξ_y, η_x, η_y. */
function inverseMap(c: Corners): readonly [number, number, number, number] {
  const det = doubleArea(c)
  return [(c[5] - c[1]) / det, (c[0] - c[4]) / det, (c[1] - c[3]) / det, (c[2] - c[0]) / det]
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
const [P0, P1, P2, P3, P4, P5] = PRODUCTS as [
  Float64Array,
  Float64Array,
  Float64Array,
  Float64Array,
  Float64Array,
  Float64Array,
]

/** Stiffness of one triangle, row-major 18 × 18 into `out` from `offset`; N, mm. */
export function stiffnessInto(out: Float64Array, offset: number, corners: Corners, bending: Bending): void {
  const det = doubleArea(corners)
  const own = bending.rigidity * det
  const cross = bending.poisson * own
  const twist = own - cross
  // ξ_x, η_x, ξ_y, η_y; then the factors of the three reference derivatives in w_xx, w_yy, w_xy.
  const xX = (corners[5] - corners[1]) / det
  const nX = (corners[1] - corners[3]) / det
  const xY = (corners[0] - corners[4]) / det
  const nY = (corners[2] - corners[0]) / det
  const a0 = xX * xX
  const a1 = 2 * xX * nX
  const a2 = nX * nX
  const b0 = xY * xY
  const b1 = 2 * xY * nY
  const b2 = nY * nY
  const c0 = xX * xY
  const c1 = xX * nY + nX * xY
  const c2 = nX * nY
  weighProducts(
    own * (a0 * a0 + b0 * b0) + cross * 2 * a0 * b0 + 2 * twist * c0 * c0,
    own * (a1 * a1 + b1 * b1) + cross * 2 * a1 * b1 + 2 * twist * c1 * c1,
    own * (a2 * a2 + b2 * b2) + cross * 2 * a2 * b2 + 2 * twist * c2 * c2,
    own * (a0 * a1 + b0 * b1) + cross * (a0 * b1 + b0 * a1) + 2 * twist * c0 * c1,
    own * (a0 * a2 + b0 * b2) + cross * (a0 * b2 + b0 * a2) + 2 * twist * c0 * c2,
    own * (a1 * a2 + b1 * b2) + cross * (a1 * b2 + b1 * a2) + 2 * twist * c1 * c2,
  )
  toReference(corners, map)
  for (let j = 0; j < 18; j += 1) halfColumn(j, ROWS_FROM[j]!, ROWS_TO[j]!)
  for (let i = 0; i < 18; i += 1) wholeRow(out, offset, i, ROWS_FROM[i]!, ROWS_TO[i]!)
}

/** The stiffness on the reference triangle into `kHat`. */
function weighProducts(w0: number, w1: number, w2: number, w3: number, w4: number, w5: number): void {
  for (let k = 0; k < TERMS * TERMS; k += 1) {
    kHat[k] = w0 * P0[k]! + w1 * P1[k]! + w2 * P2[k]! + w3 * P3[k]! + w4 * P4[k]! + w5 * P5[k]!
  }
}

/** Column j of `kHat` times `map`. */
function halfColumn(j: number, from: number, to: number): void {
  const t0 = map[18 * 18 + j]!
  const t1 = map[19 * 18 + j]!
  const t2 = map[20 * 18 + j]!
  for (let i = 0; i < TERMS; i += 1) {
    const row = i * TERMS
    let sum = kHat[row + 18]! * t0 + kHat[row + 19]! * t1 + kHat[row + 20]! * t2
    for (let k = from; k < to; k += 1) sum += kHat[row + k]! * map[k * 18 + j]!
    kHalf[i * 18 + j] = sum
  }
}

/** Row i of the transposed `map` times `kHalf`, up to the diagonal, and its mirror. */
function wholeRow(out: Float64Array, offset: number, i: number, from: number, to: number): void {
  const t0 = map[18 * 18 + i]!
  const t1 = map[19 * 18 + i]!
  const t2 = map[20 * 18 + i]!
  for (let j = 0; j <= i; j += 1) {
    let sum = t0 * kHalf[18 * 18 + j]! + t1 * kHalf[19 * 18 + j]! + t2 * kHalf[20 * 18 + j]!
    for (let k = from; k < to; k += 1) sum += map[k * 18 + i]! * kHalf[k * 18 + j]!
    out[offset + i * 18 + j] = sum
    out[offset + j * 18 + i] = sum
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

const cornerValues = new Float64Array(TERMS)

/** The 21 values on the reference triangle into `cornerValues`. */
function valuesOf(corners: Corners, unknowns: ArrayLike<number>): void {
  toReference(corners, map)
  for (let i = 0; i < TERMS; i += 1) {
    const first = i < 18 ? 6 * ((i / 6) | 0) : 0
    const last = i < 18 ? first + 6 : 18
    let sum = 0
    for (let j = first; j < last; j += 1) sum += map[i * 18 + j]! * unknowns[j]!
    cornerValues[i] = sum
  }
}

/** The deflection of one triangle as a quintic in its reference coordinates. */
export function quintic(corners: Corners, unknowns: ArrayLike<number>): Float64Array {
  valuesOf(corners, unknowns)
  const out = new Float64Array(TERMS)
  for (let i = 0; i < TERMS; i += 1) {
    let sum = 0
    for (let j = 0; j < TERMS; j += 1) sum += COEFFICIENTS[i * TERMS + j]! * cornerValues[j]!
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

/** w, w_ξ, w_η, w_ξξ, w_ξη, w_ηη at the point of `powersX`, `powersY`. */
const local = new Float64Array(6)

function sumTerms(coefficients: Float64Array): void {
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
    const p0 = c * powersX[a + 2]!
    const p1 = c * a * powersX[a + 1]!
    const p2 = c * a * (a - 1) * powersX[a]!
    const q0 = powersY[b + 2]!
    const q1 = b * powersY[b + 1]!
    const q2 = b * (b - 1) * powersY[b]!
    w += p0 * q0
    u += p1 * q0
    v += p0 * q1
    uu += p2 * q0
    uv += p1 * q1
    vv += p0 * q2
  }
  local[0] = w
  local[1] = u
  local[2] = v
  local[3] = uu
  local[4] = uv
  local[5] = vv
}

/** Deflection, slopes and second derivatives at (x, y) of the quintic of a triangle. */
export function shapeAt(corners: Corners, coefficients: Float64Array, x: number, y: number): Shape {
  const m = inverseMap(corners)
  const dx = x - corners[0]
  const dy = y - corners[1]
  raise(powersX, m[0] * dx + m[1] * dy)
  raise(powersY, m[2] * dx + m[3] * dy)
  sumTerms(coefficients)
  const u = local[1]!
  const v = local[2]!
  const uu = local[3]!
  const uv = local[4]!
  const vv = local[5]!
  return {
    w: local[0]!,
    x: m[0] * u + m[2] * v,
    y: m[1] * u + m[3] * v,
    xx: m[0] * m[0] * uu + 2 * m[0] * m[2] * uv + m[2] * m[2] * vv,
    xy: m[0] * m[1] * uu + (m[0] * m[3] + m[2] * m[1]) * uv + m[2] * m[3] * vv,
    yy: m[1] * m[1] * uu + 2 * m[1] * m[3] * uv + m[3] * m[3] * vv,
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

/** w_xx, w_xy, w_yy at the four points of `SAMPLES` into `out`, 1/mm. */
export function sampleInto(out: Float64Array, corners: Corners, unknowns: Float64Array): void {
  valuesOf(corners, unknowns)
  const m = inverseMap(corners)
  for (let p = 0; p < 4; p += 1) {
    const uu = sampled(3 * p)
    const uv = sampled(3 * p + 1)
    const vv = sampled(3 * p + 2)
    out[3 * p] = m[0] * m[0] * uu + 2 * m[0] * m[2] * uv + m[2] * m[2] * vv
    out[3 * p + 1] = m[0] * m[1] * uu + (m[0] * m[3] + m[2] * m[1]) * uv + m[2] * m[3] * vv
    out[3 * p + 2] = m[1] * m[1] * uu + 2 * m[1] * m[3] * uv + m[3] * m[3] * vv
  }
}

/** One row of `SAMPLED` times `cornerValues`. */
function sampled(row: number): number {
  const from = row * TERMS
  let sum = 0
  for (let i = 0; i < TERMS; i += 1) sum += SAMPLED[from + i]! * cornerValues[i]!
  return sum
}
