import Delaunator from 'delaunator'
import { span } from './ground.ts'
import type { Post } from './posts.ts'
import type { Terrain } from './terrain.ts'

/** A post this near to an insertion, radii, needs no look: the next post is a quarter of a radius away. */
const CALM = 0.73

/** An insertion that may be moved. */
export interface Site {
  readonly x: number
  readonly y: number
  /** Least distance from faces that it must keep, mm. */
  readonly keep: number
  /** Whether it stays where it is. */
  readonly fixed: boolean
}

/** A round part of the panel: insertions in it move, those farther out stand still. */
export interface Window {
  readonly x: number
  readonly y: number
  /** mm */
  readonly reach: number
}

/** A place that every insertion is too far from. */
export interface Missed {
  readonly x: number
  readonly y: number
  /** How far beyond the radius the nearest insertion is, radii. */
  readonly over: number
}

/** Longest move in one round, as a share of the radius. */
const STRIDE = 0.15
/** A shorter move is none. */
const REST = 1e-4

/**
 * Insertions that push themselves to where they are missed. A round looks at the places that are farthest from every insertion (corners of
 * their cells, inside and along the edges) and moves the insertions around each such place toward it. Many rounds spread slack evenly over a
 * panel, so that one insertion more can be spared. What comes out is a proposal: whether it covers is proven by `Cover`.
 */
export class Spread {
  readonly count: number
  readonly x: Float64Array
  readonly y: Float64Array
  /** Least distance from faces that each may have, mm. */
  readonly keep: Float64Array
  /** Places farther than the radius from every insertion in the last round, and by how much in all, radii. */
  missed: Missed[] = []
  excess = 0

  private readonly posts: readonly Post[]
  /** 1 where an insertion stands outside the window and stays. */
  private readonly held: Uint8Array
  /** The insertion that was last nearest to each post, or −1; 1 where it was near enough. */
  private readonly nearest: Int32Array
  private readonly calm: Uint8Array
  /** 1 where an insertion moved in the last round. */
  private readonly moved: Uint8Array
  private readonly forceX: Float64Array
  private readonly forceY: Float64Array
  private readonly speedX: Float64Array
  private readonly speedY: Float64Array
  private readonly mesh: Delaunator<Float64Array>
  private readonly places: Float64Array

  constructor(
    readonly terrain: Terrain,
    private readonly given: readonly Site[],
    private readonly window: Window | null = null,
  ) {
    const sites = given
    this.posts = window === null ? terrain.posts() : postsWithin(terrain, window)
    this.held = Uint8Array.from(sites, ({ x, y, fixed }) => (fixed || isHeld(window, x, y) ? 1 : 0))
    this.count = sites.length
    this.x = Float64Array.from(sites, ({ x }) => x)
    this.y = Float64Array.from(sites, ({ y }) => y)
    this.keep = Float64Array.from(sites, ({ keep }) => keep)
    this.nearest = new Int32Array(this.posts.length).fill(-1)
    this.calm = new Uint8Array(this.posts.length)
    this.moved = new Uint8Array(this.count).fill(1)
    this.forceX = new Float64Array(this.count)
    this.forceY = new Float64Array(this.count)
    this.speedX = new Float64Array(this.count)
    this.speedY = new Float64Array(this.count)
    this.places = new Float64Array(2 * this.count)
    this.copyPlaces()
    this.mesh = new Delaunator(this.places)
  }

  /** About what a round costs: insertions, and posts that ask for the nearest. */
  get weight(): number {
    return this.count + this.posts.length / 6
  }

  /** One round: pushes begin at `from` radii, each move is `share` of the push and `swing` of the last move. */
  round(from: number, share: number, swing: number): void {
    this.forceX.fill(0)
    this.forceY.fill(0)
    this.missed = []
    this.excess = 0
    this.copyPlaces()
    this.mesh.update()
    this.terrain.settle(this.x, this.y)
    this.pushInside(from)
    this.pushAlongEdges(from)
    this.move(share, swing)
  }

  sites(): Site[] {
    return this.given.map(({ keep, fixed }, i) => ({
      x: this.x[i] as number,
      y: this.y[i] as number,
      keep,
      fixed,
    }))
  }

  private looksAt(x: number, y: number): boolean {
    const { window } = this
    if (window === null) return true
    const reach = window.reach + 1.1 * this.terrain.radius
    return (x - window.x) ** 2 + (y - window.y) ** 2 <= reach * reach
  }

  private copyPlaces(): void {
    for (let i = 0; i < this.count; i += 1) {
      this.places[2 * i] = this.x[i] as number
      this.places[2 * i + 1] = this.y[i] as number
    }
  }

  /** Corners of cells inside the concrete: centres of the circles through three insertions with none inside. */
  private pushInside(from: number): void {
    const { x, y, terrain } = this
    const { radius } = terrain
    const { triangles } = this.mesh
    const least = (radius * from) ** 2
    for (let t = 0; t < triangles.length; t += 3) {
      const a = triangles[t] as number
      const b = triangles[t + 1] as number
      const c = triangles[t + 2] as number
      const ax = x[a] as number
      const ay = y[a] as number
      const dx = (x[b] as number) - ax
      const dy = (y[b] as number) - ay
      const ex = (x[c] as number) - ax
      const ey = (y[c] as number) - ay
      const turn = 2 * (dx * ey - dy * ex)
      const dd = dx * dx + dy * dy
      const ee = ex * ex + ey * ey
      const ux = (ey * dd - dy * ee) / turn
      const uy = (dx * ee - ex * dd) / turn
      const square = ux * ux + uy * uy
      if (!(square < 4 * radius * radius)) continue
      if (square < least) continue
      const away = Math.sqrt(square)
      const px = ax + ux
      const py = ay + uy
      if (!this.looksAt(px, py) || !terrain.holds(px, py)) continue
      const near = terrain.near(px, py)
      if (
        near.length > 1 &&
        !(
          terrain.sees(px, py, near, ax, ay) &&
          terrain.sees(px, py, near, ax + dx, ay + dy) &&
          terrain.sees(px, py, near, ax + ex, ay + ey)
        )
      )
        continue
      this.note(px, py, away)
      const push = away - radius * from
      this.push(a, px, py, away, push)
      this.push(b, px, py, away, push)
      this.push(c, px, py, away, push)
    }
  }

