import type { Point } from '../../panel/point.ts'
import { InputError } from '../../working/issue.ts'
import { type Corners, deflectionWeights } from './element.ts'
import type { PlateMesh } from './mesh.ts'

/** Finds the triangle of a point by a grid of cells. */
export class Locator {
  private readonly mesh: PlateMesh
  private readonly cells: number[][]
  private readonly columns: number
  private readonly rows: number
  private readonly left: number
  private readonly bottom: number
  private readonly cell: number
  private last = -1

  constructor(mesh: PlateMesh) {
    this.mesh = mesh
    const count = mesh.triangles.length / 3
    let [right, top] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY]
    let [left, bottom] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY]
    for (let i = 0; i < mesh.x.length; i += 1) {
      left = Math.min(left, mesh.x[i]!)
      right = Math.max(right, mesh.x[i]!)
      bottom = Math.min(bottom, mesh.y[i]!)
      top = Math.max(top, mesh.y[i]!)
    }
    this.left = left
    this.bottom = bottom
    this.cell = Math.sqrt(((right - left) * (top - bottom)) / Math.max(1, count))
    this.columns = Math.floor((right - left) / this.cell) + 1
    this.rows = Math.floor((top - bottom) / this.cell) + 1
    this.cells = Array.from({ length: this.columns * this.rows }, () => [])
    for (let e = 0; e < count; e += 1) {
      const c = this.corners(e)
      const [i0, i1] = [this.column(Math.min(c[0], c[2], c[4])), this.column(Math.max(c[0], c[2], c[4]))]
      const [j0, j1] = [this.row(Math.min(c[1], c[3], c[5])), this.row(Math.max(c[1], c[3], c[5]))]
      for (let j = j0; j <= j1; j += 1) {
        for (let i = i0; i <= i1; i += 1) this.cells[j * this.columns + i]!.push(e)
      }
    }
  }

  private corners(e: number): Corners {
    const { x, y, triangles } = this.mesh
    const [i, j, k] = [triangles[3 * e]!, triangles[3 * e + 1]!, triangles[3 * e + 2]!]
    return [x[i]!, y[i]!, x[j]!, y[j]!, x[k]!, y[k]!]
  }

  private column(x: number): number {
    return Math.min(this.columns - 1, Math.max(0, Math.floor((x - this.left) / this.cell)))
  }

  private row(y: number): number {
    return Math.min(this.rows - 1, Math.max(0, Math.floor((y - this.bottom) / this.cell)))
  }

  /** Triangle that holds the point, or −1 where it lies off the concrete by more than `OFF` mm. */
  find([x, y]: Point): number {
    // Neighbouring points are mostly asked for one after the other.
    if (this.last >= 0 && this.off(this.last, x, y) < 0) return this.last
    let [best, least] = [-1, OFF]
    for (const e of this.cells[this.row(y) * this.columns + this.column(x)]!) {
      const off = this.off(e, x, y)
      if (off < least) [best, least] = [e, off]
      if (off <= 0) break
    }
    this.last = best
    return best
  }

  /** How far a point lies outside a triangle, mm; negative inside. */
  private off(e: number, px: number, py: number): number {
    const { x, y, triangles } = this.mesh
    const i = triangles[3 * e]!
    const j = triangles[3 * e + 1]!
    const k = triangles[3 * e + 2]!
    return Math.max(
      right(x[i]!, y[i]!, x[j]!, y[j]!, px, py),
      right(x[j]!, y[j]!, x[k]!, y[k]!, px, py),
      right(x[k]!, y[k]!, x[i]!, y[i]!, px, py),
    )
  }

  /** Nodes and weights of the 18 unknowns in the deflection at a point. @throws InputError off the concrete. */
  weightsAt(at: Point): {
    readonly nodes: readonly [number, number, number]
    readonly weights: Float64Array
  } {
    const e = this.find(at)
    if (e < 0) {
      throw new InputError([
        { path: 'at', found: `[${at[0]}, ${at[1]}]`, expected: 'a point in the concrete' },
      ])
    }
    const { triangles } = this.mesh
    return {
      nodes: [triangles[3 * e]!, triangles[3 * e + 1]!, triangles[3 * e + 2]!],
      weights: deflectionWeights(this.corners(e), at[0], at[1]),
    }
  }
}

/** A point this far off the concrete still counts as on its edge, mm: rounding of a skew edge. */
const OFF = 1e-3

/** Distance to the right of a → b, mm. */
function right(ax: number, ay: number, bx: number, by: number, x: number, y: number): number {
  const dx = bx - ax
  const dy = by - ay
  return (dy * (x - ax) - dx * (y - ay)) / Math.sqrt(dx * dx + dy * dy)
}
