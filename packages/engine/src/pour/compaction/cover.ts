import type { Point } from '../../panel/point.ts'
import { Cells } from './cells.ts'
import { BLOCKED, CLEAR, type Ground, HAIR, LIT_RIGHT, span } from './ground.ts'
import { fillsCone, type Sector } from './sector.ts'

/** What a candidate vertex lies on: inside the concrete, on an edge, or at the corner where that edge starts. */
export type Lies = 'inside' | 'edge' | 'corner'

/** x, y, where it lies, and the edge that says so (−1 inside). Returning true stops the walk. */
export type Visit = (x: number, y: number, lies: Lies, edge: number) => boolean

export interface Insertion {
  readonly id: number
  readonly x: number
  readonly y: number
  /** Edges within the radius. */
  readonly edges: readonly number[]
  /** Shadows behind corners: from, to, and the edge that ends it, or −1 where the radius does. */
  readonly shadows: readonly Shadow[]
}

interface Shadow {
  readonly ax: number
  readonly ay: number
  readonly bx: number
  readonly by: number
  readonly edge: number
}

const NONE: readonly Insertion[] = []

/** Half-planes are cut by this, rad: two arcs that only touch leave a cusp between them. */
const CUT = 1e-7

/**
 * A set of insertions over the concrete, and the exact question which points none of them reaches.
 *
 * What one insertion reaches is its disc cut by what it sees in a straight line. A region that nothing reaches, if there is one, has a corner
 * among: corners of the concrete, crossings of arcs with arcs, edges and shadow lines, ends and crossings of shadow lines. So it is enough to
 * look at these, and there in every direction that goes into concrete.
 */
export class Cover {
  private readonly insertions = new Map<number, Insertion>()
  private readonly cells: Cells<Insertion>
  private next = 0
  /** A hair less than the radius asked for: the proof then holds with the tolerances inside. */
  readonly radius: number

  constructor(
    readonly ground: Ground,
    radius: number,
  ) {
    this.radius = radius - 10 * HAIR
    const { left, bottom, width, height } = ground
    this.cells = new Cells(left, bottom, width, height, radius)
  }

  get size(): number {
    return this.insertions.size
  }

  has(id: number): boolean {
    return this.insertions.has(id)
  }

  ids(): number[] {
    return [...this.insertions.keys()]
  }

  at(id: number): Point {
    const found = this.insertions.get(id)
    if (found === undefined) throw new Error(`no insertion ${id}`)
    return [found.x, found.y]
  }

  /** Whether the insertion has an edge of the concrete within its radius. */
  nearEdge(id: number): boolean {
    return (this.insertions.get(id)?.edges.length ?? 0) > 0
  }

  add(x: number, y: number): number {
    const edges = this.ground.near(x, y, this.radius)
    const id = this.next
    this.next += 1
    this.putBack({ id, x, y, edges, shadows: this.shadowsOf(x, y, edges) })
    return id
  }

  /** Takes an insertion out; `putBack` undoes it under the same id. */
  remove(id: number): Insertion {
    const one = this.insertions.get(id)
    if (one === undefined) throw new Error(`no insertion ${id}`)
    const cell = this.cells.list(this.cells.column(one.x), this.cells.row(one.y))
    cell?.splice(cell.indexOf(one), 1)
    this.insertions.delete(id)
    return one
  }

  putBack(one: Insertion): void {
    this.insertions.set(one.id, one)
    this.cells.push(this.cells.column(one.x), this.cells.row(one.y), one)
  }

  /** Ids within `by` of a point, `by` up to twice the radius. */
  around(x: number, y: number, by: number): number[] {
    const found: number[] = []
    for (const one of this.insertionsAround(x, y, by)) found.push(one.id)
    return found
  }