  /** Places along the edges where the nearest insertion changes, and posts near corners that hide something. */
  private pushAlongEdges(from: number): void {
    const { x, y, terrain } = this
    const { radius } = terrain
    const start = radius * from
    let before: Post | null = null
    let lastSite = -1
    const calm = (CALM * radius) ** 2
    for (let k = 0; k < this.posts.length; k += 1) {
      const post = this.posts[k] as Post
      const last = this.nearest[k] as number
      const same = this.calm[k] === 1 && this.moved[last] === 0
      if (same || this.isCalm(post, last, post.edge >= 0 ? calm : 0.9 * start * start)) {
        this.calm[k] = 1
        lastSite = -1
        continue
      }
      this.calm[k] = 0
      const site = terrain.nearest(post, x, y)
      this.nearest[k] = site
      if (site < 0) {
        this.note(post.x, post.y, 2 * radius)
      } else {
        const away = span((x[site] as number) - post.x, (y[site] as number) - post.y)
        if (away > start) {
          this.note(post.x, post.y, away)
          this.push(site, post.x, post.y, away, 0.7 * (away - start))
        }
        if (
          before !== null &&
          lastSite >= 0 &&
          lastSite !== site &&
          post.edge >= 0 &&
          post.edge === before.edge
        )
          this.pushBetween(before, post, lastSite, site, start)
      }
      before = post
      lastSite = site
    }
  }

  /** Whether the insertion that was nearest is still so near that nothing between this post and the next can be missed. */
  private isCalm(post: Post, site: number, square: number): boolean {
    if (site < 0) return false
    const [sx, sy] = [this.x[site] as number, this.y[site] as number]
    const dx = sx - post.x
    const dy = sy - post.y
    return dx * dx + dy * dy < square && this.terrain.sees(post.x, post.y, post.near, sx, sy)
  }

  /** Where two insertions are equally far from the line between two posts. */
  private pushBetween(one: Post, other: Post, first: number, second: number, start: number): void {
    const { x, y } = this
    const gx = (x[second] as number) - (x[first] as number)
    const gy = (y[second] as number) - (y[first] as number)
    const mx = ((x[second] as number) + (x[first] as number)) / 2
    const my = ((y[second] as number) + (y[first] as number)) / 2
    const share = ((mx - one.x) * gx + (my - one.y) * gy) / ((other.x - one.x) * gx + (other.y - one.y) * gy)
    if (!(share > 0 && share < 1)) return
    const px = one.x + (other.x - one.x) * share
    const py = one.y + (other.y - one.y) * share
    const away = span((x[second] as number) - px, (y[second] as number) - py)
    if (away <= start) return
    this.note(px, py, away)
    this.push(first, px, py, away, away - start)
    this.push(second, px, py, away, away - start)
  }

  private push(site: number, px: number, py: number, away: number, by: number): void {
    this.forceX[site] = (this.forceX[site] as number) + (by * (px - (this.x[site] as number))) / away
    this.forceY[site] = (this.forceY[site] as number) + (by * (py - (this.y[site] as number))) / away
  }

  private note(px: number, py: number, away: number): void {
    const over = away / this.terrain.radius - 1
    if (over <= 0) return
    this.missed.push({ x: px, y: py, over })
    this.excess += over
  }

  private move(share: number, swing: number): void {
    const { terrain } = this
    const most = STRIDE * terrain.radius
    for (let i = 0; i < this.count; i += 1) {
      this.moved[i] = 0
      if (this.held[i] === 1) continue
      let dx = share * (this.forceX[i] as number) + swing * (this.speedX[i] as number)
      let dy = share * (this.forceY[i] as number) + swing * (this.speedY[i] as number)
      const length = span(dx, dy)
      if (length < REST * terrain.radius) {
        this.speedX[i] = 0
        this.speedY[i] = 0
        continue
      }
      if (length > most) {
        dx *= most / length
        dy *= most / length
      }
      const [fromX, fromY] = [this.x[i] as number, this.y[i] as number]
      const spot = terrain.shifted(fromX, fromY, fromX + dx, fromY + dy, this.keep[i] as number)
      this.speedX[i] = spot === null ? 0 : spot[0] - fromX
      this.speedY[i] = spot === null ? 0 : spot[1] - fromY
      if (spot === null) continue
      this.moved[i] = 1
      this.x[i] = spot[0]
      this.y[i] = spot[1]
    }
  }
}

function isHeld(window: Window | null, x: number, y: number): boolean {
  return window !== null && span(x - window.x, y - window.y) > window.reach
}

function postsWithin(terrain: Terrain, { x, y, reach }: Window): Post[] {
  const far = reach + 1.1 * terrain.radius
  return terrain.posts().filter((post) => (post.x - x) ** 2 + (post.y - y) ** 2 <= far * far)
}
