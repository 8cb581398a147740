import type { Point } from '../../panel/point.ts'
import { distanceToSegment } from '../../panel/polygon.ts'
import type { Corner } from '../steel-plan.ts'
import { type Space, solidsOf } from './space.ts'

export interface SpreadInput<Level> {
  readonly space: Space
  readonly diameter: number
  /** Where along their line the bars should stand, mm. */
  readonly wanted: readonly number[]
  /** Bars stay between these places, mm. */
  readonly low: number
  readonly high: number
  /** Levels to try, best first. */
  readonly levels: readonly Level[]
  readonly bar: (at: number, level: Level) => readonly Corner[]
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
  /** Bars that no place near the wanted one is free for. */
  readonly clashes: number
}

/** A bar moves along its line by at most this to lie beside another, mm. Common practice, no source: the placing tolerance of spacing. */
export const ASIDE = 40

/**
 * Places a row of like bars: each at its wanted place or as near to it as other bars leave room, all at the first level at which every
 * one has room; where none has, the level with the fewest clashes, those bars at their wanted places.
 */
export function spread<Level>(input: SpreadInput<Level>): Spread<Level> | null {
  let best: Spread<Level> | null = null
  for (const level of input.levels) {
    const found = atLevel(input, level)
    if (best === null || found.clashes < best.clashes) best = found
    if (found.clashes === 0) break
  }
  return best
}

export interface EvenInput<Level> extends Omit<SpreadInput<Level>, 'wanted'> {
  readonly spacing: number
  /** Whether a bar there stays in the concrete less its cover. */
  readonly fits: (at: number, level: Level) => boolean
}

export interface EvenSpread<Level> extends Spread<Level> {
  /** Bars that the spacing asks for and the concrete has no room for. */
  readonly leftOut: number
}

/** Bars beyond the fewest that the spacing asks for, tried where moving one aside opens a gap too wide. */
const MORE = 2

/** Bars even along a line at no more than the spacing, moved aside where others lie; those that do not fit the concrete are left out. */
export function spreadEven<Level>(input: EvenInput<Level>): EvenSpread<Level> | null {
  const { low, high, spacing, fits, levels } = input
  const [first] = levels
  if (first === undefined) return null
  // A side too short for its corners has no place at all: that is told as one bar left out.
  if (high < low) return { level: first, at: [], clashes: 0, leftOut: 1 }
  let best: EvenSpread<Level> | null = null
  for (let more = 0; more <= MORE; more += 1) {
    const even = evenPlaces(low, high, spacing, more)
    const laid = spread({ ...input, wanted: even.filter((at) => fits(at, first)) })
    if (laid === null) return null
    const at = laid.at.filter((place) => fits(place, laid.level))
    const found = { ...laid, at, leftOut: even.length - at.length }
    best ??= found
    if ((widest(at) ?? 0) <= spacing + 1e-6) return found
  }
  return best
}

function atLevel<Level>(input: SpreadInput<Level>, level: Level): Spread<Level> {
  const { wanted, space, bar, diameter, low, high, inserts } = input
  let clashes = 0
  const free = (at: number) => {
    const centreline = bar(at, level)
    return (
      space.clash(solidsOf({ id: '', centreline, diameter })) === null &&
      inserts.every((insert) => isClear(centreline, diameter, insert))
    )
  }
  const at = wanted.map((place) => {
    for (let by = 0; by <= ASIDE; by += 1) {
      for (const near of by === 0 ? [place] : [place + by, place - by]) {
        if (near >= low - 1e-9 && near <= high + 1e-9 && free(near)) return near
      }
    }
    clashes += 1
    return place
  })
  return { level, at, clashes }
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

/** Places from `low` to `high` at even distances of at most `spacing`; `more` adds as many. One place in the middle where there is no length. */
export function evenPlaces(low: number, high: number, spacing: number, more = 0): number[] {
  if (high < low) return []
  const gaps = Math.ceil((high - low) / spacing - 1e-9) + more
  if (gaps < 1) return [(low + high) / 2]
  return Array.from({ length: gaps + 1 }, (_, i) => low + ((high - low) * i) / gaps)
}

/** Largest distance between neighbours, mm; null for fewer than two. */
export function widest(places: readonly number[]): number | null {
  if (places.length < 2) return null
  const sorted = [...places].sort((a, b) => a - b)
  return sorted.slice(1).reduce((most, place, i) => Math.max(most, place - (sorted[i] as number)), 0)
}