  /** Whether every direction from a candidate vertex into concrete is reached close by. */
  reached(x: number, y: number, lies: Lies, edge: number): boolean {
    const { ground, radius } = this
    const sectors: Sector[] = []
    const { cells } = this
    const [right, top] = [cells.column(x + radius), cells.row(y + radius)]
    for (let i = cells.column(x - radius); i <= right; i += 1)
      for (let j = cells.row(y - radius); j <= top; j += 1)
        for (const one of cells.list(i, j) ?? NONE) {
          const away = span(one.x - x, one.y - y)
          if (away > radius + HAIR) continue
          const sight = ground.sight(one.x, one.y, one.edges, x, y)
          if (sight === BLOCKED) continue
          const onArc = away > radius - HAIR
          if (sight === CLEAR && !onArc) {
            const part = lies === 'corner' ? this.cornerSector(one, edge) : null
            if (part === null) return true
            sectors.push(part)
          } else if (sight === CLEAR) {
            // At a reflex corner on the arc two limits meet: claimed by none, so that nothing is claimed twice.
            if (lies === 'corner' && this.cornerSector(one, edge) !== null) continue
            const toward = Math.atan2(one.y - y, one.x - x)
            sectors.push([toward - Math.PI / 2 + CUT, toward + Math.PI / 2 - CUT])
          } else if (!onArc && lies !== 'corner') {
            const onward = Math.atan2(y - one.y, x - one.x)
            sectors.push(
              sight === LIT_RIGHT
                ? [onward - Math.PI + CUT, onward - CUT]
                : [onward + CUT, onward + Math.PI - CUT],
            )
          }
        }
    return sectors.length > 0 && fillsCone(sectors, this.cone(lies, edge))
  }

  /** Candidate vertices that insertion `id` has a part in, with the partners that `partner` admits. */
  vertices(id: number, partner: (other: number) => boolean, visit: Visit): boolean {
    const one = this.insertions.get(id) as Insertion
    if (this.own(one, visit)) return true
    for (const other of this.insertionsAround(one.x, one.y, 2 * this.radius))
      if (other.id !== id && partner(other.id) && this.shared(one, other, visit)) return true
    return false
  }

  /** Candidate vertices within one radius of a place, until `visit` says stop. */
  verticesNear(x: number, y: number, visit: Visit): boolean {
    const within = (this.radius + 1e-5) ** 2
    const close: Visit = (vx, vy, lies, edge) =>
      (vx - x) * (vx - x) + (vy - y) * (vy - y) <= within && visit(vx, vy, lies, edge)
    for (const e of this.ground.near(x, y, this.radius))
      if (close(this.ground.x(e), this.ground.y(e), 'corner', e)) return true
    const near = this.insertionsAround(x, y, 2 * this.radius)
    for (let i = 0; i < near.length; i += 1) {
      const one = near[i] as Insertion
      if (this.own(one, close)) return true
      for (let j = i + 1; j < near.length; j += 1)
        if (this.shared(one, near[j] as Insertion, close)) return true
    }
    return false
  }

  private insertionsAround(x: number, y: number, by: number): Insertion[] {
    const found: Insertion[] = []
    const { cells } = this
    const [right, top] = [cells.column(x + by), cells.row(y + by)]
    for (let i = cells.column(x - by); i <= right; i += 1)
      for (let j = cells.row(y - by); j <= top; j += 1)
        for (const one of cells.list(i, j) ?? NONE)
          if ((one.x - x) * (one.x - x) + (one.y - y) * (one.y - y) <= by * by) found.push(one)
    return found
  }

  /** Vertices that one insertion makes with edges and by its own shadows. */
  private own(one: Insertion, visit: Visit): boolean {
    for (const e of one.edges) if (this.arcEdge(one, e, visit)) return true
    for (const shadow of one.shadows) {
      // Where the radius ends a shadow it lies inside; its start is a corner, looked at on its own.
      if (visit(shadow.bx, shadow.by, shadow.edge < 0 ? 'inside' : 'edge', shadow.edge)) return true
    }
    return false
  }

  /** Vertices that two insertions make together. */
  private shared(one: Insertion, other: Insertion, visit: Visit): boolean {
    const { radius } = this
    if (arcArc(one, other, radius, visit)) return true
    if (one.shadows.length + other.shadows.length === 0) return false
    for (const shadow of one.shadows) if (shadowArc(shadow, other, radius, visit)) return true
    for (const shadow of other.shadows) if (shadowArc(shadow, one, radius, visit)) return true
    for (const mine of one.shadows)
      for (const theirs of other.shadows) if (shadowShadow(mine, theirs, visit)) return true
    return false
  }

