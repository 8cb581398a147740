import { distance, type Point } from '../../panel/point.ts'
import { forcesOf, type Sharing } from './forces.ts'
import { type Mirror, mapped, Places } from './symmetry.ts'
import type { Table } from './table.ts'

export interface ExchangeInput {
  readonly table: Table
  readonly count: number
  readonly mirrors: readonly Mirror[]
  readonly centre: Point
  readonly spacing: number
  readonly sharing: Sharing
  /** Where to start from, beside seeded random starts. */
  readonly starts: readonly (readonly Point[])[]
  readonly seed: number
  /** Random starts for each way of making the count of mirrored groups. */
  readonly random: number
}

/** A set of places of the table, with its peak as searched, MPa. */
export interface FoundSet {
  readonly set: readonly number[]
  readonly score: number
}

/** Each place carries at least this share of an equal one. */
export const LEAST_SHARE = 0.02

/**
 * Best sets of places by exchange: from each start, each member (with its mirror images) is tried at every other place until none is
 * better. Best first, each local best once. Same seed, same answer.
 */
export function exchange(input: ExchangeInput): FoundSet[] {
  const { table, count, spacing } = input
  const places = table.responses.map(({ at }) => at)
  const options = optionsOf(places, input)
  const apart = apartOf(places, spacing)
  const fits = (chosen: readonly number[], without: number, option: number): boolean =>
    chosen.every((other, slot) => slot === without || apart.options(options[other]!, options[option]!))
  const random = mulberry(input.seed)
  const best = new Map<string, FoundSet>()
  for (const sizes of patternsOf(count, new Set(options.map(({ length }) => length)))) {
    const tries: (number[] | null)[] = [
      ...input.starts.map((start) => nearestOptions(start, { sizes, options, places, fits })),
      ...Array.from({ length: input.random }, () => randomOptions({ random, sizes, options, fits })),
    ]
    for (const chosen of tries) {
      if (chosen === null) continue
      const found = improve(chosen, { input, options, fits })
      best.set([...found.set].sort((p, q) => p - q).join(), found)
    }
  }
  return [...best.values()].sort((p, q) => p.score - q.score)
}

/** Peak of a set; far above any stress where it does not hold the panel with every load downward. */
export function scoreOf(table: Table, set: readonly number[], input: ScoreInput, bound: number): number {
  const forces = forcesOf(table, set, input.sharing)
  if (forces === null) return OUT * 10
  const equal = table.influence.work[0] / set.length
  let least = Number.POSITIVE_INFINITY
  for (const force of forces) least = Math.min(least, force / equal)
  if (!(least >= LEAST_SHARE - 1e-9)) return OUT * (1 + Math.min(5, LEAST_SHARE - least))
  const off = input.sharing === 'equalised' ? offCentre(table, set, input.centre) : 0
  return table.peak(set, forces, bound / (1 + off)) * (1 + off)
}

export type ScoreInput = Pick<ExchangeInput, 'sharing' | 'centre'>

/** Score above which a set is no answer. */
export const OUT = 1e6

/** How far the middle of a set stands off the centre of gravity, beside its mean reach from it. */
function offCentre(table: Table, set: readonly number[], [cx, cy]: Point): number {
  let [x, y, reach] = [0, 0, 0]
  for (const i of set) {
    const [px, py] = table.responses[i]!.at
    x += (px - cx) / set.length
    y += (py - cy) / set.length
    reach += Math.hypot(px - cx, py - cy) / set.length
  }
  return (4 * Math.hypot(x, y)) / Math.max(1, reach)
}

type Options = readonly (readonly number[])[]

/** Places that stand or move together: each place with its mirror images; those too near each other to stand together are left out. */
function optionsOf(
  places: readonly Point[],
  { mirrors, centre, spacing }: Pick<ExchangeInput, 'mirrors' | 'centre' | 'spacing'>,
): number[][] {
  if (mirrors.length === 1) return places.map((_, i) => [i])
  const seen = new Places(places)
  const options: number[][] = []
  for (const [i, at] of places.entries()) {
    const images = mirrors.map((mirror) => seen.near(mapped(mirror, centre, at)))
    const members = [...new Set(images)].sort((p, q) => p - q)
    if (members[0] !== i) continue
    const clear = members.every((p, k) =>
      members.slice(0, k).every((q) => distance(places[p]!, places[q]!) >= spacing),
    )
    if (clear) options.push(members)
  }
  return options
}

