import { type Factor, factorElements, solveFactor } from '../../numeric/element-factor.ts'
import type { Point } from '../../panel/point.ts'
import { InputError } from '../../working/issue.ts'
import { type Bending, type Corners, NODE_UNKNOWNS, stiffnessInto, uniformLoad } from './element.ts'
import { type HeldEdge, heldEdges } from './held-edges.ts'
import { Locator } from './locate.ts'
import type { PlateMesh } from './mesh.ts'
import { UnitSolutions } from './unit-solutions.ts'

/** A plate ready for any supports: factored once. */
export interface PlateModel {
  readonly mesh: PlateMesh
  readonly bending: Bending
  /** mm */
  readonly thickness: number
  /** Rigid motions that the held edges leave, at the nodes' unknowns. */
  readonly motions: readonly Float64Array[]
  /** Loads of 1 N/mm² at the nodes' unknowns. */
  readonly unitLoad: Float64Array
  readonly locator: Locator
  readonly factor: Factor
  readonly system: PlateSystem
  /** What was solved for a force on the move. */
  readonly units: UnitSolutions
}

export interface PlateSystem {
  /** Row-major 18 × 18 a triangle, in the directions of `turned`. */
  readonly matrices: Float64Array
  /** 1 where an unknown is held: edges that do not move. */
  readonly held: Uint8Array
  /** The same and those that hold the rigid motions for the factor only. */
  readonly factorHeld: Uint8Array
  /** The nodes that hold the rigid motions for the factor. */
  readonly nodes: readonly number[]
  /** Rows: directions of the unknowns of a node on a held edge; absent where they are as they are. */
  readonly turned: ReadonlyMap<number, Float64Array>
}

export interface PlateModelInput {
  readonly mesh: PlateMesh
  /** mm */
  readonly thickness: number
  /** Young's modulus, MPa. */
  readonly modulus: number
  readonly poisson: number
  readonly edges?: readonly HeldEdge[]
}

/** E t³ / 12 (1 − ν²), N·mm. */
export function rigidity(modulus: number, thickness: number, poisson: number): number {
  return (modulus * thickness ** 3) / (12 * (1 - poisson * poisson))
}

export function cornersOf({ x, y, triangles }: PlateMesh, e: number): Corners {
  const [i, j, k] = [triangles[3 * e]!, triangles[3 * e + 1]!, triangles[3 * e + 2]!]
  return [x[i]!, y[i]!, x[j]!, y[j]!, x[k]!, y[k]!]
}

/** Stiffness of all triangles, held edges, and the one factorisation. */
export function plateModel({ mesh, thickness, modulus, poisson, edges = [] }: PlateModelInput): PlateModel {
  const bending = { rigidity: rigidity(modulus, thickness, poisson), poisson }
  const count = mesh.triangles.length / 3
  const matrices = new Float64Array(count * 324)
  const { turned, held } = heldEdges(mesh, edges)
  const unitLoad = new Float64Array(mesh.x.length * NODE_UNKNOWNS)
  const load = new Float64Array(18)
  for (let e = 0; e < count; e += 1) {
    const corners = cornersOf(mesh, e)
    stiffnessInto(matrices, e * 324, corners, bending)
    addLoad(unitLoad, mesh.triangles, e, uniformLoad(corners, load))
    for (let v = 0; turned.size > 0 && v < 3; v += 1) {
      const directions = turned.get(mesh.triangles[3 * e + v]!)
      if (directions !== undefined) turnElement(matrices, e * 324, v, directions)
    }
  }
  const { motions, nodes } = freeMotions(mesh, turned, held)
  const factorHeld = Uint8Array.from(held)
  for (const node of nodes) factorHeld[node * 6] = 1
  const factor = factorElements({
    x: mesh.x,
    y: mesh.y,
    perNode: NODE_UNKNOWNS,
    triangles: mesh.triangles,
    matrices,
    held: factorHeld,
  })
  const system = { matrices, held, factorHeld, nodes, turned }
  const locator = new Locator(mesh)
  const units = new UnitSolutions()
  return { mesh, bending, thickness, motions, unitLoad, locator, factor, system, units }
}

function addLoad(loads: Float64Array, triangles: Int32Array, e: number, load: Float64Array): void {
  for (let i = 0; i < 18; i += 1) loads[triangles[3 * e + ((i / 6) | 0)]! * 6 + (i % 6)]! += load[i]!
}

