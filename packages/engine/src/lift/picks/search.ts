import { distance, type Point } from '../../panel/point.ts'
import type { Piece } from '../../panel/region.ts'
import { type Descended, Descent } from './descent.ts'
import { exchange, OUT, scoreOf } from './exchange.ts'
import type { Sharing } from './forces.ts'
import type { Influence } from './influence.ts'
import { edgePairLayout, type Layout, mirroredLayout, pairLayout } from './layout.ts'
import type { Limits, Side } from './limits.ts'
import { pairSets } from './pairs.ts'
import { edgePlaces, facePlaces, gridPlace, gridPlaces, type Place } from './places.ts'
import { ITSELF, type Mirror } from './symmetry.ts'
import { Table } from './table.ts'

/** How much is tried. */
export interface Effort {
  /** Places of the first table, about. */
  readonly places: number
  /** Seeded random starts beside the given ones. */
  readonly random: number
  /** Sets that are moved on from, `firstRounds` each; the better half goes on for as many again, and so on. */
  readonly descents: number
  readonly firstRounds: number
  /** How many are moved on to the end, in at most so many rounds. */
  readonly finished: number
  readonly rounds: number
}

export const USUAL: Effort = {
  places: 60,
  random: 12,
  descents: 4,
  firstRounds: 4,
  finished: 5,
  rounds: 16,
}

export interface SearchInput {
  readonly influence: Influence
  readonly piece: Piece
  readonly limits: Limits
  readonly centre: Point
  readonly count: number
  readonly sharing: Sharing
  /** Direction of rows, radians. */
  readonly along: number
  readonly mirrors: readonly Mirror[]
  readonly grid: Point | null
  /** Sets to start from too. */
  readonly starts: readonly (readonly Point[])[]
  readonly seed: number
  readonly effort: Effort
}

export interface SearchFound {
  readonly places: readonly Point[]
  /** Peak as searched, MPa. */
  readonly peak: number
  /** Places of the table, sets tried out, rounds of moves: for the working. */
  readonly table: number
  readonly rounds: number
}

/** A search whose sets have been moved on from for a few rounds. */
export interface Begun {
  /** Least peak so far, MPa; `OUT` or above where no set holds the panel within the limits. */
  readonly best: number
  /** The best places found, best first; empty where none hold the panel within the limits. */
  readonly finish: () => SearchFound[]
}

export function beginSearch(input: SearchInput): Begun {
  const { count, centre, limits, sharing, effort, grid } = input
  if (count === 2) return ended(searchPairs(input))
  const places = placesOf(input)
  if (places.length < count) return ended([])
  const table = new Table(input.influence, input.influence.responses(places.map(({ at }) => at)))
  const sets = exchange({
    table,
    count,
    mirrors: input.mirrors,
    centre,
    spacing: limits.spacing,
    sharing,
    starts: input.starts,
    seed: input.seed,
    random: effort.random,
  })
    .filter(({ score }) => score < OUT)
    .slice(0, effort.descents)
    .map(({ set }) => set.map((i) => places[i]!))
  const given =
    grid === null && limits.kind === 'face'
      ? input.starts.filter(
          (start) => start.length === count && start.every((at) => limits.fits(at)) && limits.apart(start),
        )
      : []
  const all = [...sets, ...given.map((start) => start.map((at): Place => ({ at })))]
  if (grid !== null)
    return ended(
      finish(
        places.length,
        all.map((set) => stepOnGrid(input, set, grid)),
      ),
    )
  const left = betterOf(
    all.flatMap((set) => descentFrom(input, set) ?? []),
    effort,
  )
  return {
    best: left[0]?.found.peak ?? OUT,
    finish: () =>
      finish(
        places.length,
        left.map((descent) => descent.run(effort.rounds)),
      ),
  }
}

function ended(found: SearchFound[]): Begun {
  return { best: found[0]?.peak ?? OUT, finish: () => found }
}

/** All are moved a few rounds, the better half of them a few more, until so few are left as are finished; of those on their way to the same places one is kept. */
function betterOf(descents: readonly Descent[], { firstRounds, finished }: Effort): Descent[] {
  let left = [...descents]
  for (let rounds = firstRounds; ; rounds += firstRounds) {
    for (const descent of left) descent.run(rounds)
    left = different(left)
    if (left.length <= finished) return left
    left = left.slice(0, Math.max(finished, Math.ceil(left.length / 2)))
  }
}

/** Share of its spread by which a set may be off a better one that is on its way to the same places. */
const ALIKE = 0.03

/** Best first; those on their way to the same places as one before them left out. */
function different(descents: readonly Descent[]): Descent[] {
  const kept: Descent[] = []
  for (const descent of [...descents].sort((p, q) => p.found.peak - q.found.peak)) {
    const { places } = descent.found
    const near = ALIKE * spreadOf(places)
    const same = kept.some(({ found }) =>
      places.every((at) => found.places.some((place) => distance(at, place) < near)),
    )
    if (!same) kept.push(descent)
  }
  return kept
}