/** Ways to make a count of group sizes, largest groups first; at most two that stand alone. */
function patternsOf(count: number, sizes: ReadonlySet<number>): number[][] {
  if (sizes.size === 1 && sizes.has(1)) return [new Array<number>(count).fill(1)]
  const found: number[][] = []
  const extend = (rest: number, most: number, sofar: number[]): void => {
    if (rest === 0) {
      if (sofar.filter((size) => size === 1).length <= 2) found.push(sofar)
      return
    }
    for (const size of [4, 2, 1]) {
      if (size <= Math.min(rest, most) && sizes.has(size)) extend(rest - size, size, [...sofar, size])
    }
  }
  extend(count, 4, [])
  return found
}

function apartOf(
  places: readonly Point[],
  spacing: number,
): { options: (p: readonly number[], q: readonly number[]) => boolean } {
  const n = places.length
  const near = new Uint8Array(n * n)
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j < n; j += 1) {
      if (i === j || distance(places[i]!, places[j]!) < spacing - 1e-6) near[i * n + j] = 1
    }
  }
  return { options: (p, q) => p.every((i) => q.every((j) => near[i * n + j] === 0)) }
}

interface Choosing {
  readonly sizes: readonly number[]
  readonly options: Options
  readonly fits: (chosen: readonly number[], without: number, option: number) => boolean
}

/** The options that lie nearest to a start, one after the other. */
function nearestOptions(
  start: readonly Point[],
  { sizes, options, places, fits }: Choosing & { readonly places: readonly Point[] },
): number[] | null {
  const left = new Set(start)
  const chosen: number[] = []
  for (const size of sizes) {
    let [best, least] = [-1, Number.POSITIVE_INFINITY]
    for (const [o, members] of options.entries()) {
      if (members.length !== size || !fits(chosen, -1, o)) continue
      const off = members.reduce(
        (sum, i) =>
          sum +
          [...left].reduce((near, at) => Math.min(near, distance(at, places[i]!)), Number.POSITIVE_INFINITY),
        0,
      )
      if (off < least) [best, least] = [o, off]
    }
    if (best < 0) return null
    chosen.push(best)
    for (const i of options[best]!) {
      const nearest = [...left].sort((p, q) => distance(p, places[i]!) - distance(q, places[i]!))[0]
      if (nearest !== undefined) left.delete(nearest)
    }
  }
  return chosen
}

function randomOptions({
  random,
  sizes,
  options,
  fits,
}: Choosing & { readonly random: () => number }): number[] | null {
  for (let attempt = 0; attempt < 20; attempt += 1) {
    const chosen: number[] = []
    for (const size of sizes) {
      const free = options.flatMap((members, o) =>
        members.length === size && fits(chosen, -1, o) ? [o] : [],
      )
      if (free.length === 0) break
      chosen.push(free[Math.floor(random() * free.length)]!)
    }
    if (chosen.length === sizes.length) return chosen
  }
  return null
}

function improve(
  start: readonly number[],
  {
    input,
    options,
    fits,
  }: { readonly input: ExchangeInput; readonly options: Options; readonly fits: Choosing['fits'] },
): FoundSet {
  const { table } = input
  const membersOf = (chosen: readonly number[]): number[] => chosen.flatMap((o) => options[o]!)
  const chosen = [...start]
  let score = scoreOf(table, membersOf(chosen), input, Number.POSITIVE_INFINITY)
  let since = 0
  for (let slot = 0; since < chosen.length; slot = (slot + 1) % chosen.length) {
    const size = options[chosen[slot]!]!.length
    const before = chosen[slot]!
    let best = before
    for (const [o, members] of options.entries()) {
      if (o === before || members.length !== size || !fits(chosen, slot, o)) continue
      chosen[slot] = o
      const found = scoreOf(table, membersOf(chosen), input, score)
      if (found < score - 1e-9) [score, best] = [found, o]
    }
    chosen[slot] = best
    since = best === before ? since + 1 : 0
  }
  return { set: membersOf(chosen), score }
}

/** Numbers from 0 to below 1, the same for the same seed. Mulberry32: T. Ettinger (2017), public domain (from memory). */
function mulberry(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296
  }
}