/** K ← Q K Qᵀ for the six unknowns of one corner. */
function turnElement(matrices: Float64Array, offset: number, corner: number, q: Float64Array): void {
  const row = new Float64Array(6)
  for (let j = 0; j < 18; j += 1) {
    for (let a = 0; a < 6; a += 1) {
      let sum = 0
      for (let b = 0; b < 6; b += 1) sum += q[a * 6 + b]! * matrices[offset + (6 * corner + b) * 18 + j]!
      row[a] = sum
    }
    for (let a = 0; a < 6; a += 1) matrices[offset + (6 * corner + a) * 18 + j] = row[a]!
  }
  for (let i = 0; i < 18; i += 1) {
    for (let a = 0; a < 6; a += 1) {
      let sum = 0
      for (let b = 0; b < 6; b += 1) sum += q[a * 6 + b]! * matrices[offset + i * 18 + 6 * corner + b]!
      row[a] = sum
    }
    for (let a = 0; a < 6; a += 1) matrices[offset + i * 18 + 6 * corner + a] = row[a]!
  }
}

/** To the directions of `turned` (`into`) or back; in place. */
function turn(turned: PlateSystem['turned'], values: Float64Array, into: boolean): Float64Array {
  for (const [node, q] of turned) turnNode(q, values, node * 6, into)
  return values
}

function turnNode(q: Float64Array, values: Float64Array, from: number, into: boolean): void {
  const old = values.slice(from, from + 6)
  for (let a = 0; a < 6; a += 1) {
    let sum = 0
    for (let b = 0; b < 6; b += 1) sum += (into ? q[a * 6 + b]! : q[b * 6 + a]!) * old[b]!
    values[from + a] = sum
  }
}

/** The rigid motions that held edges leave, and as many nodes to hold so that the factor exists. */
function freeMotions(
  mesh: PlateMesh,
  turned: PlateSystem['turned'],
  held: Uint8Array,
): { motions: Float64Array[]; nodes: number[] } {
  const n = mesh.x.length
  const middle = [mesh.x.reduce((s, v) => s + v, 0) / n, mesh.y.reduce((s, v) => s + v, 0) / n] as const
  let reach = 0
  for (let i = 0; i < n; i += 1)
    reach = Math.max(reach, Math.hypot(mesh.x[i]! - middle[0], mesh.y[i]! - middle[1]))
  let motions = [0, 1, 2].map((mode) => {
    const out = new Float64Array(n * 6)
    for (let i = 0; i < n; i += 1) {
      out[i * 6] = mode === 0 ? 1 : (mode === 1 ? mesh.x[i]! - middle[0] : mesh.y[i]! - middle[1]) / reach
      if (mode > 0) out[i * 6 + mode] = 1 / reach
    }
    return out
  })
  // Each held unknown takes away the part of the motions that moves it.
  const inDirections = motions.map((motion) => turn(turned, motion.slice(), true))
  const rows: number[][] = []
  for (let i = 0; i < held.length; i += 1) {
    if (!held[i]) continue
    const scale = i % 6 === 0 ? 1 : reach
    rows.push(inDirections.map((motion) => motion[i]! * scale))
  }
  const left = nullSpace(rows)
  motions = left.map((mix) => {
    const out = new Float64Array(n * 6)
    for (const [k, motion] of motions.entries())
      for (let i = 0; i < out.length; i += 1) out[i]! += mix[k]! * motion[i]!
    return out
  })
  return { motions, nodes: nodesToHold(motions, n, turned) }
}

/** Orthonormal vectors of three numbers that all rows map to zero. */
function nullSpace(rows: readonly (readonly number[])[]): number[][] {
  const taken: number[][] = []
  for (const row of rows) {
    const rest = without(row, taken)
    const length = Math.hypot(...rest)
    if (length > 1e-6 * Math.max(1, Math.hypot(...row)) && taken.length < 3)
      taken.push(rest.map((v) => v / length))
  }
  const left: number[][] = []
  for (const axis of [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ]) {
    const rest = without(axis, [...taken, ...left])
    const length = Math.hypot(...rest)
    if (length > 0.3 && taken.length + left.length < 3) left.push(rest.map((v) => v / length))
  }
  return left
}

