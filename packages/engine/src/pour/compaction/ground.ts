import type { Point } from '../../panel/point.ts'
import { bounds } from '../../panel/polygon.ts'
import { type Region, ringsOf } from '../../panel/region.ts'
import { Cells } from './cells.ts'

/** Below this, lengths count as 0, mm. The radius of a proof is cut by ten times as much, so that no claim rests on it. */
export const HAIR = 1e-6

/** How one point sees another: not at all, freely, or only on the right or left side of the line of sight. */
export type Sight = 0 | 1 | 2 | 3
export const BLOCKED: Sight = 0
export const CLEAR: Sight = 1
/** The line brushes a corner whose void lies on the left: the right side is lit. */
export const LIT_RIGHT: Sight = 2
export const LIT_LEFT: Sight = 3

/**
 * Edges of the concrete with what a line of sight needs of them. Concrete lies left of every edge; corner `e` is where edge `e` starts.
 */
export class Ground {
  readonly count: number
  readonly left: number
  readonly bottom: number
  readonly width: number
  readonly height: number
  readonly ax: Float64Array
  readonly ay: Float64Array
  readonly bx: Float64Array
  readonly by: Float64Array
  /** Edge that ends at the corner where edge `e` starts. */
  readonly before: Int32Array
  /** 1 where the corner turns into the concrete (openings, notches). */
  readonly reflex: Uint8Array
  /** Edges within `reach` of a cell, and edges at its height. */
  private readonly cells: Cells<number>
  private readonly rows: Cells<number>

  /** `reach`: largest distance that `near` is asked for, mm. */
  constructor(
    readonly region: Region,
    readonly reach: number,
  ) {
    const rings = ringsOf(region)
    const box = bounds(rings.flat())
    const [width, height] = [Math.max(0, box.right - box.left), Math.max(0, box.top - box.bottom)]
    this.left = box.left
    this.bottom = box.bottom
    this.width = width
    this.height = height
    this.cells = new Cells(box.left, box.bottom, width, height, reach)
    this.rows = new Cells(box.left, box.bottom, 0, height, Math.max(1, height / 200))
    this.count = rings.reduce((sum, ring) => sum + ring.length, 0)
    this.ax = new Float64Array(this.count)
    this.ay = new Float64Array(this.count)
    this.bx = new Float64Array(this.count)
    this.by = new Float64Array(this.count)
    this.before = new Int32Array(this.count)
    this.reflex = new Uint8Array(this.count)
    let at = 0
    for (const ring of rings) {
      for (let i = 0; i < ring.length; i += 1) {
        const [a, b] = [ring[i] as Point, ring[(i + 1) % ring.length] as Point]
        this.ax[at + i] = a[0]
        this.ay[at + i] = a[1]
        this.bx[at + i] = b[0]
        this.by[at + i] = b[1]
        this.before[at + i] = at + ((i + ring.length - 1) % ring.length)
      }
      at += ring.length
    }
    for (let e = 0; e < this.count; e += 1) {
      const p = this.before[e] as number
      const [ux, uy] = [this.x(e) - this.x(p), this.y(e) - this.y(p)]
      const [vx, vy] = [(this.bx[e] as number) - this.x(e), (this.by[e] as number) - this.y(e)]
      if (ux * vy - uy * vx < 0) this.reflex[e] = 1
      this.register(e)
    }
  }

  x(corner: number): number {
    return this.ax[corner] as number
  }

  y(corner: number): number {
    return this.ay[corner] as number
  }

  /** Edges within `by` (not over `reach`) of a point. */
  near(x: number, y: number, by: number): number[] {
    const listed = this.cells.list(this.cells.column(x), this.cells.row(y))
    return listed === undefined ? [] : listed.filter((e) => this.distance(e, x, y) <= by)
  }

  /** Distance from a point to the nearest edge, or `most` where none is nearer. */
  clearance(x: number, y: number, most: number): number {
    let least = most
    for (const e of this.cells.list(this.cells.column(x), this.cells.row(y)) ?? NONE)
      least = Math.min(least, this.distance(e, x, y))
    return least
  }

