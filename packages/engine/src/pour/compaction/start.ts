import { distance, type Point } from '../../panel/point.ts'
import { nearestOnSegment } from '../../panel/polygon.ts'
import { offset, type Region } from '../../panel/region.ts'
import type { Ground } from './ground.ts'
import { frameOf, triangularRows } from './rows.ts'
import { DRIVE, siteAt } from './settle.ts'
import { type Site, Spread } from './spread.ts'
import type { Terrain } from './terrain.ts'

/** What one radius of excess costs in insertions, about: tells which start is best. */
const EXCESS_COSTS = 10
const FIRST_ROUNDS = 5
/** With more insertions than this how the first row begins matters little: it is tried one way. */
const MANY = 600

/** Rows along and across, begun both ways, each spread a little: the one that promises fewest insertions first. */
export function rowStarts(terrain: Terrain, radius: number, kept: number): (readonly Site[])[] {
  const { inner } = terrain
  const { region } = terrain.ground
  const found: { readonly sites: readonly Site[]; readonly cost: number }[] = []
  for (const turned of [false, true])
    for (const shifted of [false, true]) {
      const rows = triangularRows(frameOf(region, turned), radius, kept, shifted)
      if (shifted && rows.length > MANY) continue
      const spread = new Spread(
        terrain,
        startPoints(rows, inner, radius).map((point) => siteAt(terrain, point)),
      )
      for (let round = 0; round < FIRST_ROUNDS; round += 1) spread.round(DRIVE.from, DRIVE.share, DRIVE.swing)
      found.push({ sites: spread.sites(), cost: spread.count + EXCESS_COSTS * spread.excess })
    }
  return found.sort((a, b) => a.cost - b.cost).map(({ sites }) => sites)
}

/** The concrete less a strip along every edge; a narrower strip where nothing would be left. */
export function shrunk(region: Region, strip: number): Region {
  for (let by = strip; by > 0.2; by /= 2) {
    const inner = offset(region, -(by + 0.002))
    if (inner.length > 0) return inner
  }
  return region
}

/** Row points that reach concrete, those outside the inner region moved to its nearest edge. */
function startPoints(rows: readonly Point[], inner: Ground, radius: number): Point[] {
  const points: Point[] = []
  const taken = new Set<string>()
  for (const point of rows) {
    const moved = inner.holds(point[0], point[1]) ? point : nearestInside(point, inner, radius)
    if (moved === null) continue
    const key = `${Math.round(moved[0] * 100)} ${Math.round(moved[1] * 100)}`
    if (taken.has(key)) continue
    taken.add(key)
    points.push(moved)
  }
  return points
}

export function nearestInside(point: Point, inner: Ground, radius: number): Point | null {
  let best: Point | null = null
  let least = radius
  for (const e of inner.near(point[0], point[1], radius)) {
    const foot = nearestOnSegment(point, [
      [inner.x(e), inner.y(e)],
      [inner.bx[e] as number, inner.by[e] as number],
    ])
    const away = distance(foot, point)
    if (away < least) {
      least = away
      best = foot
    }
  }
  return best
}
