import type { Point } from '../../panel/point.ts'
import { distanceToSegment } from '../../panel/polygon.ts'
import type { Corner } from '../steel-plan.ts'
import { movedSolids, type Solid, type Space, solidsOf } from './space.ts'

export interface SpreadInput<Level> {
  readonly space: Space
  readonly diameter: number
  /** Inside diameter of their bends, mm; null for straight bars or where not known. */
  readonly inside: number | null
  /** Bars stand between these places along their line, mm. */
  readonly low: number
  readonly high: number
  /** Largest distance between them, mm. */
  readonly spacing: number
  /** Levels to try, best first. */
  readonly levels: readonly Level[]
  /** Centreline of the bar at a place; along the line it changes by that place alone. */
  readonly bar: (at: number, level: Level) => readonly Corner[]
  /** Whether a bar there stays in the concrete less its cover. */
  readonly fits: (at: number, level: Level) => boolean
  /** What the bars keep clear of where they can, seen from above. */
  readonly inserts: readonly KeptClear[]
}

/** A place in plan and how far bars keep from it, mm. */
export interface KeptClear {
  readonly at: Point
  readonly clear: number
}

export interface Spread<Level> {
  readonly level: Level
  readonly at: readonly number[]
  /** Bars that no place near the wanted one is free for; they stand there all the same. */
  readonly clashes: number
  /** Bars that stand beside another neither in contact nor clear, for want of a better place. */
  readonly crowded: number
  /** Bars that the spacing asks for and the concrete has no room for. */
  readonly leftOut: number
  /** Largest distance between neighbours where none is left out between them, mm; null for fewer than two. */
  readonly widest: number | null
}

/** A bar moves along its line by at most this to lie beside another, mm. Common practice, no source. */
export const ASIDE = 60

/**
 * Bars from one end of a line to the other, as even as they can be at no more than the spacing. Each stands where the rest of the line would be
 * even, or as near to that as other bars and inserts leave room and the spacing allows. All lie at the first level at which every one has
 * room; where none has, at the level with the fewest clashes. Bars that do not fit the concrete are left out.
 */
export function spreadEven<Level>(input: SpreadInput<Level>): Spread<Level> | null {
  const { low, high, levels } = input
  const [first] = levels
  if (first === undefined) return null
  // A side too short for its corners has no place at all: that is told as one bar left out.
  if (high < low) return { level: first, at: [], clashes: 0, leftOut: 1, crowded: 0, widest: null }
  let best: Spread<Level> | null = null
  for (const level of levels) {
    best = atLevel(input, level, best) ?? best
    if (best?.clashes === 0 && best.crowded === 0) break
  }
  return best
}

/** Fewer clashes before fewer that are crowded. */
function isBetter(one: Faults, other: Faults): boolean {
  return one.clashes < other.clashes || (one.clashes === other.clashes && one.crowded < other.crowded)
}

type Faults = Pick<Spread<unknown>, 'clashes' | 'crowded'>

/** Null as soon as it cannot be better than the best so far. */
function atLevel<Level>(
  input: SpreadInput<Level>,
  level: Level,
  best: Spread<Level> | null,
): Spread<Level> | null {
  const { low, high, spacing, fits, diameter } = input
  const first = firstOf(input, level)
  const at: number[] = []
  let [clashes, crowded, leftOut] = [0, 0, 0]
  let widest: number | null = null
  let before: number | null = null
  let wanted = low
  for (;;) {
    const limit = before === null ? high : Math.min(high, before + spacing)
    const least = before === null ? low : before + diameter
    let place = wanted
    if (!fits(wanted, level)) leftOut += 1
    else {
      const free = nearestFree(input, first, wanted, least, limit)
      if (free === null) clashes += 1
      else if (!free.isClear) crowded += 1
      if (best !== null && !isBetter({ clashes, crowded }, best)) return null
      place = free?.at ?? wanted
      // Only a bar that stands next to this one tells a distance: one left out between has been told.
      const last = at.at(-1)
      if (last !== undefined && last === before) widest = Math.max(widest ?? 0, place - last)
      at.push(place)
    }
    before = place
    if (wanted >= high - 1e-6) break
    const gaps = Math.max(1, Math.ceil((high - place) / spacing - 1e-9))
    // The line is used up: the last bar stands aside of its end.
    if (high - place < diameter) break
    wanted = gaps === 1 ? high : place + (high - place) / gaps
  }
  return { level, at, clashes, crowded, leftOut, widest }
}

/**
 * The free place nearest to the wanted one, mm, at which the bar is clear of those beside it or in contact with them; where there is none the
 * nearest that is only free; null where none is near.
 */
function nearestFree<Level>(
  { space, bar, diameter, fits, inserts, low: start }: SpreadInput<Level>,
  { solids, way, level }: FirstOfLine<Level>,
  wanted: number,
  low: number,
  high: number,
): { readonly at: number; readonly isClear: boolean } | null {
  const isCrowded = space.crowding([...movedSolids(solids, way, wanted - start)], way, ASIDE)
  const isFree = (near: number): boolean =>
    near >= low - 1e-9 &&
    near <= high + 1e-9 &&
    fits(near, level) &&
    space.clash(movedSolids(solids, way, near - start)) === null &&
    inserts.every((insert) => isClear(bar(near, level), diameter, insert))
  // Whether a place is crowded is known at once: those that are not come first.
  const clear = MOVES.find((move) => !isCrowded(move) && isFree(wanted + move))
  if (clear !== undefined) return { at: wanted + clear, isClear: true }
  const free = MOVES.find((move) => isCrowded(move) && isFree(wanted + move))
  return free === undefined ? null : { at: wanted + free, isClear: false }
}

/** Moves to try, the least first, mm. */
const MOVES: readonly number[] = Array.from({ length: 2 * ASIDE + 1 }, (_, i) =>
  i % 2 === 1 ? -(i + 1) / 2 : i / 2,
)

/** The bar at the beginning of a line: the others differ from it by how far along they stand alone. */
interface FirstOfLine<Level> {
  readonly level: Level
  readonly solids: readonly Solid[]
  /** Unit vector along the line. */
  readonly way: Corner
}

function firstOf<Level>(
  { bar, low, diameter, inside }: SpreadInput<Level>,
  level: Level,
): FirstOfLine<Level> {
  const centreline = bar(low, level)
  const [[from], [to]] = [centreline, bar(low + 1, level)] as [[Corner], [Corner]]
  return {
    level,
    solids: solidsOf({ id: '', centreline, diameter, inside }),
    way: [to[0] - from[0], to[1] - from[1], to[2] - from[2]],
  }
}

function isClear(centreline: readonly Corner[], diameter: number, { at, clear }: KeptClear): boolean {
  return centreline.slice(1).every(([x, y], i) => {
    const [u, v] = centreline[i] as Corner
    return (
      distanceToSegment(at, [
        [u, v],
        [x, y],
      ]) >=
      clear + diameter / 2 - 1e-6
    )
  })
}

/** Largest distance between neighbours, mm; null for fewer than two. */
export function widest(places: readonly number[]): number | null {
  if (places.length < 2) return null
  const sorted = [...places].sort((a, b) => a - b)
  return sorted.slice(1).reduce((most, place, i) => Math.max(most, place - (sorted[i] as number)), 0)
}
