import type { Point } from '../../panel/point.ts'
import { bounds, distanceToRing } from '../../panel/polygon.ts'
import type { Piece } from '../../panel/region.ts'
import { type Fine, plateMesh } from '../plate/mesh.ts'
import { type PlateModel, plateModel, solvePlate } from '../plate/model.ts'
import { reentrantCorners } from '../plate/peak.ts'
import { type DiscRow, discRow } from './disc-rows.ts'
import { ElementShapes, ROW } from './element-shapes.ts'
import { addEdgeLoads, PointForce } from './point-force.ts'
import { solveFour, TOGETHER, workFor } from './solve-many.ts'

export interface InfluenceInput {
  readonly piece: Piece
  /** mm */
  readonly thickness: number
  /** MPa */
  readonly modulus: number
  readonly poisson: number
  /** N/mm² of face, downward. */
  readonly pressure: number
  /**
   * Whether the unbounded part under an insert is taken off in closed form; else the mesh is fine along the outline and the element's own answer is
   * taken: inserts on an edge, or so near that their disc is cut.
   */
  readonly split: boolean
}

/** What 1 N downward at one place does to the plate, with the place's own readings. */
export interface Response {
  readonly at: Point
  /** Nodal unknowns of the smooth rest (split) or of the whole. */
  readonly rest: Float64Array
  /** mx, my, mxy at each reading, three each, per N. */
  readonly moments: Float64Array
  /** Unknowns that count at this place, and their weights in w and in the disc's w_xx, w_xy, w_yy: four each. */
  readonly unknowns: Int32Array
  readonly weights: Float64Array
  /** Motions of a rigid plate at this place. */
  readonly motion: readonly [number, number, number]
}

/** Side lengths of the mesh for searching: at re-entrant corners in thicknesses, anywhere as a share of the shorter extent, growth. */
const SEARCH_CORNER = 0.4
const SEARCH_COARSEST = 0.14
const SEARCH_GROWTH = 0.6
/** Side length along the outline where inserts stand on it, in thicknesses. */
const SEARCH_EDGE = 0.9
/** Up to this many corners each has its full fineness. */
const MANY = 32

/** One panel, factored once: answers to a force anywhere. */
export class Influence {
  readonly model: PlateModel
  readonly split: boolean
  readonly radius: number
  /** Places where moments are read: nodes, re-entrant corners, then middles of large triangles and long free edges. */
  readonly readings: readonly Point[]
  /** Moments of the load there, the rigid motions held. */
  readonly dead: Float64Array
  readonly load: Float64Array
  /** N, N·mm about the motions. */
  readonly work: readonly [number, number, number]
  readonly force: PointForce
  /** 1 where a node lies in the disc of a re-entrant corner, which is read as an average. */
  readonly averaged: Uint8Array
  readonly #corners: readonly DiscRow[]
  readonly #between: readonly Reading[]
  readonly #shapes: ElementShapes
  readonly #reach: number
  readonly #middle: Point
  readonly #buffer = new Float64Array(3)
  readonly #loads: Float64Array
  readonly #work: Float64Array
  readonly #held: readonly number[]

  constructor({ piece, thickness, modulus, poisson, pressure, split }: InfluenceInput) {
    const mesh = plateMesh({
      piece,
      points: [],
      fine: fineOf(piece, thickness, split),
      coarsest: SEARCH_COARSEST * shorterOf(piece),
      growth: SEARCH_GROWTH,
    })
    this.model = plateModel({ mesh, thickness, modulus, poisson })
    this.split = split
    this.#loads = new Float64Array(TOGETHER * this.model.unitLoad.length)
    this.#work = workFor(this.model.factor)
    this.#held = Array.from(this.model.system.factorHeld.keys()).filter(
      (i) => this.model.system.factorHeld[i] === 1,
    )
    this.radius = thickness / 2
    this.#shapes = new ElementShapes(this.model)
    const box = bounds(piece.outline)
    this.#reach = Math.hypot(box.right - box.left, box.top - box.bottom) / 2
    this.#middle = [(box.left + box.right) / 2, (box.bottom + box.top) / 2]
    this.force = new PointForce(this.model.bending.rigidity, this.#reach)
    const corners = reentrantCorners(piece)
    this.#corners = corners.map((at) => discRow(this.model, this.#shapes, at, this.radius))
    this.#between = betweenNodes(this.model, this.#shapes, corners, this.radius)
    this.readings = [
      ...Array.from(mesh.x, (x, i): Point => [x, mesh.y[i]!]),
      ...corners,
      ...this.#between.map(({ at }) => at),
    ]
    this.averaged = Uint8Array.from(this.readings, ([x, y], i) =>
      (i < mesh.x.length || i >= mesh.x.length + corners.length) &&
      corners.some((at) => (at[0] - x) ** 2 + (at[1] - y) ** 2 < this.radius ** 2)
        ? 1
        : 0,
    )
    const loads = this.model.unitLoad.map((value) => value * pressure)
    this.load = solvePlate(this.model, loads)
    this.dead = new Float64Array(3 * this.readings.length)
    this.#momentsInto(this.dead, this.load, null, null)
    const work = [0, 0, 0] as [number, number, number]
    for (let i = 0; i < mesh.x.length; i += 1) {
      const motion = this.motionAt([mesh.x[i]!, mesh.y[i]!])
      work[0] += loads[6 * i]!
      work[1] += loads[6 * i]! * motion[1] + loads[6 * i + 1]! / this.#reach
      work[2] += loads[6 * i]! * motion[2] + loads[6 * i + 2]! / this.#reach
    }
    this.work = work
  }

