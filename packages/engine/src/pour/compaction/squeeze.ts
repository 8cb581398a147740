import { span } from './ground.ts'
import { lightest, loads, withoutLightest } from './loads.ts'
import { type Effort, settle } from './settle.ts'
import type { Site, Window } from './spread.ts'
import type { Terrain } from './terrain.ts'

export interface SqueezeInput {
  readonly terrain: Terrain
  /** Where to begin: need not cover. */
  readonly sites: readonly Site[]
  /** Insertions times rounds that may be spent; the first cover is found whatever it takes. */
  readonly work: number
  /** Repeatable, 0 to 1. */
  readonly random: () => number
  /** Asked between trials; true ends the search. */
  readonly stop?: () => boolean
}

/** Share of the insertions that the first trial takes out at once; halved where that was too many. */
const AT_ONCE = 0.03
/** Trials around one insertion without a gain before the whole panel is tried again. */
const STALL = 24
/** With fewer than this at once a trial moves only what stands around one insertion. */
const FEW = 4
/** How far around it insertions move, radii. */
const AROUND = 5
/** An insertion whose trial failed waits: counts as reaching so many places more. */
const WAITS = 3

/**
 * Takes insertions out where they are needed least and lets the others spread, adding one where they cannot, again and again: first all over
 * the panel, then around one insertion at a time. Answers the smallest proven cover that came up; null where none did.
 */
export function squeeze(input: SqueezeInput): readonly Site[] | null {
  const effort: Effort = { left: input.work }
  const first = settle(input.terrain, {
    sites: input.sites,
    most: Number.POSITIVE_INFINITY,
    window: null,
    effort,
  })
  if (first === null) return null
  let best = squeezeAtOnce(input, first, effort, AT_ONCE, FEW)
  while (!spent(input, effort)) {
    best = squeezeAround(input, best, effort)
    best = squeezeAtOnce(input, best, effort, 2.5 / best.length, 1)
  }
  return best
}

function spent({ stop }: SqueezeInput, effort: Effort): boolean {
  return effort.left <= 0 || (stop?.() ?? false)
}

/** Many insertions at a time, all over the panel. */
function squeezeAtOnce(
  input: SqueezeInput,
  first: readonly Site[],
  effort: Effort,
  from: number,
  few: number,
): readonly Site[] {
  let best = first
  let share = from
  while (!spent(input, effort)) {
    const count = Math.round(share * best.length)
    if (count < few) break
    const fewer = withoutLightest(input.terrain, best, count, input.random)
    const found = settle(input.terrain, { sites: fewer, most: best.length, window: null, effort })
    if (found === null || found.length >= best.length) share /= 2
    if (found !== null) best = found
  }
  return best
}

/** One insertion after the other, with what stands around it. An equal count is taken too: it moves slack to where it can be used. */
function squeezeAround(input: SqueezeInput, first: readonly Site[], effort: Effort): readonly Site[] {
  const { terrain, random } = input
  const reach = AROUND * terrain.radius
  let sites = first
  let load = loads(terrain, sites)
  let idle = 0
  while (idle < STALL && !spent(input, effort)) {
    idle += 1
    const out = lightest(load, random)
    const { x, y } = sites[out] as Site
    const { near, rest } = partsAround(sites, out, { x, y, reach }, reach + 2.2 * terrain.radius)
    const found = settle(input.terrain, {
      sites: near,
      most: near.length + 1,
      window: { x, y, reach },
      effort,
    })
    effort.left -= sites.length / 10
    if (found === null) {
      load[out] = (load[out] as number) + WAITS
      continue
    }
    // Those that stood still come first, in the order they were given; added ones come last.
    const moved = found.filter((_, i) => {
      const before = near[i]
      return before === undefined || span(before.x - x, before.y - y) <= reach
    })
    if (rest.length + moved.length < sites.length) idle = 0
    sites = [...rest, ...moved]
    load = loads(terrain, sites)
    effort.left -= 2 * sites.length
  }
  return sites
}

/** Insertions that a window has to know, and those that stay where they are: one that stands in its rim is both. */
function partsAround(
  sites: readonly Site[],
  out: number,
  window: Window,
  rim: number,
): { readonly near: Site[]; readonly rest: Site[] } {
  const near: Site[] = []
  const rest: Site[] = []
  sites.forEach((site, i) => {
    if (i === out) return
    const away = span(site.x - window.x, site.y - window.y)
    if (away <= rim) near.push(site)
    if (away > window.reach) rest.push(site)
  })
  return { near, rest }
}
