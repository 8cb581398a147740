import type { Point } from '../../panel/point.ts'
import { nearestOnSegment } from '../../panel/polygon.ts'
import type { Cover, Lies, Visit } from './cover.ts'
import { CLEAR, type Ground, span } from './ground.ts'

export interface Gap {
  readonly x: number
  readonly y: number
  readonly lies: Lies
  readonly edge: number
}

/**
 * Adds insertions until every place is reached. Answers what could not be reached: empty means proven cover.
 *
 * Each round takes the first missed place and puts an insertion where it keeps the margin if that can be, and reaches most of
 * the other missed places nearby.
 */
export function repair(cover: Cover, margin: number, inner: Ground): Gap[] {
  const pending: Gap[] = cover.gaps()
  const hopeless: Gap[] = []
  let budget = 4 * cover.size + 200 + 8 * cover.ground.count
  let from = 0
  while (from < pending.length) {
    const gap = pending[from] as Gap
    if (!cover.fails(gap.x, gap.y, gap.lies, gap.edge)) {
      from += 1
      continue
    }
    if (budget === 0)
      return [
        ...hopeless,
        ...pending.slice(from).filter((one) => cover.fails(one.x, one.y, one.lies, one.edge)),
      ]
    budget -= 1
    const near = pending.slice(from, from + 60).filter((one) => apart(one, gap) < 2 * cover.radius)
    const spot = bestSpot(cover, gap, near, margin, inner)
    if (spot === null) {
      hopeless.push(gap)
      from += 1
      continue
    }
    const id = cover.add(spot[0], spot[1])
    const look: Visit = (x, y, lies, edge) => {
      if (cover.fails(x, y, lies, edge)) pending.push({ x, y, lies, edge })
      return false
    }
    cover.vertices(id, () => true, look)
    // A corner that one insertion sees in part may stay missed from another side: it is asked again in the next round.
    if (cover.fails(gap.x, gap.y, gap.lies, gap.edge) && stuck(cover, gap)) {
      hopeless.push(gap)
      from += 1
    }
  }
  return hopeless.filter((one) => cover.fails(one.x, one.y, one.lies, one.edge))
}

/** More insertions than this close to one missed place do not help it. */
const CROWD = 40

function stuck(cover: Cover, gap: Gap): boolean {
  return cover.around(gap.x, gap.y, cover.radius).length > CROWD
}

function apart(one: Gap, other: Gap): number {
  return span(one.x - other.x, one.y - other.y)
}

/** Where the next insertion goes: keeps most margin (up to the one wanted), then reaches most missed places. */
export function bestSpot(
  cover: Cover,
  gap: Gap,
  near: readonly Gap[],
  margin: number,
  inner: Ground,
): Point | null {
  const { ground, radius } = cover
  const open = choose(cover, gap, near, margin, openSpots(gap, radius, inner))
  if (open !== null && open.clear >= margin - 1e-3) return open.at
  const narrow = choose(cover, gap, near, margin, narrowSpots(ground, gap, radius))
  if (open === null || narrow === null) return (open ?? narrow)?.at ?? null
  return narrow.clear > open.clear ? narrow.at : open.at
}

function choose(
  cover: Cover,
  gap: Gap,
  near: readonly Gap[],
  margin: number,
  spots: readonly Point[],
): { readonly at: Point; readonly clear: number } | null {
  const { ground, radius } = cover
  let at: Point | null = null
  let bestClear = -1
  let bestCount = -1
  let bestAway = -1
  for (const [x, y] of spots) {
    const away = span(x - gap.x, y - gap.y)
    if (away > radius * 0.999) continue
    const free = ground.clearance(x, y, Math.max(margin, 1))
    const clear = Math.min(free, margin)
    if (free <= 1e-3 || clear < bestClear - 1e-3 || !ground.holds(x, y)) continue
    const edgesNear = ground.near(x, y, radius)
    if (ground.sight(x, y, edgesNear, gap.x, gap.y) !== CLEAR || !helps(cover, gap, x, y)) continue
    let count = 0
    for (const one of near)
      if (
        span(one.x - x, one.y - y) < radius * 0.999 &&
        ground.sight(x, y, edgesNear, one.x, one.y) === CLEAR
      )
        count += 1
    if (clear > bestClear + 1e-3 || count > bestCount || (count === bestCount && away > bestAway + 1e-9)) {
      at = [x, y]
      bestClear = Math.max(clear, bestClear)
      bestCount = count
      bestAway = away
    }
  }
  return at === null ? null : { at, clear: bestClear }
}

