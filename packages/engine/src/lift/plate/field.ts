import type { Point } from '../../panel/point.ts'
import { distanceToSegment } from '../../panel/polygon.ts'
import { momentsOf, quintic, SAMPLES, type Shape, sampleInto, shapeAt } from './element.ts'
import { cornersOf, type PlateModel } from './model.ts'
import { type Moments, peakTension } from './moments.ts'

export interface PlatePoint extends Moments {
  /** mm, downward positive. */
  readonly deflection: number
  /** Largest principal bending tension on either face, MPa. */
  readonly stress: number
}

export interface StripInput {
  readonly at: Point
  /** Along the width of the strip, of unit length. */
  readonly direction: Point
  /** mm */
  readonly width: number
  /** Upward force at the point, N. */
  readonly force: number
  /** Half a thickness, mm. */
  readonly radius: number
}

/** Points and weights of Gauss on 0 … 1. */
const GAUSS: readonly (readonly [number, number])[] = [
  [-Math.sqrt(3 / 7 + (2 / 7) * Math.sqrt(6 / 5)), (18 - Math.sqrt(30)) / 72],
  [-Math.sqrt(3 / 7 - (2 / 7) * Math.sqrt(6 / 5)), (18 + Math.sqrt(30)) / 72],
  [Math.sqrt(3 / 7 - (2 / 7) * Math.sqrt(6 / 5)), (18 + Math.sqrt(30)) / 72],
  [Math.sqrt(3 / 7 + (2 / 7) * Math.sqrt(6 / 5)), (18 - Math.sqrt(30)) / 72],
].map(([at, weight]) => [(1 + at!) / 2, weight!])

/** The bent plate: deflection and moments anywhere in the concrete. */
export class PlateField {
  readonly model: PlateModel
  private readonly u: Float64Array
  private readonly quintics: (Float64Array | undefined)[] = []
  private readonly values = new Float64Array(18)
  private readonly second = new Float64Array(12)

  /** `u`: six unknowns a node, mm and their derivatives. */
  constructor(model: PlateModel, u: Float64Array) {
    this.model = model
    this.u = u
  }

  /** Six a node: w, w_x, w_y, w_xx, w_xy, w_yy; mm. Not to be written to. */
  get unknowns(): Float64Array {
    return this.u
  }

  /** Deflection and its derivatives in triangle `e`. */
  shape(e: number, x: number, y: number): Shape {
    const { mesh } = this.model
    let coefficients = this.quintics[e]
    const corners = cornersOf(mesh, e)
    if (coefficients === undefined) {
      const values = new Float64Array(18)
      for (let i = 0; i < 18; i += 1)
        values[i] = this.u[mesh.triangles[3 * e + ((i / 6) | 0)]! * 6 + (i % 6)]!
      coefficients = quintic(corners, values)
      this.quintics[e] = coefficients
    }
    return shapeAt(corners, coefficients, x, y)
  }

  /** Deflection, moments and stress at a point; null off the concrete. */
  at(point: Point): PlatePoint | null {
    const e = this.model.locator.find(point)
    if (e < 0) return null
    const shape = this.shape(e, point[0], point[1])
    return this.point(shape.w, shape.xx, shape.xy, shape.yy)
  }

  /** Deflection and moments at node `i`: unknowns of the element themselves. */
  atNode(i: number): PlatePoint {
    const u = this.u
    return this.point(u[6 * i]!, u[6 * i + 3]!, u[6 * i + 4]!, u[6 * i + 5]!)
  }

  private point(deflection: number, xx: number, xy: number, yy: number): PlatePoint {
    const moments = this.moments(xx, xy, yy)
    return { deflection, ...moments, stress: peakTension(moments, this.model.thickness) }
  }

  /** Moments at the four points of `SAMPLES` in triangle `e`. */
  samples(e: number): Moments[] {
    this.sample(e)
    const second = this.second
    return SAMPLES.map((_, p) => this.moments(second[3 * p]!, second[3 * p + 1]!, second[3 * p + 2]!))
  }

  /** Largest stress at the four points of `SAMPLES` in triangle `e`, MPa. */
  sampleStress(e: number): number {
    this.sample(e)
    const { bending, thickness } = this.model
    const second = this.second
    const [own, cross] = [bending.rigidity, bending.poisson * bending.rigidity]
    let most = 0
    for (let p = 0; p < 12; p += 3) {
      const half = ((own + cross) * (second[p]! + second[p + 2]!)) / 2
      const across = ((own - cross) * (second[p]! - second[p + 2]!)) / 2
      const twist = (own - cross) * second[p + 1]!
      most = Math.max(most, Math.abs(half) + Math.sqrt(across * across + twist * twist))
    }
    return (6 * most) / (thickness * thickness)
  }