  /** True where the vertex lies in concrete and some direction from it is not reached. */
  fails(x: number, y: number, lies: Lies, edge: number): boolean {
    return !this.reached(x, y, lies, edge) && (lies !== 'inside' || this.ground.holds(x, y))
  }

  /** Every candidate vertex that is not reached; an empty list proves that all concrete is. */
  gaps(most = Number.POSITIVE_INFINITY): { x: number; y: number; lies: Lies; edge: number }[] {
    const found: { x: number; y: number; lies: Lies; edge: number }[] = []
    const look: Visit = (x, y, lies, edge) => {
      if (this.fails(x, y, lies, edge)) found.push({ x, y, lies, edge })
      return found.length >= most
    }
    for (let e = 0; e < this.ground.count; e += 1)
      if (look(this.ground.x(e), this.ground.y(e), 'corner', e)) return found
    for (const id of this.insertions.keys()) if (this.vertices(id, (other) => other > id, look)) return found
    return found
  }

  /** Directions into concrete from a candidate vertex. */
  private cone(lies: Lies, e: number): Sector {
    if (lies === 'inside') return [0, 2 * Math.PI]
    const { ground } = this
    const onward = Math.atan2((ground.by[e] as number) - ground.y(e), (ground.bx[e] as number) - ground.x(e))
    if (lies === 'edge') return [onward, onward + Math.PI]
    const p = ground.before[e] as number
    const back = Math.atan2(ground.y(p) - ground.y(e), ground.x(p) - ground.x(e))
    return [onward, back > onward ? back : back + 2 * Math.PI]
  }

  /** What an insertion sees around a corner: null where all of it. */
  private cornerSector(one: Insertion, e: number): Sector | null {
    const { ground } = this
    if (ground.reflex[e] === 0) return null
    const p = ground.before[e] as number
    const [cx, cy] = [ground.x(e), ground.y(e)]
    const seesNext = leftOf(cx, cy, ground.bx[e] as number, ground.by[e] as number, one.x, one.y)
    const seesBack = leftOf(ground.x(p), ground.y(p), cx, cy, one.x, one.y)
    if (seesNext && seesBack) return null
    const [onward, back] = this.cone('corner', e)
    const shade = Math.atan2(cy - one.y, cx - one.x)
    if (seesNext) return [onward, turnedPast(shade, onward) - CUT]
    if (seesBack) return [turnedBefore(shade, back) + CUT, back]
    return [0, 0]
  }

  private shadowsOf(x: number, y: number, edges: readonly number[]): Shadow[] {
    const { ground, radius } = this
    const shadows: Shadow[] = []
    for (const e of edges) {
      if (ground.reflex[e] === 0) continue
      const [cx, cy] = [ground.x(e), ground.y(e)]
      const away = span(cx - x, cy - y)
      if (away >= radius || away <= HAIR) continue
      const p = ground.before[e] as number
      const seesNext = leftOf(cx, cy, ground.bx[e] as number, ground.by[e] as number, x, y)
      const seesBack = leftOf(ground.x(p), ground.y(p), cx, cy, x, y)
      if (seesNext && seesBack) continue
      if (ground.sight(x, y, edges, cx, cy) === BLOCKED) continue
      const [ux, uy] = [(cx - x) / away, (cy - y) / away]
      const [end, edge] = this.shadowEnd(x, y, ux, uy, away, edges, e)
      if (end - away <= HAIR) continue
      shadows.push({ ax: cx, ay: cy, bx: x + ux * end, by: y + uy * end, edge })
    }
    return shadows
  }

