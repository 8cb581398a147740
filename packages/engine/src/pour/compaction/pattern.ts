import type { Point } from '../../panel/point.ts'
import type { Region } from '../../panel/region.ts'
import { Cover } from './cover.ts'
import { Ground } from './ground.ts'
import { repair } from './repair.ts'
import { squeeze } from './squeeze.ts'
import { rowStarts, shrunk } from './start.ts'
import { Terrain } from './terrain.ts'
import { removeSpare } from './thinning.ts'

/** Above this many insertions nobody works the pattern: the radius does not belong to the panel. */
export const MOST_INSERTIONS = 40_000

export interface Pattern {
  readonly points: readonly Point[]
  /** Places that no insertion reaches; empty: proven that there are none. */
  readonly gaps: readonly Point[]
}

export interface PatternInput {
  readonly region: Region
  /** mm */
  readonly radius: number
  /** Wanted distance from faces, mm. */
  readonly margin: number
  /** A short search: some 1 to 4 % more insertions in a third of the time. */
  readonly quick?: boolean
}

/** Insertions that an unbounded plane of the region's size needs at least, edge left out. */
export function planeCount(area: number, radius: number): number {
  return area / (1.5 * Math.sqrt(3) * radius * radius)
}

/** Insertions times rounds that the search may spend: at least, for each insertion, and for each corner of openings up to a limit. */
const WORK = { least: 300_000, each: 100, corner: 10_500, corners: 2_600_000 } as const
/** Rounds that a short search may spend on each insertion of a small zone. */
const SMALL_WORK = 400
const QUICK_WORK = { least: 15_000, each: 60, corner: 0, corners: 0 } as const

/**
 * Insertions that reach every point of the concrete in a straight line: triangular rows along and across, moved into the concrete where they
 * fall out of it; the start that promises most is spread and squeezed until the work is spent. Falls back to mended rows.
 */
export function pattern({ region, radius, margin, quick = false }: PatternInput): Pattern {
  const ground = new Ground(region, radius)
  // Beyond this share of the radius an insertion at the margin reaches too little of an edge to be worth a row.
  const kept = margin <= 0.9 * radius ? margin : 0
  const inner = new Ground(shrunk(region, kept > 0 ? kept : radius / 2), radius)
  const terrain = new Terrain(ground, radius - SLACK, margin, inner)
  const [start = []] = rowStarts(terrain, radius, kept)
  const { least, each, corner, corners } = quick ? QUICK_WORK : WORK
  // A small zone has few places to try: it must not cost what a panel costs.
  const begun = quick ? Math.min(least, SMALL_WORK * start.length) : least
  const turning = ground.reflex.reduce((sum, one) => sum + one, 0)
  const work = Math.max(begun, each * start.length + Math.min(corners, corner * turning))
  const found = squeeze({ terrain, sites: start, work, random: randomFrom(1) })
  const cover = new Cover(ground, radius)
  for (const { x, y } of found ?? start) cover.add(x, y)
  const gaps = repair(cover, margin, inner).map(({ x, y }): Point => [x, y])
  if (gaps.length === 0) removeSpare(cover)
  return { points: cover.ids().map((id) => cover.at(id)), gaps }
}

/** The search works with a radius less by this, mm: what it finds then holds at the true one. */
const SLACK = 2e-5

/** Repeatable numbers from 0 to 1. */
export function randomFrom(seed: number): () => number {
  let state = seed * 2_654_435_769 + 1
  return () => {
    state ^= state << 13
    state ^= state >>> 17
    state ^= state << 5
    return (state >>> 0) / 4_294_967_296
  }
}