function without(vector: readonly number[], basis: readonly (readonly number[])[]): number[] {
  const out = [...vector]
  for (const unit of basis) {
    const along = unit.reduce((sum, value, i) => sum + value * out[i]!, 0)
    for (let i = 0; i < out.length; i += 1) out[i]! -= along * unit[i]!
  }
  return out
}

/** Nodes whose deflections fix the motions: each the one that the motions still free move most. */
function nodesToHold(
  motions: readonly Float64Array[],
  count: number,
  turned: PlateSystem['turned'],
): number[] {
  const nodes: number[] = []
  // Deflections of the motions at each node, less what the nodes taken hold.
  const left = motions.map((motion) => Float64Array.from({ length: count }, (_, i) => motion[i * 6]!))
  for (let k = 0; k < motions.length; k += 1) {
    let [best, most] = [-1, 0]
    for (let i = 0; i < count; i += 1) {
      let square = 0
      for (const values of left) square += values[i]! * values[i]!
      // The deflection of a turned node is no single unknown of it.
      if (turned.has(i)) continue
      if (square > most * (1 + 1e-9)) [best, most] = [i, square]
    }
    if (best < 0) throw new Error(`free motion ${k}: expected a node that it moves`)
    nodes.push(best)
    const unit = left.map((values) => values[best]! / Math.sqrt(most))
    for (let i = 0; i < count; i += 1) {
      let along = 0
      for (let m = 0; m < left.length; m += 1) along += unit[m]! * left[m]![i]!
      for (let m = 0; m < left.length; m += 1) left[m]![i]! -= along * unit[m]!
    }
  }
  return nodes
}

/** Residual of a solve beside the numbers that cancel in it, above which a result is a defect. */
export const RESIDUAL_LIMIT = 1e-8

/**
 * Deflections and their derivatives at the nodes under nodal loads, the rigid motions held at single nodes.
 *
 * @throws Error where the residual is above `RESIDUAL_LIMIT`: a defect, never a number.
 */
export function solvePlate(model: PlateModel, loads: Float64Array): Float64Array {
  const { factorHeld, turned } = model.system
  const right = turn(turned, loads.slice(), true)
  for (let i = 0; i < right.length; i += 1) if (factorHeld[i]) right[i] = 0
  const u = solveFactor(model.factor, right.slice())
  for (let pass = 0; ; pass += 1) {
    const { rest, error } = residual(model, u, right, factorHeld)
    if (error <= RESIDUAL_LIMIT * 1e-3) break
    if (pass === 3) {
      if (error <= RESIDUAL_LIMIT) break
      throw new Error(`plate: residual ${error}: expected at most ${RESIDUAL_LIMIT}`)
    }
    solveFactor(model.factor, rest)
    for (let i = 0; i < u.length; i += 1) u[i]! += rest[i]!
  }
  return turn(turned, u, false)
}

/** Asserts that deflections hold all the loads in balance, the nodes held for the factor included. */
export function assertBalance(model: PlateModel, u: Float64Array, loads: Float64Array): void {
  const { held, turned } = model.system
  const right = turn(turned, loads.slice(), true)
  const { error } = residual(model, turn(turned, u.slice(), true), right, held)
  if (!(error <= RESIDUAL_LIMIT)) {
    throw new Error(`plate: loads out of balance by ${error}: expected at most ${RESIDUAL_LIMIT}`)
  }
}

/** Share of all forces that a node held for the factor only may be left with. It is 10⁻⁹ on a common panel. */
export const BALANCE_LIMIT = 1e-3
/** Share of the stiffness of an element times its deflection that floating point leaves out of balance. */
const ROUNDING = 1e-12

/**
 * Asserts that the nodes held for the factor carry nothing. With solutions of `solvePlate`, each in balance at all other nodes,
 * added up, that is balance of the whole. `size`: sum of all forces on the plate, N.
 *
 * @throws InputError where parts of tenths of a millimetre are so stiff that their rounding alone is beyond the limit; Error otherwise.
 */