  private sample(e: number): void {
    const { mesh } = this.model
    for (let v = 0; v < 3; v += 1) {
      const from = mesh.triangles[3 * e + v]! * 6
      for (let k = 0; k < 6; k += 1) this.values[6 * v + k] = this.u[from + k]!
    }
    sampleInto(this.second, cornersOf(mesh, e), this.values)
  }

  /** Points of a circle that lie in concrete: every 15° and where it meets the edges. */
  onCircle([cx, cy]: Point, radius: number): Point[] {
    const angles = this.sidesInDisc([cx, cy], radius, () => {})
    for (let k = 0; k < 24; k += 1) angles.push((k * Math.PI) / 12)
    return angles
      .map((angle): Point => [cx + radius * Math.cos(angle), cy + radius * Math.sin(angle)])
      .filter((at) => this.model.locator.find(at) >= 0)
  }

  private moments(xx: number, xy: number, yy: number): Moments {
    const [mx, my, mxy] = momentsOf(this.model.bending, [xx, xy, yy])
    return { mx, my, mxy }
  }

  /**
   * Moments averaged over the part of a disc that lies in concrete; null where none does. The mean of a second derivative over an
   * area is the integral of the slope around it over the area (Gauss): the peak under a point force need not be resolved.
   */
  discMean(centre: Point, radius: number): Moments | null {
    const sums = { area: 0, xx: 0, xy: 0, yy: 0 }
    const add = (shape: Shape, x: number, y: number, nx: number, ny: number): void => {
      sums.area += ((x - centre[0]) * nx + (y - centre[1]) * ny) / 2
      sums.xx += shape.x * nx
      sums.xy += (shape.x * ny + shape.y * nx) / 2
      sums.yy += shape.y * ny
    }
    const crossings = this.sidesInDisc(centre, radius, add)
    this.arcs(centre, radius, crossings, add)
    if (!(sums.area > 1e-6 * radius * radius)) return null
    return this.moments(sums.xx / sums.area, sums.xy / sums.area, sums.yy / sums.area)
  }

  /** Adds the sides inside the disc; gives the angles at which they cross its circle. */
  private sidesInDisc(
    [cx, cy]: Point,
    radius: number,
    add: (shape: Shape, x: number, y: number, nx: number, ny: number) => void,
  ): number[] {
    const { mesh, locator } = this.model
    const angles: number[] = []
    for (const { a, b } of mesh.sides) {
      const [ax, ay] = [mesh.x[a]! - cx, mesh.y[a]! - cy]
      const [dx, dy] = [mesh.x[b]! - cx - ax, mesh.y[b]! - cy - ay]
      const square = dx * dx + dy * dy
      const half = ax * dx + ay * dy
      const rest = half * half - square * (ax * ax + ay * ay - radius * radius)
      if (!(rest > 0)) continue
      const root = Math.sqrt(rest)
      const [first, last] = [(-half - root) / square, (-half + root) / square]
      for (const t of [first, last]) {
        if (t >= 0 && t < 1) angles.push(Math.atan2(ay + t * dy, ax + t * dx))
      }
      const [from, to] = [Math.max(0, first), Math.min(1, last)]
      if (!(to > from)) continue
      const middle: Point = [cx + ax + ((from + to) / 2) * dx, cy + ay + ((from + to) / 2) * dy]
      const e = locator.find(middle)
      if (e < 0) throw new Error(`side at [${middle[0]}, ${middle[1]}]: expected a triangle beside it`)
      for (const [g, weight] of GAUSS) {
        const t = from + g * (to - from)
        const [x, y] = [cx + ax + t * dx, cy + ay + t * dy]
        const length = weight * (to - from)
        add(this.shape(e, x, y), x, y, dy * length, -dx * length)
      }
    }
    return angles
  }

  private arcs(
    [cx, cy]: Point,
    radius: number,
    crossings: readonly number[],
    add: (shape: Shape, x: number, y: number, nx: number, ny: number) => void,
  ): void {
    const { locator } = this.model
    const starts = crossings.length === 0 ? [-Math.PI] : [...crossings].sort((p, q) => p - q)
    for (const [i, from] of starts.entries()) {
      const to = i + 1 < starts.length ? starts[i + 1]! : starts[0]! + 2 * Math.PI
      if (to - from < 1e-12) continue
      const middle = (from + to) / 2
      if (locator.find([cx + radius * Math.cos(middle), cy + radius * Math.sin(middle)]) < 0) continue
      const parts = Math.max(1, Math.ceil((to - from) / ARC))
      const step = (to - from) / parts
      for (let k = 0; k < parts; k += 1) {
        for (const [g, weight] of GAUSS) {
          const angle = from + (k + g) * step
          const [nx, ny] = [Math.cos(angle), Math.sin(angle)]
          const [x, y] = [cx + radius * nx, cy + radius * ny]
          const e = locator.find([x, y])
          if (e < 0) continue
          const length = weight * step * radius
          add(this.shape(e, x, y), x, y, nx * length, ny * length)
        }
      }
    }
  }