function placesOf(input: SearchInput): Place[] {
  const { piece, limits, centre, along, mirrors, effort, grid } = input
  const asked = { piece, limits, centre, along, mirrors, wanted: effort.places }
  if (grid !== null) return gridPlaces(asked, grid)
  return limits.kind === 'face' ? facePlaces(asked) : edgePlaces(asked)
}

function finish(table: number, found: readonly Descended[]): SearchFound[] {
  return found
    .filter(({ peak }) => peak < OUT)
    .map(({ places, peak, rounds }) => ({ places, peak, rounds, table }))
    .sort((p, q) => p.peak - q.peak)
}

/** Null where equal legs cannot be brought under the hook within the limits. */
function descentFrom(input: SearchInput, set: readonly Place[]): Descent | null {
  const { influence, limits, sharing, centre, mirrors } = input
  const sides = set.flatMap(({ side }) => (side === undefined ? [] : [side]))
  const middle = middleOf(set.map(({ at }) => at))
  // Equal legs: the middle of the picks is brought under the hook before anything else.
  const shift =
    sharing === 'equalised' && limits.kind === 'face'
      ? ([centre[0] - middle[0], centre[1] - middle[1]] as const)
      : ([0, 0] as const)
  const places = set.map(({ at }): Point => [at[0] + shift[0], at[1] + shift[1]])
  if (limits.kind === 'face' && !places.every((at) => limits.fits(at))) return null
  const layout: Layout = mirroredLayout({
    places,
    mirrors,
    centre,
    ...(sides.length === set.length ? { sides } : {}),
  })
  const reach = Math.max(20, spreadOf(places) / 12)
  return new Descent({ influence, layout, limits, sharing, centre, reach })
}

function searchPairs(input: SearchInput): SearchFound[] {
  const { influence, centre, limits, sharing, effort } = input
  const { places, sets } = pairSets(input)
  const found = sets.slice(0, effort.descents).map((pair) => {
    const [first, second] = [places[pair[0]]!, places[pair[1]]!]
    if (input.grid !== null) {
      const table = new Table(influence, influence.responses([first.at, second.at]))
      return { places: [first.at, second.at], peak: pairScore(table, input), rounds: 0 }
    }
    const layout =
      first.side === undefined || second.side === undefined
        ? pairLayout(centre, first.at, second.at)
        : edgePairLayout(centre, [first.at, second.at], [first.side, second.side] as [Side, Side])
    const reach = Math.max(20, distance(first.at, second.at) / 20)
    return new Descent({ influence, layout, limits, sharing, centre, reach }).run(effort.rounds)
  })
  return finish(places.length, found)
}

function pairScore(table: Table, { sharing, centre }: SearchInput): number {
  return scoreOf(table, [0, 1], { sharing, centre }, Number.POSITIVE_INFINITY)
}

/** Moves one insert, with its mirror images, to the next place of the grid as long as that lowers the peak. */
function stepOnGrid(input: SearchInput, set: readonly Place[], pitch: Point): Descended {
  const { influence, limits, centre, mirrors, sharing } = input
  let places = set
  const scored = (tried: readonly Place[]): number => {
    const table = new Table(influence, influence.responses(tried.map(({ at }) => at)))
    return scoreOf(
      table,
      tried.map((_, i) => i),
      { sharing, centre },
      Number.POSITIVE_INFINITY,
    )
  }
  let peak = scored(places)
  for (let round = 0; round < input.effort.rounds; round += 1) {
    let better = false
    const layout = mirroredLayout({ places: places.map(({ at }) => at), mirrors, centre })
    for (let k = 0; k < layout.params.length; k += 1) {
      for (const by of [pitch[0], -pitch[0], pitch[1], -pitch[1]]) {
        const there = layout.place(layout.params.map((_, j) => (j === k ? by : 0)))
        const tried = there.map((at) => gridPlace(limits, at, pitch))
        if (tried.some((place) => place === null)) continue
        const next = tried as Place[]
        if (!limits.apart(next.map(({ at }) => at))) continue
        const found = scored(next)
        if (found < peak - 1e-9) {
          ;[places, peak, better] = [next, found, true]
          break
        }
      }
      if (better) break
    }
    if (!better) break
  }
  return { places: places.map(({ at }) => at), peak, rounds: 0 }
}

export function middleOf(places: readonly Point[]): Point {
  return [
    places.reduce((sum, [x]) => sum + x, 0) / places.length,
    places.reduce((sum, [, y]) => sum + y, 0) / places.length,
  ]
}

function spreadOf(places: readonly Point[]): number {
  const middle = middleOf(places)
  return places.reduce((most, at) => Math.max(most, distance(at, middle)), 0)
}

export const NO_MIRROR: readonly Mirror[] = [ITSELF]