  motionAt([x, y]: Point): [number, number, number] {
    return [1, (x - this.#middle[0]) / this.#reach, (y - this.#middle[1]) / this.#reach]
  }

  /**
   * Answers to 1 N downward at each place; all must lie in the concrete. `only`: the readings that are wanted, 0 at the others; all where
   * absent.
   */
  responses(places: readonly Point[], only: readonly number[] | null = null): Response[] {
    const out: Response[] = []
    for (let from = 0; from < places.length; from += TOGETHER) {
      out.push(...this.#block(places.slice(from, from + TOGETHER), only))
    }
    return out
  }

  #block(places: readonly Point[], only: readonly number[] | null): Response[] {
    const { model } = this
    const loads = this.#loads.fill(0)
    for (const [column, at] of places.entries()) {
      if (this.split) addEdgeLoads(model, at, { out: loads, column, cases: TOGETHER, reach: this.#reach })
      else {
        const { nodes, weights } = model.locator.weightsAt(at)
        for (let i = 0; i < 18; i += 1)
          loads[(nodes[(i / 6) | 0]! * 6 + (i % 6)) * TOGETHER + column]! += weights[i]!
      }
    }
    for (const i of this.#held) loads.fill(0, i * TOGETHER, (i + 1) * TOGETHER)
    solveFour(model.factor, loads, this.#work)
    const [n, m] = [model.unitLoad.length, 3 * this.readings.length]
    const kept = new Float64Array(places.length * (n + m))
    return places.map((at, column) => {
      const rest = kept.subarray(column * (n + m), column * (n + m) + n)
      for (let i = 0, from = column; i < n; i += 1, from += TOGETHER) rest[i] = loads[from]!
      const moments = kept.subarray(column * (n + m) + n, (column + 1) * (n + m))
      this.#momentsInto(moments, rest, this.split ? at : null, only)
      return { at, rest, moments, ...this.#readingAt(at), motion: this.motionAt(at) }
    })
  }

  /** Moments at all readings of nodal unknowns, or at some, with those of 1 N at `force` where it is split off. */
  #momentsInto(
    out: Float64Array,
    u: Float64Array,
    force: Point | null,
    only: readonly number[] | null,
  ): void {
    const { rigidity, poisson } = this.model.bending
    const count = only === null ? this.readings.length : only.length
    for (let k = 0; k < count; k += 1) {
      const i = only === null ? k : only[k]!
      const at = 3 * i
      this.#curvatureInto(out, i, u, force)
      const [xx, xy, yy] = [out[at]!, out[at + 1]!, out[at + 2]!]
      out[at] = -rigidity * (xx + poisson * yy)
      out[at + 1] = -rigidity * (yy + poisson * xx)
      out[at + 2] = -rigidity * (1 - poisson) * xy
    }
  }

  /** w_xx, w_xy, w_yy of reading `i`, at 3 i of `out`. */
  #curvatureInto(out: Float64Array, i: number, u: Float64Array, force: Point | null): void {
    const { x, y } = this.model.mesh
    const nodes = x.length
    const between = i - nodes - this.#corners.length
    const at = 3 * i
    if (between < 0 && i >= nodes) {
      const row = this.#corners[i - nodes]!
      sumRow(out, at, row, u)
      if (force !== null) this.#addAround(out, at, row, force)
      return
    }
    if (between >= 0) sumRow(out, at, this.#between[between]!, u)
    else for (let k = 0; k < 3; k += 1) out[at + k] = u[6 * i + 3 + k]!
    if (force === null) return
    const [px, py] = between >= 0 ? this.#between[between]!.at : [x[i]!, y[i]!]
    const [dx, dy] = [px - force[0], py - force[1]]
    // Inside the disc of the insert its average stands for the value.
    if (dx * dx + dy * dy < 1) return
    this.force.curvatureInto(this.#buffer, dx, dy)
    for (let k = 0; k < 3; k += 1) out[at + k]! += this.#buffer[k]!
  }

  #addAround(out: Float64Array, at: number, { around }: DiscRow, force: Point): void {
    const slope = this.#buffer
    for (let i = 0; i < around.length; i += 4) {
      this.force.slopeInto(slope, around[i]! - force[0], around[i + 1]! - force[1])
      const [nx, ny] = [around[i + 2]!, around[i + 3]!]
      out[at]! += slope[0]! * nx
      out[at + 1]! += (slope[0]! * ny + slope[1]! * nx) / 2
      out[at + 2]! += slope[1]! * ny
    }
  }

  /** The unknowns that say deflection and disc at a place. */
  #readingAt(at: Point): Pick<Response, 'unknowns' | 'weights'> {
    const e = this.model.locator.find(at)
    if (e < 0) throw new Error(`place [${at[0]}, ${at[1]}]: expected concrete there`)
    const here = this.#shapes.at(e, at[0], at[1])
    const unknowns = this.#shapes.unknowns(e)
    const disc = this.split ? null : discRow
    const weights = new Float64Array(72)
    for (let i = 0; i < 18; i += 1) {
      weights[4 * i] = here[i]!
      if (disc !== null) continue
      weights[4 * i + 1] = here[ROW.xx + i]!
      weights[4 * i + 2] = here[ROW.xy + i]!
      weights[4 * i + 3] = here[ROW.yy + i]!
    }
    if (disc === null) return { unknowns, weights }
    const around = disc(this.model, this.#shapes, at, this.radius)
    const more = Array.from(around.unknowns, (_, i) => [0, ...around.weights.subarray(3 * i, 3 * i + 3)])
    return {
      unknowns: Int32Array.from([...unknowns, ...around.unknowns]),
      weights: Float64Array.from([...weights, ...more.flat()]),
    }
  }

  /** w, and mx, my, mxy of the disc, at a place under the load, into `out`. */
  deadAt(out: Float64Array, place: Response): void {
    this.#read(out, place, this.load)
    this.#toMoments(out)
  }

  /** The same under 1 N at another place, or at its own. */
  pairAt(out: Float64Array, place: Response, forced: Response): void {
    this.#read(out, place, forced.rest)
    if (this.split) {
      const [dx, dy] = [place.at[0] - forced.at[0], place.at[1] - forced.at[1]]
      out[0]! += this.force.deflection(dx, dy)
      if (dx * dx + dy * dy < this.radius * this.radius) {
        const mean = this.force.discCurvature(this.radius)
        out[1]! += mean
        out[3]! += mean
      } else {
        const add = this.#buffer
        this.force.curvatureInto(add, dx, dy)
        for (let k = 0; k < 3; k += 1) out[1 + k]! += add[k]!
      }
    }
    this.#toMoments(out)
  }

  #read(out: Float64Array, { unknowns, weights }: Response, u: Float64Array): void {
    let [w, xx, xy, yy] = [0, 0, 0, 0]
    for (let i = 0; i < unknowns.length; i += 1) {
      const value = u[unknowns[i]!]!
      w += weights[4 * i]! * value
      xx += weights[4 * i + 1]! * value
      xy += weights[4 * i + 2]! * value
      yy += weights[4 * i + 3]! * value
    }
    out[0] = w
    out[1] = xx
    out[2] = xy
    out[3] = yy
  }

  #toMoments(out: Float64Array): void {
    const { rigidity, poisson } = this.model.bending
    const [xx, xy, yy] = [out[1]!, out[2]!, out[3]!]
    out[1] = -rigidity * (xx + poisson * yy)
    out[2] = -rigidity * (yy + poisson * xx)
    out[3] = -rigidity * (1 - poisson) * xy
  }
}

/** Unknowns that say the second derivatives at a place. */
type Reading = Pick<DiscRow, 'at' | 'unknowns' | 'weights'>

/** Triangles larger than the square of this, and free edges longer, are read in the middle too: share of the panel's shorter extent. */
const READ_BETWEEN = 0.06

/** Readings around the disc of a re-entrant corner. */
const ROUND = 12

function betweenNodes(
  model: PlateModel,
  shapes: ElementShapes,
  corners: readonly Point[],
  radius: number,
): Reading[] {
  const { mesh, locator } = model
  const { x, y, triangles, sides } = mesh
  const shorter = Math.min(extent(x), extent(y)) * READ_BETWEEN
  const read = (e: number, at: Point): Reading => {
    const here = shapes.at(e, at[0], at[1])
    const weights = new Float64Array(54)
    for (let i = 0; i < 18; i += 1) {
      weights[3 * i] = here[ROW.xx + i]!
      weights[3 * i + 1] = here[ROW.xy + i]!
      weights[3 * i + 2] = here[ROW.yy + i]!
    }
    return { at, unknowns: shapes.unknowns(e), weights }
  }
  const found: Reading[] = []
  for (let e = 0; e < triangles.length / 3; e += 1) {
    const [i, j, k] = [triangles[3 * e]!, triangles[3 * e + 1]!, triangles[3 * e + 2]!]
    const twice = (x[j]! - x[i]!) * (y[k]! - y[i]!) - (x[k]! - x[i]!) * (y[j]! - y[i]!)
    if (twice < 2 * shorter * shorter) continue
    found.push(read(e, [(x[i]! + x[j]! + x[k]!) / 3, (y[i]! + y[j]! + y[k]!) / 3]))
  }
  for (const { a, b } of sides) {
    if (Math.hypot(x[b]! - x[a]!, y[b]! - y[a]!) < shorter) continue
    const at: Point = [(x[a]! + x[b]!) / 2, (y[a]! + y[b]!) / 2]
    const e = locator.find(at)
    if (e >= 0) found.push(read(e, at))
  }
  // Beside a re-entrant corner the plate's own value is greatest just outside the disc.
  for (const [cx, cy] of corners.length <= MANY ? corners : []) {
    for (let k = 0; k < ROUND; k += 1) {
      const turn = (2 * Math.PI * (k + 0.5)) / ROUND
      const at: Point = [cx + 1.001 * radius * Math.cos(turn), cy + 1.001 * radius * Math.sin(turn)]
      const e = locator.find(at)
      if (e >= 0) found.push(read(e, at))
    }
  }
  return found
}

function extent(values: Float64Array): number {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const value of values) {
    low = Math.min(low, value)
    high = Math.max(high, value)
  }
  return high - low
}

function sumRow(out: Float64Array, at: number, { unknowns, weights }: Reading, u: Float64Array): void {
  let [xx, xy, yy] = [0, 0, 0]
  for (let i = 0, k = 0; i < unknowns.length; i += 1, k += 3) {
    const value = u[unknowns[i]!]!
    xx += weights[k]! * value
    xy += weights[k + 1]! * value
    yy += weights[k + 2]! * value
  }
  out[at] = xx
  out[at + 1] = xy
  out[at + 2] = yy
}

function shorterOf({ outline }: Piece): number {
  const box = bounds(outline)
  return Math.min(box.right - box.left, box.top - box.bottom)
}

function fineOf(piece: Piece, thickness: number, split: boolean): Fine[] {
  const corners = reentrantCorners(piece)
  const many = Math.max(1, Math.sqrt(corners.length / MANY))
  const fine = corners.map((at): Fine => {
    const others = [piece.outline, ...piece.holes].filter((ring) => !ring.includes(at))
    const room = others.reduce(
      (least, ring) => Math.min(least, distanceToRing(at, ring)),
      Number.POSITIVE_INFINITY,
    )
    return { at, size: Math.max(2, Math.min(SEARCH_CORNER * thickness * many, room / 2)) }
  })
  if (split) return fine
  const { outline } = piece
  const size = SEARCH_EDGE * thickness
  for (const [i, a] of outline.entries()) {
    const b = outline[(i + 1) % outline.length]!
    const parts = Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / (1.5 * size))
    for (let k = 0; k < parts; k += 1) {
      fine.push({ at: [a[0] + ((b[0] - a[0]) * k) / parts, a[1] + ((b[1] - a[1]) * k) / parts], size })
    }
  }
  return fine
}