  /**
   * Moments averaged along a straight line through `at`; `direction` of unit length. The line is `width` long, centred and pushed
   * along itself to stay in the concrete that is there, and no longer than that: null where `at` is not in concrete.
   */
  lineMean(at: Point, direction: Point, width: number): Moments | null {
    const run = this.runAt(at, direction)
    if (run === null) return null
    const length = Math.min(width, run[1] - run[0])
    const from = Math.max(run[0], Math.min(-length / 2, run[1] - length))
    const sums = [0, 0, 0]
    let whole = 0
    for (const [a, b] of gradedParts(from, from + length)) {
      for (const [g, weight] of GAUSS) {
        const s = a + g * (b - a)
        const [x, y] = [at[0] + s * direction[0], at[1] + s * direction[1]]
        const e = this.model.locator.find([x, y])
        if (e < 0) continue
        const shape = this.shape(e, x, y)
        whole += weight * (b - a)
        for (const [k, value] of [shape.xx, shape.xy, shape.yy].entries())
          sums[k]! += weight * (b - a) * value
      }
    }
    return this.moments(sums[0]! / whole, sums[1]! / whole, sums[2]! / whole)
  }

  /**
   * Moments averaged over a strip's width through a point force: `lineMean`, its middle replaced by what the disc of `radius` around the
   * force says. Around a force R upward the mean along a line of length 2r is the mean over the disc of radius r less R / 4π across
   * the line and ν R / 4π along it; the element's own moments right at the force are those of the mesh and not used.
   */
  stripMean({ at, direction, width, force, radius }: StripInput): Moments | null {
    const run = this.runAt(at, direction)
    const whole = this.lineMean(at, direction, width)
    if (run === null || whole === null) return null
    const length = Math.min(width, run[1] - run[0])
    const from = Math.max(run[0], Math.min(-length / 2, run[1] - length))
    const disc = this.discMean(at, radius)
    const inner = this.lineMean(at, direction, 2 * radius)
    const clear = from <= -radius && from + length >= radius && this.edgeDistance(at) >= radius
    if (disc === null || inner === null || !clear) return whole
    const [dx, dy] = direction
    const across = -force / (4 * Math.PI)
    const along = this.model.bending.poisson * across
    const share = (2 * radius) / length
    return {
      mx: whole.mx + share * (disc.mx - inner.mx + across * dy * dy + along * dx * dx),
      my: whole.my + share * (disc.my - inner.my + across * dx * dx + along * dy * dy),
      mxy: whole.mxy + share * (disc.mxy - inner.mxy + (along - across) * dx * dy),
    }
  }

  /** Distance from a point to the nearest side, mm. */
  edgeDistance(at: Point): number {
    const { x, y, sides } = this.model.mesh
    return sides.reduce(
      (least, { a, b }) =>
        Math.min(
          least,
          distanceToSegment(at, [
            [x[a]!, y[a]!],
            [x[b]!, y[b]!],
          ]),
        ),
      Number.POSITIVE_INFINITY,
    )
  }

  /** How far the concrete runs from a point against and along a direction, mm: (≤ 0, ≥ 0). */
  runAt([x, y]: Point, [dx, dy]: Point): [number, number] | null {
    const { mesh, locator } = this.model
    if (locator.find([x, y]) < 0) return null
    let [back, ahead] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
    for (const { a, b } of mesh.sides) {
      const [ax, ay, bx, by] = [mesh.x[a]! - x, mesh.y[a]! - y, mesh.x[b]! - x, mesh.y[b]! - y]
      const [offA, offB] = [dx * ay - dy * ax, dx * by - dy * bx]
      if (offA > 0 === offB > 0) continue
      const share = offA / (offA - offB)
      const s = (ax + share * (bx - ax)) * dx + (ay + share * (by - ay)) * dy
      if (s >= -1e-6) ahead = Math.min(ahead, Math.max(0, s))
      if (s <= 1e-6) back = Math.max(back, Math.min(0, s))
    }
    return Number.isFinite(back) && Number.isFinite(ahead) ? [back, ahead] : null
  }
}

/** Longest arc of one Gauss rule, radians. */
const ARC = Math.PI / 12

/** Parts of a line that shrink by halves towards its zero, where a point force stands. */
function gradedParts(from: number, to: number): [number, number][] {
  const parts: [number, number][] = []
  for (const [sign, reach] of [
    [-1, -from],
    [1, to],
  ] as const) {
    if (!(reach > 0)) continue
    let outer = reach
    for (let k = 0; k < HALVINGS; k += 1) {
      const inner = k + 1 === HALVINGS ? 0 : outer / 1.5
      parts.push(sign > 0 ? [inner, outer] : [-outer, -inner])
      outer = inner
    }
  }
  return parts
}

const HALVINGS = 24
