import { doubleArea, toReference } from '../plate/element.ts'
import { cornersOf, type PlateModel } from '../plate/model.ts'
import { COEFFICIENTS, POWERS, TERMS } from '../plate/reference-triangle.ts'

/** Rows of `ElementShapes.at`, 18 numbers each. */
export const ROW = { w: 0, x: 18, y: 36, xx: 54, xy: 72, yy: 90 } as const

/** The 18 shapes of each triangle as quintics, made when first asked for. */
export class ElementShapes {
  readonly #model: PlateModel
  readonly #made = new Map<number, Float64Array>()
  readonly #out = new Float64Array(108)
  readonly #map = new Float64Array(TERMS * 18)

  constructor(model: PlateModel) {
    this.#model = model
  }

  /**
   * Deflection and derivatives at (x, y) of each of the 18 unknowns of triangle `e`: rows by `ROW`. The same array every time: to be used before
   * the next call.
   */
  at(e: number, x: number, y: number): Float64Array {
    const corners = cornersOf(this.#model.mesh, e)
    const shapes = this.#made.get(e) ?? this.#make(e)
    const [x0, y0, x1, y1, x2, y2] = corners
    const det = doubleArea(corners)
    const [uX, uY, vX, vY] = [(y2 - y0) / det, -(x2 - x0) / det, -(y1 - y0) / det, (x1 - x0) / det]
    const [u, v] = [uX * (x - x0) + uY * (y - y0), vX * (x - x0) + vY * (y - y0)]
    const p = [1, u, u * u, u ** 3, u ** 4, u ** 5]
    const q = [1, v, v * v, v ** 3, v ** 4, v ** 5]
    const out = this.#out.fill(0)
    for (let i = 0; i < TERMS; i += 1) {
      const [a, b] = POWERS[i]!
      const w = p[a]! * q[b]!
      const du = a > 0 ? a * p[a - 1]! * q[b]! : 0
      const dv = b > 0 ? b * p[a]! * q[b - 1]! : 0
      const uu = a > 1 ? a * (a - 1) * p[a - 2]! * q[b]! : 0
      const uv = a > 0 && b > 0 ? a * b * p[a - 1]! * q[b - 1]! : 0
      const vv = b > 1 ? b * (b - 1) * p[a]! * q[b - 2]! : 0
      const dx = uX * du + vX * dv
      const dy = uY * du + vY * dv
      const xx = uX * uX * uu + 2 * uX * vX * uv + vX * vX * vv
      const xy = uX * uY * uu + (uX * vY + vX * uY) * uv + vX * vY * vv
      const yy = uY * uY * uu + 2 * uY * vY * uv + vY * vY * vv
      for (let j = 0; j < 18; j += 1) {
        const c = shapes[i * 18 + j]!
        out[j]! += c * w
        out[18 + j]! += c * dx
        out[36 + j]! += c * dy
        out[54 + j]! += c * xx
        out[72 + j]! += c * xy
        out[90 + j]! += c * yy
      }
    }
    return out
  }

  /** The unknown of the plate behind each of the 18. */
  unknowns(e: number): Int32Array {
    const { triangles } = this.#model.mesh
    const out = new Int32Array(18)
    for (let i = 0; i < 18; i += 1) out[i] = triangles[3 * e + ((i / 6) | 0)]! * 6 + (i % 6)
    return out
  }

  #make(e: number): Float64Array {
    const map = toReference(cornersOf(this.#model.mesh, e), this.#map)
    const out = new Float64Array(TERMS * 18)
    for (let i = 0; i < TERMS; i += 1) {
      for (let k = 0; k < TERMS; k += 1) {
        const factor = COEFFICIENTS[i * TERMS + k]!
        if (factor === 0) continue
        // A value at a corner depends on the six unknowns of that corner, a slope across a side on all.
        const [from, to] = k < 18 ? [6 * ((k / 6) | 0), 6 * ((k / 6) | 0) + 6] : [0, 18]
        for (let j = from; j < to; j += 1) out[i * 18 + j]! += factor * map[k * 18 + j]!
      }
    }
    this.#made.set(e, out)
    return out
  }
}
