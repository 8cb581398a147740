import { momentsOf } from './plate/element.ts'
import type { PlateField } from './plate/field.ts'
import type { PlateMesh } from './plate/mesh.ts'
import { SIDE_WEIGHTS, sideWeights } from './side-curvatures.ts'

/** Which face's tension is looked at: the one on the mould, the upper one, or the worse of both at each point. */
export type TensionFace = 'mould' | 'top' | 'worse'

/**
 * A mesh cut finer for smooth contours: each triangle in sixteen, whose points along a side are shared with the neighbour, so that a
 * contour never breaks off between two triangles.
 */
export interface FineMesh {
  /** mm, one of each point: nodes of the mesh, then three a side, then three inside each triangle. */
  readonly x: Float64Array
  readonly y: Float64Array
  /** Fifteen points a triangle in the order of `CUT`. */
  readonly local: Int32Array
  /** Edges of the sixteen triangles of each triangle, three each: from the first point to the second, and so on round. */
  readonly edges: Int32Array
  /** Two points of each edge. */
  readonly edgeEnds: Int32Array
  /** Side of each edge of each triangle. */
  readonly sideOf: Int32Array
  /** Ends of each side, the lower node first. */
  readonly ends: Int32Array
  /** How many triangles share each side. */
  readonly shared: Uint8Array
  /** Two points and their edge, one after the other, along the edges of the concrete, which lies on their left. */
  readonly border: Int32Array
  /** Of each triangle, see `sideWeights`. */
  readonly weights: Float64Array
}

/** The sixteen triangles by their local points: corners 0–2, sides 3–5, 6–8, 9–11 on the way round, inside 12–14. */
export const CUT: readonly (readonly [number, number, number])[] = [
  [0, 3, 11],
  [3, 4, 12],
  [4, 5, 13],
  [5, 1, 6],
  [11, 12, 10],
  [12, 13, 14],
  [13, 6, 7],
  [10, 14, 9],
  [14, 7, 8],
  [9, 8, 2],
  [3, 12, 11],
  [4, 13, 12],
  [5, 6, 13],
  [12, 14, 10],
  [13, 7, 14],
  [14, 8, 9],
]

const cut = new WeakMap<PlateMesh, FineMesh>()

/** Made once a mesh: while an insert is dragged only the values change. */
export function fineMesh(mesh: PlateMesh): FineMesh {
  let fine = cut.get(mesh)
  if (fine === undefined) {
    fine = cutFine(mesh)
    cut.set(mesh, fine)
  }
  return fine
}

function cutFine(mesh: PlateMesh): FineMesh {
  const { x, y, triangles } = mesh
  const [nodes, count] = [x.length, triangles.length / 3]
  const sideOf = new Int32Array(count * 3)
  const ends: number[] = []
  const shared: number[] = []
  const sides = new Map<number, number>()
  for (let i = 0; i < count * 3; i += 1) {
    const [a, b] = [triangles[i]!, triangles[i - (i % 3) + ((i + 1) % 3)]!]
    const key = Math.min(a, b) * nodes + Math.max(a, b)
    let side = sides.get(key)
    if (side === undefined) {
      side = shared.length
      sides.set(key, side)
      ends.push(Math.min(a, b), Math.max(a, b))
      shared.push(0)
    }
    shared[side]! += 1
    sideOf[i] = side
  }
  const inside = nodes + 3 * shared.length
  const fx = new Float64Array(inside + 3 * count)
  const fy = new Float64Array(inside + 3 * count)
  fx.set(x)
  fy.set(y)
  for (const side of shared.keys()) {
    const [a, b] = [ends[2 * side]!, ends[2 * side + 1]!]
    for (let k = 1; k < 4; k += 1) {
      fx[nodes + 3 * side + k - 1] = x[a]! + (k / 4) * (x[b]! - x[a]!)
      fy[nodes + 3 * side + k - 1] = y[a]! + (k / 4) * (y[b]! - y[a]!)
    }
  }
  const local = new Int32Array(count * 15)
  const border: number[] = []
  const edges = new Edges(fx.length)
  for (let e = 0; e < count; e += 1) {
    for (let v = 0; v < 3; v += 1) {
      const [a, b] = [triangles[3 * e + v]!, triangles[3 * e + ((v + 1) % 3)]!]
      const c = triangles[3 * e + ((v + 2) % 3)]!
      const side = sideOf[3 * e + v]!
      const first = nodes + 3 * side
      const along = a < b ? [first, first + 1, first + 2] : [first + 2, first + 1, first]
      local[15 * e + v] = a
      local.set(along, 15 * e + 3 + 3 * v)
      local[15 * e + 12 + v] = inside + 3 * e + v
      fx[inside + 3 * e + v] = x[a]! / 2 + (x[b]! + x[c]!) / 4
      fy[inside + 3 * e + v] = y[a]! / 2 + (y[b]! + y[c]!) / 4
      if (shared[side] === 1) {
        const run = [a, ...along, b]
        for (let k = 0; k < 4; k += 1) border.push(run[k]!, run[k + 1]!, edges.of(run[k]!, run[k + 1]!))
      }
    }
  }
  const round = new Int32Array(count * CUT.length * 3)
  for (let i = 0; i < round.length; i += 3) {
    const first = 15 * Math.floor(i / (3 * CUT.length))
    const [a, b, c] = CUT[(i / 3) % CUT.length]!.map((k) => local[first + k]!) as [number, number, number]
    round.set([edges.of(a, b), edges.of(b, c), edges.of(c, a)], i)
  }
  return {
    x: fx,
    y: fy,
    local,
    edges: round,
    edgeEnds: Int32Array.from(edges.ends),
    sideOf,
    ends: Int32Array.from(ends),
    shared: Uint8Array.from(shared),
    border: Int32Array.from(border),
    weights: sideWeights(mesh),
  }
}

