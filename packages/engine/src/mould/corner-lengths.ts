import { invert } from '../numeric/invert.ts'
import { distance, type Point, type Ring } from '../panel/point.ts'
import { edges, placeInRing, segmentsMeet } from '../panel/polygon.ts'
import { addRow, lengthRow, placeRows, through } from './length-net.ts'

/** Outlines of up to this many corners are taped at all of them. */
export const MOST_CORNERS = 12
/** Of outlines with more, the corners that shape them most. */
const KEY_CORNERS = 6

/** One length that is taped in a mould, straight from corner to corner. */
export interface MouldLength {
  /** `side:3`, or `diagonal:1-3` by the numbers of its corners. */
  readonly id: string
  /** As the floor reads it. Example: `Side 3`. */
  readonly what: string
  /** Corners of the drawing's outline, from 0. */
  readonly from: number
  readonly to: number
  /** mm */
  readonly drawn: number
}

export interface MouldSurvey {
  /** Corners of the outline that are taped, from 0, in its order. */
  readonly corners: readonly number[]
  readonly lengths: readonly MouldLength[]
}

/**
 * The lengths that fix the shape of a mould: every side, and so many diagonals that one more is taped than the shape needs; then
 * a misread tape shows. Diagonals are those that fix the corners best, the ones inside the panel first. A triangle has no
 * diagonal and so no length to spare. Of an outline with more than twelve corners the six that shape it most are taped.
 */
export function mouldSurvey(outline: Ring): MouldSurvey {
  const before = SURVEYS.get(outline)
  if (before !== undefined) return before
  const survey = surveyOf(outline)
  SURVEYS.set(outline, survey)
  return survey
}

/** The choice of diagonals is a search: each outline is asked for by every card of its panel. */
const SURVEYS = new WeakMap<Ring, MouldSurvey>()

function surveyOf(outline: Ring): MouldSurvey {
  const all = outline.map((_, index) => index)
  const corners = outline.length <= MOST_CORNERS ? all : keyCorners(outline)
  const whole = corners.length === outline.length
  const sides = corners.map((from, index) => {
    const to = corners[(index + 1) % corners.length] as number
    return whole ? side(outline, from, to) : diagonal(outline, from, to)
  })
  return { corners, lengths: [...sides, ...diagonals(outline, corners)] }
}

function side(outline: Ring, from: number, to: number): MouldLength {
  return { id: `side:${from + 1}`, what: `Side ${from + 1}`, from, to, drawn: drawnLength(outline, from, to) }
}

function diagonal(outline: Ring, a: number, b: number): MouldLength {
  const [from, to] = a < b ? [a, b] : [b, a]
  return {
    id: `diagonal:${from + 1}-${to + 1}`,
    what: `Corner ${from + 1} to corner ${to + 1}, straight`,
    from,
    to,
    drawn: drawnLength(outline, from, to),
  }
}

function drawnLength(outline: Ring, from: number, to: number): number {
  return distance(outline[from] as Point, outline[to] as Point)
}

/** Takes away the corner that changes the shape least until so many are left. */
function keyCorners(outline: Ring): number[] {
  const left = outline.map((_, index) => index)
  const bite = (at: number): number => {
    const [a, b, c] = [-1, 0, 1].map(
      (step) => outline[left[(at + step + left.length) % left.length] as number] as Point,
    ) as [Point, Point, Point]
    return Math.abs((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]))
  }
  while (left.length > KEY_CORNERS) {
    let least = 0
    for (let at = 1; at < left.length; at += 1) if (bite(at) < bite(least) * (1 - 1e-9)) least = at
    left.splice(least, 1)
  }
  return left
}

interface Pair {
  readonly a: number
  readonly b: number
  readonly row: readonly number[]
  readonly inside: boolean
}

/** Stands for what nothing holds yet. */
const LOOSE = 1e-6
/** A diagonal that runs over the forms is taken first where it holds the corners by this much better. */
const OUTSIDE = 0.25
/** Passes of exchange, each tries every diagonal left out in the place of every one chosen; one alone where corners are many. */
const PASSES = 3
const MANY = 9

