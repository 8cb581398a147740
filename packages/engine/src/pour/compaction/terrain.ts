import { CLEAR, Ground, span } from './ground.ts'
import { edgePosts, type Post } from './posts.ts'

/** What a cell of the raster holds. */
const MIXED = 0
const SOLID = 1
const VOID = 2

/** Posts that the proof may add. */
const MOST_EXTRA = 600

/** What `Spread` asks of the concrete, prepared once: what lies where, posts along the edges, and the insertions by cell. */
export class Terrain {
  private readonly wide: Ground
  private readonly fixed: readonly Post[]
  private extra: Post[] = []
  private readonly columns: number
  private readonly rows: number
  private readonly size: number
  private readonly kind: Uint8Array
  private readonly edges: (readonly number[])[]
  /** Insertions by cell: those of cell k stand in `sorted` from `starts[k]` to `starts[k + 1]`. */
  private readonly starts: Int32Array
  private sorted = new Int32Array(0)
  private cellOf = new Int32Array(0)

  constructor(
    readonly ground: Ground,
    readonly radius: number,
    readonly margin: number,
    /** Where an insertion keeps the margin. */
    readonly inner: Ground,
  ) {
    const wide = new Ground(ground.region, 1.5 * radius)
    this.wide = wide
    this.size = radius / 2
    this.columns = Math.floor(ground.width / this.size) + 1
    this.rows = Math.floor(ground.height / this.size) + 1
    const cells = this.columns * this.rows
    this.kind = new Uint8Array(cells)
    this.edges = []
    this.starts = new Int32Array(cells + 2)
    const half = (this.size / 2) * Math.SQRT2
    for (let row = 0; row < this.rows; row += 1)
      for (let column = 0; column < this.columns; column += 1) {
        const x = ground.left + (column + 0.5) * this.size
        const y = ground.bottom + (row + 0.5) * this.size
        const clear = ground.clearance(x, y, half + 1)
        this.kind[this.edges.length] = clear <= half ? MIXED : ground.holds(x, y) ? SOLID : VOID
        this.edges.push(wide.near(x, y, 1.1 * radius + half))
      }
    this.fixed = edgePosts(wide, radius)
  }

  /** Posts along the edges in their order, then those added. */
  posts(): readonly Post[] {
    return this.extra.length === 0 ? this.fixed : [...this.fixed, ...this.extra]
  }

  /** A post where the proof found a place missed; the oldest are forgotten. */
  addPost(x: number, y: number): void {
    if (this.extra.some((post) => span(post.x - x, post.y - y) < 0.01 * this.radius)) return
    if (this.extra.length >= MOST_EXTRA) this.extra = this.extra.slice(MOST_EXTRA / 2)
    this.extra.push({ x, y, edge: -1, near: this.wide.near(x, y, 1.5 * this.radius) })
  }

  holds(x: number, y: number): boolean {
    const { ground } = this
    if (
      x < ground.left ||
      y < ground.bottom ||
      x > ground.left + ground.width ||
      y > ground.bottom + ground.height
    )
      return false
    const kind = this.kind[this.cell(x, y)]
    return kind === SOLID || (kind === MIXED && ground.holds(x, y))
  }

  near(x: number, y: number): readonly number[] {
    return this.edges[this.cell(x, y)] as readonly number[]
  }

  /** Whether q is seen from p, given the edges near either. Quick where no edge turns its back on one of them. */
  sees(px: number, py: number, near: readonly number[], qx: number, qy: number): boolean {
    const { ax, ay, bx, by } = this.ground
    if (near.length < 2) return true
    for (let i = 0; i < near.length; i += 1) {
      const e = near[i] as number
      const dx = (bx[e] as number) - (ax[e] as number)
      const dy = (by[e] as number) - (ay[e] as number)
      if (
        dx * (qy - (ay[e] as number)) - dy * (qx - (ax[e] as number)) < -1e-6 ||
        dx * (py - (ay[e] as number)) - dy * (px - (ax[e] as number)) < 1e-6
      )
        return this.ground.sight(px, py, near, qx, qy) === CLEAR
    }
    return true
  }

  /** Sorts the insertions into cells. */
  settle(x: Float64Array, y: Float64Array): void {
    const { starts } = this
    const count = x.length
    if (this.sorted.length !== count) {
      this.sorted = new Int32Array(count)
      this.cellOf = new Int32Array(count)
    }
    starts.fill(0)
    for (let i = 0; i < count; i += 1) {
      const cell = this.cell(x[i] as number, y[i] as number)
      this.cellOf[i] = cell
      starts[cell + 2] = (starts[cell + 2] as number) + 1
    }
    for (let k = 2; k < starts.length; k += 1) starts[k] = (starts[k] as number) + (starts[k - 1] as number)
    for (let i = 0; i < count; i += 1) {
      const cell = this.cellOf[i] as number
      const at = starts[cell + 1] as number
      this.sorted[at] = i
      starts[cell + 1] = at + 1
    }
  }

