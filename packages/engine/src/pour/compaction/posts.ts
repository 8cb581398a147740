import { type Ground, span } from './ground.ts'

/** A place at which the nearest insertion is asked for. */
export interface Post {
  readonly x: number
  readonly y: number
  /** Edge that it stands on, or −1. */
  readonly edge: number
  /** Edges that may stand between it and an insertion. */
  readonly near: readonly number[]
}

/** Distance of posts along an edge, and of those beside a corner that hides something, as shares of the radius. */
const ALONG = 0.25
const BESIDE = 0.3

/** Posts along every edge in its order, a hair inside the concrete; around corners that turn into the concrete, a field of them. */
export function edgePosts(ground: Ground, radius: number): Post[] {
  const posts: Post[] = []
  const add = (x: number, y: number, edge: number): void => {
    posts.push({ x, y, edge, near: ground.near(x, y, 1.5 * radius) })
  }
  for (let e = 0; e < ground.count; e += 1) {
    const [ax, ay] = [ground.x(e), ground.y(e)]
    const [dx, dy] = [(ground.bx[e] as number) - ax, (ground.by[e] as number) - ay]
    const length = span(dx, dy)
    const count = Math.max(1, Math.ceil(length / (radius * ALONG)))
    const inside = 0.01 / length
    for (let i = 0; i < count; i += 1) {
      const share = (i + 0.5) / count
      add(ax + dx * share - dy * inside, ay + dy * share + dx * inside, e)
    }
    atCorner(ground, e, add)
  }
  besideCorners(ground, radius, add)
  return posts
}

type Add = (x: number, y: number, edge: number) => void

function atCorner(ground: Ground, e: number, add: Add): void {
  const [x, y] = [ground.x(e), ground.y(e)]
  const p = ground.before[e] as number
  const onward = Math.atan2((ground.by[e] as number) - y, (ground.bx[e] as number) - x)
  const back = Math.atan2(ground.y(p) - y, ground.x(p) - x)
  const turn = back > onward ? back - onward : back - onward + 2 * Math.PI
  const rays = ground.reflex[e] === 1 ? 5 : 1
  for (let i = 0; i < rays; i += 1) {
    const angle = onward + (turn * (i + 0.5)) / rays
    add(x + 0.05 * Math.cos(angle), y + 0.05 * Math.sin(angle), -1)
  }
}

/** Places of one lattice within a radius of any corner that turns into the concrete. */
function besideCorners(ground: Ground, radius: number, add: Add): void {
  const step = BESIDE * radius
  const reach = Math.ceil(1 / BESIDE)
  const taken = new Set<string>()
  for (let e = 0; e < ground.count; e += 1) {
    if (ground.reflex[e] === 0) continue
    const [x, y] = [ground.x(e), ground.y(e)]
    const [column, row] = [Math.floor(x / step), Math.floor(y / step)]
    for (let i = column - reach; i <= column + reach; i += 1)
      for (let j = row - reach; j <= row + reach; j += 1) {
        const [px, py] = [(i + 0.5) * step, (j + 0.5) * step]
        const key = `${i} ${j}`
        if (taken.has(key) || span(px - x, py - y) > radius) continue
        taken.add(key)
        if (ground.clearance(px, py, 1) >= 1 && ground.holds(px, py)) add(px, py, -1)
      }
  }
}