/** Diagonals that fix the shape, first one by one, then exchanged while an exchange is better. */
function diagonals(outline: Ring, corners: readonly number[]): MouldLength[] {
  const count = corners.length
  const ring = corners.map((index) => outline[index] as Point)
  const spare: Pair[] = []
  for (let a = 0; a < count; a += 1)
    for (let b = a + 2; b < count; b += 1)
      if (!(a === 0 && b === count - 1))
        spare.push({ a, b, row: lengthRow(ring, a, b), inside: runsInside(ring, a, b) })
  const sides = ring.map((_, a) => lengthRow(ring, a, (a + 1) % count))
  const chosen: Pair[] = []
  while (chosen.length < count - 2) {
    const loose = invert(heldBy(ring, [...sides, ...chosen.map(({ row }) => row)]), 2 * count)
    if (loose === null) break
    const best = greatest(spare, ({ row, inside }) => through(loose, row) * (inside ? 1 : OUTSIDE))
    if (best === undefined) break
    chosen.push(best)
    spare.splice(spare.indexOf(best), 1)
  }
  const worth = (pairs: readonly Pair[]): number => worthOf(ring, sides, pairs)
  for (let pass = 0; pass < (count > MANY ? 1 : PASSES); pass += 1)
    if (!exchanged(chosen, spare, worth)) break
  return chosen
    .map(({ a, b }) => diagonal(outline, corners[a] as number, corners[b] as number))
    .sort((p, q) => p.from - q.from || p.to - q.to)
}

/** Whether any exchange made it better; both lists are changed. */
function exchanged(chosen: Pair[], spare: Pair[], worth: (pairs: readonly Pair[]) => number): boolean {
  let best = worth(chosen)
  let any = false
  for (let i = 0; i < chosen.length; i += 1)
    for (let j = 0; j < spare.length; j += 1) {
      const [out, into] = [chosen[i] as Pair, spare[j] as Pair]
      chosen[i] = into
      const now = worth(chosen)
      if (now > best + 1e-6) {
        best = now
        spare[j] = out
        any = true
      } else chosen[i] = out
    }
  return any
}

/** Of a misreading so much should show. */
const SHOWS = 0.05
/** What an inside diagonal counts more than one that runs over the forms, in lengths that show. */
const INSIDE = 0.3
/** What a corner that is held twice as well counts, in lengths that show. */
const FIRM = 2

/** Lengths of which a misreading shows, how firmly the corners are held, and diagonals that lie inside. */
function worthOf(ring: Ring, sides: readonly (readonly number[])[], pairs: readonly Pair[]): number {
  const size = 2 * ring.length
  const rows = [...sides, ...pairs.map(({ row }) => row)]
  const loose = invert(heldBy(ring, rows), size)
  if (loose === null) return Number.NEGATIVE_INFINITY
  let spread = 0
  for (let k = 0; k < size; k += 1) spread += loose[k * size + k] as number
  const shows = rows.reduce((sum, row) => sum + Math.min(1, Math.max(0, 1 - through(loose, row)) / SHOWS), 0)
  return shows - FIRM * Math.log2(spread) + INSIDE * pairs.filter(({ inside }) => inside).length
}

/** What lengths, and the place of the whole, hold of the corners. */
function heldBy(ring: Ring, rows: readonly (readonly number[])[]): Float64Array {
  const size = 2 * ring.length
  const held = new Float64Array(size * size)
  for (let k = 0; k < size; k += 1) held[k * size + k] = LOOSE
  for (const row of [...rows, ...placeRows(ring)]) addRow(held, row)
  return held
}

function greatest<T>(items: readonly T[], of: (item: T) => number): T | undefined {
  let best: T | undefined
  let most = Number.NEGATIVE_INFINITY
  for (const item of items) {
    const value = of(item)
    if (best === undefined || value > most + 1e-6) [best, most] = [item, value]
  }
  return best
}

/** The straight line between two corners lies on the panel and crosses no side. */
function runsInside(ring: Ring, a: number, b: number): boolean {
  const [p, q] = [ring[a] as Point, ring[b] as Point]
  const middle: Point = [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2]
  if (placeInRing(middle, ring) === 'outside') return false
  return edges(ring).every(([c, d], index) => {
    const touches = [index, (index + 1) % ring.length].some((corner) => corner === a || corner === b)
    return touches || !segmentsMeet([p, q], [c, d])
  })
}