export function assertNothingHeld(
  model: PlateModel,
  u: Float64Array,
  loads: Float64Array,
  size: number,
): void {
  for (const node of model.system.nodes) {
    const rest = Math.abs(loads[node * 6]! - forceAt(model, node, u))
    if (rest <= BALANCE_LIMIT * size) continue
    if (rest <= ROUNDING * stiffest(model, u)) {
      const expected = 'an outline and openings without parts far finer than the thickness'
      throw new InputError([{ path: 'outline', found: 'parts too fine to be solved for', expected }])
    }
    throw new Error(`plate: ${rest} N at a node that holds nothing, of ${size} N in all`)
  }
}

/** Largest stiffness of a corner of a triangle times its deflection, N. */
function stiffest({ mesh, system }: PlateModel, u: Float64Array): number {
  let most = 0
  for (let at = 0; at < mesh.triangles.length; at += 1) {
    const e = (at / 3) | 0
    const diagonal = system.matrices[e * 324 + (at % 3) * 6 * 19]!
    most = Math.max(most, diagonal * Math.abs(u[mesh.triangles[at]! * 6]!))
  }
  return most
}

/** Force that the triangles around a node have there, N. */
function forceAt({ mesh, system }: PlateModel, node: number, u: Float64Array): number {
  const values = new Float64Array(6)
  let force = 0
  for (let at = 0; at < mesh.triangles.length; at += 1) {
    if (mesh.triangles[at] !== node) continue
    const first = at - (at % 3)
    const row = first * 108 + (at % 3) * 108
    for (let c = 0; c < 3; c += 1) {
      const other = mesh.triangles[first + c]!
      values.set(u.subarray(other * 6, other * 6 + 6))
      const directions = system.turned.get(other)
      if (directions !== undefined) turnNode(directions, values, 0, true)
      for (let k = 0; k < 6; k += 1) force += system.matrices[row + 6 * c + k]! * values[k]!
    }
  }
  return force
}

const own = new Float64Array(18)

/** Takes the forces of triangle `e` off `rest`; `sizes` grows to the sum of the sizes of their parts. */
function subtractForces(
  rest: Float64Array,
  sizes: Float64Array,
  e: number,
  triangles: Int32Array,
  matrices: Float64Array,
  u: Float64Array,
  held: Uint8Array,
): void {
  for (let j = 0; j < 18; j += 1) own[j] = u[triangles[3 * e + ((j / 6) | 0)]! * 6 + (j % 6)]!
  for (let i = 0; i < 18; i += 1) {
    const from = e * 324 + i * 18
    let a = 0
    let b = 0
    let c = 0
    let whole = 0
    for (let j = 0; j < 18; j += 3) {
      const p = matrices[from + j]! * own[j]!
      const q = matrices[from + j + 1]! * own[j + 1]!
      const r = matrices[from + j + 2]! * own[j + 2]!
      a += p
      b += q
      c += r
      whole += Math.abs(p) + Math.abs(q) + Math.abs(r)
    }
    const to = triangles[3 * e + ((i / 6) | 0)]! * 6 + (i % 6)
    rest[to]! -= a + b + c
    if (whole > sizes[i % 6]! && !held[to]) sizes[i % 6] = whole
  }
}

/** f − K u, and its largest number beside the largest of what cancels in it, for w, slopes and curvatures apart. */
function residual(
  { mesh, system }: PlateModel,
  u: Float64Array,
  right: Float64Array,
  held: Uint8Array,
): { rest: Float64Array; error: number } {
  const rest = right.slice()
  const sizes = new Float64Array(6)
  for (let e = 0; e < mesh.triangles.length / 3; e += 1) {
    subtractForces(rest, sizes, e, mesh.triangles, system.matrices, u, held)
  }
  let error = 0
  for (let i = 0; i < rest.length; i += 1) {
    if (held[i]) rest[i] = 0
    else if (rest[i] !== 0) error = Math.max(error, Math.abs(rest[i]!) / sizes[i % 6]!)
    if (!Number.isFinite(u[i]!)) error = Number.POSITIVE_INFINITY
  }
  return { rest, error }
}

/** Adds a force at a point, N downward, to nodal loads by the element's own interpolation. */
export function addForce(model: PlateModel, loads: Float64Array, at: Point, force: number): void {
  const { nodes, weights } = model.locator.weightsAt(at)
  for (let i = 0; i < 18; i += 1) loads[nodes[(i / 6) | 0]! * 6 + (i % 6)]! += force * weights[i]!
}