  /** Whether an insertion other than `own` reaches a place. */
  reachedByOther(own: number, px: number, py: number, x: Float64Array, y: Float64Array): boolean {
    const { columns, rows, starts, sorted } = this
    const column = this.column(px)
    const row = this.row(py)
    const near = this.near(px, py)
    for (let j = Math.max(0, row - 2); j <= Math.min(rows - 1, row + 2); j += 1)
      for (let i = Math.max(0, column - 2); i <= Math.min(columns - 1, column + 2); i += 1) {
        const end = starts[j * columns + i + 1] as number
        for (let k = starts[j * columns + i] as number; k < end; k += 1) {
          const site = sorted[k] as number
          if (site === own) continue
          const dx = (x[site] as number) - px
          const dy = (y[site] as number) - py
          if (
            dx * dx + dy * dy <= this.radius * this.radius &&
            this.sees(px, py, near, x[site] as number, y[site] as number)
          )
            return true
        }
      }
    return false
  }

  /** The nearest insertion that sees the post, within one and a half radii; −1 where there is none. */
  nearest(post: Post, x: Float64Array, y: Float64Array): number {
    const { columns, rows, starts, sorted } = this
    const column = this.column(post.x)
    const row = this.row(post.y)
    let least = 2.25 * this.radius * this.radius
    let found = -1
    for (let ring = 0; ring <= 3; ring += 1) {
      // Nothing in this ring of cells or beyond can be nearer than what was found.
      if (found >= 0 && least <= ((ring - 1) * this.size) ** 2) break
      for (let j = Math.max(0, row - ring); j <= Math.min(rows - 1, row + ring); j += 1) {
        const whole = j === row - ring || j === row + ring
        const step = whole || ring === 0 ? 1 : 2 * ring
        for (let i = column - ring; i <= column + ring; i += step) {
          if (i < 0 || i >= columns) continue
          const end = starts[j * columns + i + 1] as number
          for (let k = starts[j * columns + i] as number; k < end; k += 1) {
            const site = sorted[k] as number
            const dx = (x[site] as number) - post.x
            const dy = (y[site] as number) - post.y
            const square = dx * dx + dy * dy
            if (
              square < least &&
              this.sees(post.x, post.y, post.near, x[site] as number, y[site] as number)
            ) {
              least = square
              found = site
            }
          }
        }
      }
    }
    return found
  }

  /** Where an insertion comes to when it is moved: pushed off the faces by `keep`; null where that leads nowhere. */
  shifted(
    fromX: number,
    fromY: number,
    toX: number,
    toY: number,
    keep: number,
  ): readonly [number, number] | null {
    const { ground } = this
    const near = this.near(fromX, fromY)
    if (near.length === 0) return [toX, toY]
    let x = toX
    let y = toY
    for (let turn = 0; turn < 2; turn += 1)
      for (let i = 0; i < near.length; i += 1) {
        const e = near[i] as number
        const away = ground.distance(e, x, y)
        if (away >= keep || away < 1e-9) continue
        const ax = ground.x(e)
        const ay = ground.y(e)
        const dx = (ground.bx[e] as number) - ax
        const dy = (ground.by[e] as number) - ay
        const length = span(dx, dy)
        const along = ((x - ax) * dx + (y - ay) * dy) / (length * length)
        if (along >= 0 && along <= 1) {
          const side = (dx * (y - ay) - dy * (x - ax)) / length
          x -= (dy / length) * (keep - side + 1e-7)
          y += (dx / length) * (keep - side + 1e-7)
        } else {
          const qx = along < 0 ? ax : (ground.bx[e] as number)
          const qy = along < 0 ? ay : (ground.by[e] as number)
          x += ((x - qx) / away) * (keep - away + 1e-7)
          y += ((y - qy) / away) * (keep - away + 1e-7)
        }
      }
    for (let i = 0; i < near.length; i += 1)
      if (ground.distance(near[i] as number, x, y) < keep - 1e-6) return null
    return ground.sight(fromX, fromY, near, x, y) === CLEAR ? [x, y] : null
  }

  private column(x: number): number {
    return Math.max(0, Math.min(this.columns - 1, Math.floor((x - this.ground.left) / this.size)))
  }

  private row(y: number): number {
    return Math.max(0, Math.min(this.rows - 1, Math.floor((y - this.ground.bottom) / this.size)))
  }

  private cell(x: number, y: number): number {
    return this.row(y) * this.columns + this.column(x)
  }
}