/** A reflex corner is reached from two sides: the spot must open a direction that is still missing. */
function helps(cover: Cover, gap: Gap, x: number, y: number): boolean {
  if (gap.lies !== 'corner' || cover.ground.reflex[gap.edge] === 0) return true
  return !cover.around(gap.x, gap.y, cover.radius).some((id) => {
    const [ox, oy] = cover.at(id)
    return span(ox - x, oy - y) < 1
  })
}

const TURNS = 16
const SHARES = [0.97, 0.75, 0.45, 0.15]
const STEPS = [0.97, 0.7, 0.4, 0.2, 0.1, 0.05, 0.02, 0.005]

/** The nearest places that keep the margin, then places all around. */
function openSpots(gap: Gap, radius: number, inner: Ground): Point[] {
  const found: Point[] = inner.near(gap.x, gap.y, radius).map((e) =>
    nearestOnSegment(
      [gap.x, gap.y],
      [
        [inner.x(e), inner.y(e)],
        [inner.bx[e] as number, inner.by[e] as number],
      ],
    ),
  )
  for (const share of SHARES)
    for (let turn = 0; turn < TURNS; turn += 1) {
      const angle = (2 * Math.PI * turn) / TURNS
      found.push([gap.x + radius * share * Math.cos(angle), gap.y + radius * share * Math.sin(angle)])
    }
  return found
}

/** Narrow concrete: the middle of the width, along each edge nearby. */
function narrowSpots(ground: Ground, gap: Gap, radius: number): Point[] {
  const found: Point[] = []
  for (const e of ground.near(gap.x, gap.y, radius)) {
    const length = span((ground.bx[e] as number) - ground.x(e), (ground.by[e] as number) - ground.y(e))
    const ux = ((ground.bx[e] as number) - ground.x(e)) / length
    const uy = ((ground.by[e] as number) - ground.y(e)) / length
    const foot = (gap.x - ground.x(e)) * ux + (gap.y - ground.y(e)) * uy
    for (const step of [...STEPS, ...STEPS.map((one) => -one)]) {
      const along = foot + step * radius
      if (along < 0 || along > length) continue
      const [x, y] = [ground.x(e) + ux * along, ground.y(e) + uy * along]
      const width = widthAt(ground, x, y, -uy, ux, e, radius)
      found.push([x - (uy * width) / 2, y + (ux * width) / 2])
    }
  }
  return found
}

/** Free width from a point on an edge square to it into the concrete, at most `most`. */
function widthAt(
  ground: Ground,
  x: number,
  y: number,
  nx: number,
  ny: number,
  own: number,
  most: number,
): number {
  let width = most
  for (const e of ground.near(x, y, most)) {
    if (e === own) continue
    const [ax, ay] = [ground.x(e) - x, ground.y(e) - y]
    const [bx, by] = [(ground.bx[e] as number) - x, (ground.by[e] as number) - y]
    const [sideA, sideB] = [nx * ay - ny * ax, nx * by - ny * bx]
    if (sideA > 0 === sideB > 0) continue
    const share = sideA / (sideA - sideB)
    const hit = nx * (ax + share * (bx - ax)) + ny * (ay + share * (by - ay))
    if (hit > 1e-6 && hit < width) width = hit
  }
  return width
}