/** Numbers the edges between points as they come. */
class Edges {
  readonly ends: number[] = []
  readonly #seen = new Map<number, number>()
  readonly #points: number
  constructor(points: number) {
    this.#points = points
  }

  of(p: number, q: number): number {
    const key = Math.min(p, q) * this.#points + Math.max(p, q)
    let edge = this.#seen.get(key)
    if (edge === undefined) {
      edge = this.#seen.size
      this.#seen.set(key, edge)
      this.ends.push(p, q)
    }
    return edge
  }
}

/** Tension at each point of the fine mesh, MPa: curvatures run as parabolas between nodes and middles of sides. */
export function finePoints(field: PlateField, face: TensionFace, factor: number): Float64Array {
  const { mesh, thickness, bending } = field.model
  const { x, local, sideOf, ends, shared } = fineMesh(mesh)
  const [nodes, sides, count] = [mesh.x.length, shared.length, mesh.triangles.length / 3]
  const bent = curvatures(field)
  const scale = (6 * factor) / (thickness * thickness)
  const out = new Float64Array(x.length)
  const [own, cross] = momentsOf(bending, [-1, 0, 0])
  const [, , twist] = momentsOf(bending, [0, -1, 0])
  const tension = (xx: number, xy: number, yy: number): number => {
    const [mx, my, mxy] = [-own * xx - cross * yy, -own * yy - cross * xx, -twist * xy]
    const middle = (mx + my) / 2
    const radius = Math.sqrt(((mx - my) / 2) ** 2 + mxy * mxy)
    if (face === 'mould') return scale * Math.max(middle + radius, 0)
    if (face === 'top') return scale * Math.max(radius - middle, 0)
    return scale * (Math.abs(middle) + radius)
  }
  for (let i = 0; i < nodes; i += 1) out[i] = tension(bent[3 * i]!, bent[3 * i + 1]!, bent[3 * i + 2]!)
  for (let side = 0; side < sides; side += 1) {
    const [a, m, b] = [3 * ends[2 * side]!, 3 * (nodes + side), 3 * ends[2 * side + 1]!]
    const quarter = (near: number, far: number, c: number): number =>
      0.375 * bent[near + c]! + 0.75 * bent[m + c]! - 0.125 * bent[far + c]!
    const first = nodes + 3 * side
    out[first] = tension(quarter(a, b, 0), quarter(a, b, 1), quarter(a, b, 2))
    out[first + 1] = tension(bent[m]!, bent[m + 1]!, bent[m + 2]!)
    out[first + 2] = tension(quarter(b, a, 0), quarter(b, a, 1), quarter(b, a, 2))
  }
  for (let e = 0; e < count; e += 1) {
    for (let v = 0; v < 3; v += 1) {
      const [w, u] = [(v + 1) % 3, (v + 2) % 3]
      const [b, c] = [3 * mesh.triangles[3 * e + w]!, 3 * mesh.triangles[3 * e + u]!]
      const near = 3 * (nodes + sideOf[3 * e + v]!)
      const far = 3 * (nodes + sideOf[3 * e + w]!)
      const other = 3 * (nodes + sideOf[3 * e + u]!)
      // The parabola over the triangle at half of the way to its corner v; that corner itself has no share there.
      const inside = (k: number): number =>
        0.5 * (bent[near + k]! + bent[other + k]!) +
        0.25 * bent[far + k]! -
        0.125 * (bent[b + k]! + bent[c + k]!)
      out[local[15 * e + 12 + v]!] = tension(inside(0), inside(1), inside(2))
    }
  }
  return out
}

/** w_xx, w_xy, w_yy at nodes, then at the middles of sides, 1/mm. */
function curvatures(field: PlateField): Float64Array {
  const { mesh } = field.model
  const { sideOf, shared, weights } = fineMesh(mesh)
  const u = field.unknowns
  const nodes = mesh.x.length
  const bent = new Float64Array(3 * (nodes + shared.length))
  for (let i = 0; i < nodes; i += 1) {
    bent[3 * i] = u[6 * i + 3]!
    bent[3 * i + 1] = u[6 * i + 4]!
    bent[3 * i + 2] = u[6 * i + 5]!
  }
  const own = new Float64Array(18)
  for (let i = 0; i < sideOf.length; i += 1) {
    const e = (i / 3) | 0
    if (i % 3 === 0) {
      for (let v = 0; v < 3; v += 1) {
        const node = 6 * mesh.triangles[3 * e + v]!
        for (let j = 0; j < 6; j += 1) own[6 * v + j] = u[node + j]!
      }
    }
    // w_nn jumps a little from triangle to triangle: the middle of a side takes the mean of both.
    const share = 1 / shared[sideOf[i]!]!
    const from = e * SIDE_WEIGHTS + 54 * (i % 3)
    let [xx, xy, yy] = [0, 0, 0]
    for (let j = 0; j < 18; j += 1) {
      const value = own[j]!
      xx += weights[from + j]! * value
      xy += weights[from + 18 + j]! * value
      yy += weights[from + 36 + j]! * value
    }
    const at = 3 * (nodes + sideOf[i]!)
    bent[at]! += share * xx
    bent[at + 1]! += share * xy
    bent[at + 2]! += share * yy
  }
  return bent
}