  /** How far a shadow line that starts at a corner goes: to the next edge, or to the radius. */
  private shadowEnd(
    x: number,
    y: number,
    ux: number,
    uy: number,
    from: number,
    edges: readonly number[],
    corner: number,
  ): [number, number] {
    const { ground } = this
    let end = this.radius
    let edge = -1
    for (const e of edges) {
      if (e === corner || e === ground.before[corner]) continue
      const [ax, ay] = [(ground.ax[e] as number) - x, (ground.ay[e] as number) - y]
      const [bx, by] = [(ground.bx[e] as number) - x, (ground.by[e] as number) - y]
      const [sideA, sideB] = [ux * ay - uy * ax, ux * by - uy * bx]
      if (sideA > HAIR === sideB > HAIR && Math.abs(sideA) > HAIR && Math.abs(sideB) > HAIR) continue
      if (sideA === sideB) continue
      const share = sideA / (sideA - sideB)
      if (share < -HAIR || share > 1 + HAIR) continue
      const hit = ux * (ax + share * (bx - ax)) + uy * (ay + share * (by - ay))
      if (hit > from + HAIR && hit < end) {
        end = hit
        edge = e
      }
    }
    return [end, edge]
  }

  private arcEdge(one: Insertion, e: number, visit: Visit): boolean {
    const { ground, radius } = this
    const [ax, ay] = [ground.x(e), ground.y(e)]
    const [dx, dy] = [(ground.bx[e] as number) - ax, (ground.by[e] as number) - ay]
    const length = span(dx, dy)
    const [ux, uy] = [dx / length, dy / length]
    const foot = (one.x - ax) * ux + (one.y - ay) * uy
    const apart = (one.x - ax) * uy - (one.y - ay) * ux
    const half = radius * radius - apart * apart
    if (half < 0) return false
    for (const along of [foot - Math.sqrt(half), foot + Math.sqrt(half)])
      if (along >= 0 && along <= length && visit(ax + ux * along, ay + uy * along, 'edge', e)) return true
    return false
  }
}

/** On the concrete's side of an edge, by more than a hair. */
function leftOf(ax: number, ay: number, bx: number, by: number, x: number, y: number): boolean {
  return ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / span(bx - ax, by - ay) > HAIR
}

/** `angle` turned by whole turns to lie at or after `from`. */
function turnedPast(angle: number, from: number): number {
  return angle - 2 * Math.PI * Math.floor((angle - from) / (2 * Math.PI))
}

/** `angle` turned by whole turns to lie at or before `to`. */
function turnedBefore(angle: number, to: number): number {
  return angle - 2 * Math.PI * Math.ceil((angle - to) / (2 * Math.PI))
}

function arcArc(one: Insertion, other: Insertion, radius: number, visit: Visit): boolean {
  const dx = other.x - one.x
  const dy = other.y - one.y
  const square = dx * dx + dy * dy
  const rest = radius * radius - square / 4
  if (square === 0 || rest < 0) return false
  const share = Math.sqrt(rest / square)
  const mx = (one.x + other.x) / 2
  const my = (one.y + other.y) / 2
  return (
    visit(mx - dy * share, my + dx * share, 'inside', -1) ||
    visit(mx + dy * share, my - dx * share, 'inside', -1)
  )
}

function shadowArc(shadow: Shadow, other: Insertion, radius: number, visit: Visit): boolean {
  const [dx, dy] = [shadow.bx - shadow.ax, shadow.by - shadow.ay]
  const length = span(dx, dy)
  const [ux, uy] = [dx / length, dy / length]
  const foot = (other.x - shadow.ax) * ux + (other.y - shadow.ay) * uy
  const apart = (other.x - shadow.ax) * uy - (other.y - shadow.ay) * ux
  const half = radius * radius - apart * apart
  if (half < 0) return false
  for (const along of [foot - Math.sqrt(half), foot + Math.sqrt(half)])
    if (along > 0 && along < length && visit(shadow.ax + ux * along, shadow.ay + uy * along, 'inside', -1))
      return true
  return false
}

function shadowShadow(one: Shadow, other: Shadow, visit: Visit): boolean {
  const [dx, dy] = [one.bx - one.ax, one.by - one.ay]
  const [ex, ey] = [other.bx - other.ax, other.by - other.ay]
  const turn = dx * ey - dy * ex
  if (turn === 0) return false
  const [fx, fy] = [other.ax - one.ax, other.ay - one.ay]
  const t = (fx * ey - fy * ex) / turn
  const s = (fx * dy - fy * dx) / turn
  if (t <= 0 || t >= 1 || s <= 0 || s >= 1) return false
  return visit(one.ax + t * dx, one.ay + t * dy, 'inside', -1)
}
