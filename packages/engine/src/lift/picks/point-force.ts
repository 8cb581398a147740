import type { Point } from '../../panel/point.ts'
import type { PlateModel } from '../plate/model.ts'

/**
 * Deflection of an endless plate under 1 N downward at a point, F = r² ln(r²/R²) / 16πD: the part of any plate's answer that is not smooth.
 *
 * Source: S. Timoshenko and S. Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. (1959) (from memory).
 */
export class PointForce {
  readonly #k: number
  readonly #square: number

  /** `reach` R: any length, mm, best the size of the panel. */
  constructor(rigidity: number, reach: number) {
    this.#k = 1 / (8 * Math.PI * rigidity)
    this.#square = reach * reach
  }

  /** mm at (x, y) from the force; 0 at the force itself. */
  deflection(x: number, y: number): number {
    const square = x * x + y * y
    return square > 0 ? 0.5 * this.#k * square * Math.log(square / this.#square) : 0
  }

  /** w_x, w_y there, into `out`. */
  slopeInto(out: Float64Array, x: number, y: number): void {
    const square = x * x + y * y
    const factor = square > 0 ? this.#k * (Math.log(square / this.#square) + 1) : 0
    out[0] = factor * x
    out[1] = factor * y
  }

  /** w_xx, w_xy, w_yy there, 1/mm, into `out`; not at the force itself. */
  curvatureInto(out: Float64Array, x: number, y: number): void {
    const square = x * x + y * y
    const log = Math.log(square / this.#square) + 1
    out[0] = this.#k * (log + (2 * x * x) / square)
    out[1] = (this.#k * 2 * x * y) / square
    out[2] = this.#k * (log + (2 * y * y) / square)
  }

  /** w_xx, which is w_yy too, averaged over a disc around the force; w_xy averages to 0. The mean of ln r is ln c − ½. */
  discCurvature(radius: number): number {
    return this.#k * (Math.log((radius * radius) / this.#square) + 1)
  }
}

/** Gauss on 0 … 1, four points. */
const GAUSS: readonly (readonly [number, number])[] = [
  [-Math.sqrt(3 / 7 + (2 / 7) * Math.sqrt(6 / 5)), (18 - Math.sqrt(30)) / 72],
  [-Math.sqrt(3 / 7 - (2 / 7) * Math.sqrt(6 / 5)), (18 + Math.sqrt(30)) / 72],
  [Math.sqrt(3 / 7 - (2 / 7) * Math.sqrt(6 / 5)), (18 + Math.sqrt(30)) / 72],
  [Math.sqrt(3 / 7 + (2 / 7) * Math.sqrt(6 / 5)), (18 - Math.sqrt(30)) / 72],
].map(([at, weight]) => [(1 + at!) / 2, weight!])

/** Numbers of a rule for each of its points. */
const PER_POINT = 18

const FAR = ruleOf(1)
const NEAR = ruleOf(4)

/**
 * A rule along a side; for each point: place s, weight, w from w, w_t l, w_tt l² at both ends, its derivative by s in the same order, normal slope from
 * w_n, w_nt l at both ends.
 */
function ruleOf(parts: number): Float64Array {
  const points = Array.from({ length: parts }, (_, part) =>
    GAUSS.map(([at, weight]) => {
      const s = (part + at) / parts
      const [s2, s3, s4, s5] = [s * s, s ** 3, s ** 4, s ** 5]
      const shapes = [
        1 - 10 * s3 + 15 * s4 - 6 * s5,
        s - 6 * s3 + 8 * s4 - 3 * s5,
        (s2 - 3 * s3 + 3 * s4 - s5) / 2,
        10 * s3 - 15 * s4 + 6 * s5,
        -4 * s3 + 7 * s4 - 3 * s5,
        (s3 - 2 * s4 + s5) / 2,
      ]
      const along = [
        -30 * s2 + 60 * s3 - 30 * s4,
        1 - 18 * s2 + 32 * s3 - 15 * s4,
        s - 4.5 * s2 + 6 * s3 - 2.5 * s4,
        30 * s2 - 60 * s3 + 30 * s4,
        -12 * s2 + 28 * s3 - 15 * s4,
        1.5 * s2 - 4 * s3 + 2.5 * s4,
      ]
      const across = [1 - 3 * s2 + 2 * s3, s - 2 * s2 + s3, 3 * s2 - 2 * s3, -s2 + s3]
      return [s, weight / parts, ...shapes, ...along, ...across]
    }),
  )
  return Float64Array.from(points.flat(2))
}

/**
 * Nodal loads of the rest v = w − F of a plate with free edges under 1 N downward at `at`: the moments and shears that F leaves on the
 * edges, with the sign turned: ∮ (M_F n)·∇δ − (Q_F·n) δ ds. Added to column `column` of `cases` columns.
 */
export function addEdgeLoads(
  model: PlateModel,
  at: Point,
  { out, column, cases, reach }: { out: Float64Array; column: number; cases: number; reach: number },
): void {
  const { x, y, sides } = model.mesh
  const { poisson } = model.bending
  const k = 1 / (8 * Math.PI)
  const around = reach * reach
  const end = new Float64Array(10)
  for (const { a, b } of sides) {
    const [ax, ay] = [x[a]! - at[0], y[a]! - at[1]]
    const [dx, dy] = [x[b]! - x[a]!, y[b]! - y[a]!]
    const length = Math.hypot(dx, dy)
    const [co, si] = [dx / length, dy / length]
    // Concrete lies on the left: outward is to the right.
    const [nx, ny] = [si, -co]
    const [mx, my] = [ax + dx / 2, ay + dy / 2]
    const rule = mx * mx + my * my < 2.25 * length * length ? NEAR : FAR
    end.fill(0)
    for (let r = 0; r < rule.length; r += PER_POINT) {
      const s = rule[r]!
      const [px, py] = [ax + s * dx, ay + s * dy]
      const square = px * px + py * py
      const log = Math.log(square / around) + 1
      const xx = k * (log + (2 * px * px) / square)
      const yy = k * (log + (2 * py * py) / square)
      const xy = (k * 2 * px * py) / square
      const momentX = -(xx + poisson * yy)
      const momentY = -(yy + poisson * xx)
      const twist = -(1 - poisson) * xy
      const [tx, ty] = [momentX * nx + twist * ny, twist * nx + momentY * ny]
      const shear = (-4 * k * (px * nx + py * ny)) / square
      const part = rule[r + 1]! * length
      const onSlope = ((tx * co + ty * si) * part) / length
      const onNormal = (-tx * si + ty * co) * part
      const onW = -shear * part
      for (let i = 0; i < 6; i += 1) end[i]! += onSlope * rule[r + 8 + i]! + onW * rule[r + 2 + i]!
      for (let i = 0; i < 4; i += 1) end[6 + i]! += onNormal * rule[r + 14 + i]!
    }
    for (let v = 0; v < 2; v += 1) {
      const node = (v === 0 ? a : b) * 6
      const w = end[3 * v]!
      const t = end[3 * v + 1]! * length
      const tt = end[3 * v + 2]! * length * length
      const n = end[6 + 2 * v]!
      const nt = end[7 + 2 * v]! * length
      const to = node * cases + column
      out[to]! += w
      out[to + cases]! += t * co - n * si
      out[to + 2 * cases]! += t * si + n * co
      out[to + 3 * cases]! += tt * co * co - nt * co * si
      out[to + 4 * cases]! += tt * 2 * co * si + nt * (co * co - si * si)
      out[to + 5 * cases]! += tt * si * si + nt * co * si
    }
  }
}
