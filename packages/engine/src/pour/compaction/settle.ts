import type { Point } from '../../panel/point.ts'
import { Cover } from './cover.ts'
import { span } from './ground.ts'
import { bestSpot, repair } from './repair.ts'
import { type Missed, type Site, Spread, type Window } from './spread.ts'
import { nearestInside } from './start.ts'
import type { Terrain } from './terrain.ts'
import { removeSpare } from './thinning.ts'

/** Insertions times rounds that are left to be spent. */
export interface Effort {
  left: number
}

export interface SettleTask {
  readonly sites: readonly Site[]
  /** A cover with more insertions is none. */
  readonly most: number
  /** The part of the panel that may move; null for all of it. */
  readonly window: Window | null
  readonly effort: Effort
}

/** Rounds after which insertions that come no nearer to a cover get help. */
const PATIENCE = 12
const MOST_ROUNDS = 400
/** Excess that is left after these rounds, as a share of what was: above it help comes. */
const SLOW = 0.6
/** Share of the missed places that get an insertion the first time, and how much it grows by each time. */
const HELP = 0.2
const HELP_GROWS = 0.02
const MOST_TURNS = 40
/** Times that the proof may send it back for a missed place that the rounds did not see. */
const MOST_PROOFS = 5
/** What a proof costs in rounds, about. */
const PROOF_COSTS = 25

/** How `Spread` is driven: where a push begins, radii, the share of it that is followed, and of the last move. */
export const DRIVE = { from: 0.985, share: 0.25, swing: 0.8 } as const

/** Spreads until the cover is proven, with more insertions where there must be; null where that takes more than `most` of them or the effort is spent. */
export function settle(terrain: Terrain, task: SettleTask): readonly Site[] | null {
  const { most, window, effort } = task
  let { sites } = task
  let proofs = 0
  for (let turn = 0; turn < MOST_TURNS; turn += 1) {
    const spread = spreadOut(terrain, sites, window, effort)
    sites = spread.sites()
    if (spread.missed.length > 0) {
      if (effort.left < 0 && Number.isFinite(most)) return null
      const more = helpers(terrain, spread.missed, HELP + HELP_GROWS * turn)
      if (sites.length + more.length > most) return null
      sites = [...sites, ...more]
      continue
    }
    effort.left -= PROOF_COSTS * sites.length
    const cover = coverOf(terrain, sites)
    const gaps = cover.gaps().filter(({ x, y }) => isIn(window, terrain, x, y))
    if (gaps.length === 0) return sites
    proofs += 1
    if (proofs === MOST_PROOFS) return window === null ? mended(terrain, cover) : null
    for (const gap of gaps) terrain.addPost(gap.x, gap.y)
  }
  return window === null ? mended(terrain, coverOf(terrain, sites)) : null
}

/** Rounds until nothing is missed, or little comes of them. */
function spreadOut(terrain: Terrain, sites: readonly Site[], window: Window | null, effort: Effort): Spread {
  const spread = new Spread(terrain, sites, window)
  let last = Number.POSITIVE_INFINITY
  for (let rounds = 1; rounds <= MOST_ROUNDS; rounds += 1) {
    spread.round(DRIVE.from, DRIVE.share, DRIVE.swing)
    effort.left -= spread.weight
    if (spread.missed.length === 0) break
    if (rounds % PATIENCE > 0) continue
    if (spread.excess > SLOW * last) break
    last = spread.excess
  }
  return spread
}

function coverOf(terrain: Terrain, sites: readonly Site[]): Cover {
  const cover = new Cover(terrain.ground, terrain.radius)
  for (const { x, y } of sites) cover.add(x, y)
  return cover
}

/** Whether a place is reached only by insertions that the window knows. */
function isIn(window: Window | null, terrain: Terrain, x: number, y: number): boolean {
  return window === null || span(x - window.x, y - window.y) <= window.reach + 1.05 * terrain.radius
}

function mended(terrain: Terrain, cover: Cover): readonly Site[] | null {
  if (repair(cover, terrain.margin, terrain.inner).length > 0) return null
  removeSpare(cover)
  return cover.ids().map((id) => siteAt(terrain, cover.at(id)))
}

/** Nearer to a place that keeps the margin than this, radii, an insertion without it stands at a corner and stays there. */
const NARROW = 0.5

/** An insertion that keeps the margin, or where it does not, what it has of it; in narrow parts it may move, at corners not. */
export function siteAt({ ground, inner, margin, radius }: Terrain, [x, y]: Point): Site {
  const clear = ground.clearance(x, y, Math.max(1, margin))
  const wide = inner.clearance(x, y, NARROW * radius) < NARROW * radius
  return { x, y, keep: Math.min(margin, clear) - 1e-6, fixed: clear < margin - 1e-3 && wide }
}

/** Missed by more than this, radii, a place gets its insertion at once. */
const FAR_OFF = 0.4

/** New insertions for the worst of the missed places, well apart. */
function helpers(terrain: Terrain, missed: readonly Missed[], share: number): Site[] {
  const worst = [...missed].sort((a, b) => b.over - a.over)
  const chosen: Missed[] = []
  for (const place of worst)
    if (chosen.every((other) => span(other.x - place.x, other.y - place.y) > 2.5 * terrain.radius))
      chosen.push(place)
  const count = Math.max(1, Math.ceil(Math.min(1, share) * chosen.length))
  return chosen
    .filter(({ over }, i) => i < count || over > FAR_OFF)
    .map((place) => siteAt(terrain, spotFor(terrain, place)))
}

/** Where an insertion for a missed place goes: there, or the nearest place that keeps the margin, or what keeps most of it. */
function spotFor(terrain: Terrain, { x, y }: Missed): Point {
  const { inner } = terrain
  if (inner.holds(x, y)) return [x, y]
  const spot = nearestInside([x, y], inner, 0.97 * terrain.radius)
  if (spot !== null && terrain.sees(x, y, terrain.near(x, y), spot[0], spot[1])) return spot
  const gap = { x, y, lies: 'inside', edge: -1 } as const
  return bestSpot(new Cover(terrain.ground, terrain.radius), gap, [gap], terrain.margin, inner) ?? [x, y]
}