  distance(e: number, x: number, y: number): number {
    const ax = this.ax[e] as number
    const ay = this.ay[e] as number
    const dx = (this.bx[e] as number) - ax
    const dy = (this.by[e] as number) - ay
    const along = ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)
    const t = Math.max(0, Math.min(1, along))
    return span(ax + t * dx - x, ay + t * dy - y)
  }

  /** Whether a point lies in the concrete or within a hair of its edge. */
  holds(x: number, y: number): boolean {
    if (this.clearance(x, y, 1) <= HAIR) return true
    let inside = false
    for (const e of this.rows.list(0, this.rows.row(y)) ?? NONE) {
      const [ay, by] = [this.ay[e] as number, this.by[e] as number]
      if (ay > y === by > y) continue
      const [ax, bx] = [this.ax[e] as number, this.bx[e] as number]
      if (x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside
    }
    return inside
  }

  /**
   * Sight from p to v, given the edges that may stand between. Touching a corner of an opening lights one side only; touching the mould's
   * own convex corner, or anything doubtful, is no sight.
   */
  sight(px: number, py: number, edges: readonly number[], vx: number, vy: number): Sight {
    if (edges.length === 0) return CLEAR
    const length = span(vx - px, vy - py)
    if (length <= HAIR) return CLEAR
    const ux = (vx - px) / length
    const uy = (vy - py) / length
    let voidLeft = false
    let voidRight = false
    for (const e of edges) {
      const ax = (this.ax[e] as number) - px
      const ay = (this.ay[e] as number) - py
      const bx = (this.bx[e] as number) - px
      const by = (this.by[e] as number) - py
      const sideA = ux * ay - uy * ax
      const sideB = ux * by - uy * bx
      if ((sideA > HAIR && sideB > HAIR) || (sideA < -HAIR && sideB < -HAIR)) continue
      const alongA = ux * ax + uy * ay
      if (Math.abs(sideA) <= HAIR) {
        if (!(alongA > HAIR && alongA < length - HAIR)) continue
        const p = this.before[e] as number
        const sideP = ux * ((this.ay[p] as number) - py) - uy * ((this.ax[p] as number) - px)
        const left = sideB > HAIR || sideP > HAIR
        const right = sideB < -HAIR || sideP < -HAIR
        if (left && right) return BLOCKED
        if (!left && !right) continue
        if (this.reflex[e] === 0) return BLOCKED
        if (left) voidLeft = true
        else voidRight = true
        continue
      }
      // The corner where this edge ends is judged with the edge that starts there.
      if (Math.abs(sideB) <= HAIR) continue
      const alongB = ux * bx + uy * by
      const crossing = alongA + (sideA / (sideA - sideB)) * (alongB - alongA)
      if (crossing > HAIR && crossing < length - HAIR) return BLOCKED
    }
    if (voidLeft && voidRight) return BLOCKED
    return voidLeft ? LIT_RIGHT : voidRight ? LIT_LEFT : CLEAR
  }

  private register(e: number): void {
    const { cells, rows, reach } = this
    const [ax, ay] = [this.ax[e] as number, this.ay[e] as number]
    const [bx, by] = [this.bx[e] as number, this.by[e] as number]
    for (let row = rows.row(Math.min(ay, by)); row <= rows.row(Math.max(ay, by)); row += 1)
      rows.push(0, row, e)
    const within = reach + cells.size * Math.SQRT1_2 + HAIR
    const [right, top] = [cells.column(Math.max(ax, bx) + reach), cells.row(Math.max(ay, by) + reach)]
    for (let i = cells.column(Math.min(ax, bx) - reach); i <= right; i += 1)
      for (let j = cells.row(Math.min(ay, by) - reach); j <= top; j += 1) {
        const [x, y] = cells.middle(i, j)
        if (this.distance(e, x, y) <= within) cells.push(i, j, e)
      }
  }
}

/** Length of a vector. Plain root: `Math.hypot` costs ten times as much, and nothing here comes near overflow. */
export function span(dx: number, dy: number): number {
  return Math.sqrt(dx * dx + dy * dy)
}

const NONE: readonly number[] = []
