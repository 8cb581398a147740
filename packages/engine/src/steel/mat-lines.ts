import type { Point } from '../panel/point.ts'
import { offset, type Region, ringsOf } from '../panel/region.ts'
import { clearRows, type Obstacle } from './laid-out/clear-rows.ts'
import { widest } from './laid-out/spread.ts'

/** One straight bar line of a mat before it is cut to stock: along `direction` from `from` to `to`, at `at` across it, mm. */
export interface BarLine {
  /** Counts the lines of the mat across its direction, from 0; pieces of one line share it. */
  readonly row: number
  readonly at: number
  readonly from: number
  readonly to: number
}

export interface MatInput {
  readonly region: Region
  readonly direction: 'x' | 'y'
  /** mm */
  readonly diameter: number
  /** Largest spacing, mm. */
  readonly spacing: number
  /** Concrete between bar and any edge of the panel or an opening, mm. */
  readonly edgeCover: number
}

export interface MatLines {
  readonly lines: readonly BarLine[]
  /** Largest spacing as laid, mm; null with fewer than two rows. */
  readonly spacing: number | null
  readonly rows: number
  /** Pieces too short to hold anything, left out. */
  readonly dropped: number
  /** All rows at one distance: none had to move. */
  readonly even: boolean
}

/** Pieces shorter than this many diameters are left out. Common practice, no source. */
const SHORTEST = 10

/**
 * Bars of one mat, cut around openings. Rows: first and last at edge cover + half a diameter, the rest evenly at not more than the
 * spacing, over the whole width of the panel. Each row is clipped by the concrete shrunk by edge cover + half a diameter; the ends
 * then reach out so far that the corner of the bar has the edge cover: half a diameter at a square edge, less at a slope.
 */
export function matLines(input: MatInput): MatLines {
  const { region, diameter, edgeCover } = input
  return linesWithin({ ...input, shrunk: offset(region, -(edgeCover + diameter / 2)) })
}

/** The same in concrete that is shrunk already: mats of one bar size share it. */
export function linesWithin({
  shrunk,
  direction,
  diameter,
  spacing,
  obstacles = [],
  tolerance = 0,
}: Pick<MatInput, 'direction' | 'diameter' | 'spacing'> & {
  readonly shrunk: Region
  /** What rows keep clear of where they can, grown by half a bar. */
  readonly obstacles?: readonly Obstacle[]
  /** How far a row may move aside for one, mm. */
  readonly tolerance?: number
}): MatLines {
  const sliced = alongX(shrunk, direction)
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const ring of sliced.rings) {
    for (const [, y] of ring) {
      if (y < low) low = y
      if (y > high) high = y
    }
  }
  if (!(high >= low)) return { lines: [], spacing: null, rows: 0, dropped: 0, even: true }
  const spansAt = (at: number) => slice(sliced, at, diameter / 2)
  const places = clearRows({ low, high, spacing, tolerance, obstacles, spansAt })
  const rows = places.length
  const lines: BarLine[] = []
  let dropped = 0
  for (const [row, at] of places.entries()) {
    for (const [from, to] of spansAt(at)) {
      if (to - from < SHORTEST * diameter) dropped += 1
      else lines.push({ row, at, from, to })
    }
  }
  const step = evenStep(low, high, rows)
  const even = places.every((at, row) => Math.abs(at - low - row * (step ?? 0)) < 1e-6)
  return { lines, spacing: even ? step : widest(places), rows, dropped, even }
}

function evenStep(low: number, high: number, rows: number): number | null {
  return rows > 1 ? (high - low) / (rows - 1) : null
}

/**
 * Where a bar at a place across its direction lies in concrete that is shrunk already: stretches along it, mm, its ends reaching out
 * as those of a mat do.
 */
export function spansWithin({
  shrunk,
  direction,
  diameter,
}: Pick<MatInput, 'direction' | 'diameter'> & { readonly shrunk: Region }): (
  at: number,
) => readonly (readonly [from: number, to: number])[] {
  const sliced = alongX(shrunk, direction)
  return (at) => slice(sliced, at, diameter / 2)
}

interface Sliced {
  readonly rings: readonly (readonly Point[])[]
  /** Whether the concrete lies to the left of the rings. */
  readonly left: boolean
}

/** Rings turned so that bars run along x; x and y change places, so the concrete changes sides. */
function alongX(shrunk: Region, direction: 'x' | 'y'): Sliced {
  const rings = ringsOf(shrunk)
  return direction === 'x'
    ? { rings, left: true }
    : { rings: rings.map((ring) => ring.map(([x, y]): Point => [y, x])), left: false }
}

interface Crossing {
  readonly x: number
  /** How far a bar that ends here may reach beyond the crossing, as its end and as its start. */
  readonly end: number
  readonly start: number
}

/**
 * Where a row lies in closed concrete: just above it and just below it, joined, so that a row on an edge counts as inside.
 */
function slice({ rings, left }: Sliced, y: number, half: number): [number, number][] {
  const above: Crossing[] = []
  const below: Crossing[] = []
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i += 1) {
      const a = ring[i] as Point
      const b = ring[i + 1 === ring.length ? 0 : i + 1] as Point
      if (a[1] === b[1] || (y < a[1] && y < b[1]) || (y > a[1] && y > b[1])) continue
      const crossing = crossingOf(ring, i, y, half, left)
      if (y < a[1] || y < b[1]) above.push(crossing)
      if (y > a[1] || y > b[1]) below.push(crossing)
    }
  }
  const spans = [...pairs(above), ...pairs(below)].sort((a, b) => a[0].x - b[0].x)
  const joined: [Crossing, Crossing][] = []
  for (const span of spans) {
    const last = joined.at(-1)
    if (last === undefined || span[0].x > last[1].x) joined.push([span[0], span[1]])
    else if (span[1].x > last[1].x) last[1] = span[1]
  }
  return joined.map(([from, to]) => [from.x - from.start, to.x + to.end])
}

/** Crossing of a row with the edge that begins at corner `i`; where a corner lies within half a bar of the row its other edge bounds the bar too. */
function crossingOf(ring: readonly Point[], i: number, y: number, half: number, left: boolean): Crossing {
  const corner = (at: number) => ring[(at + ring.length) % ring.length] as Point
  const [a, b] = [corner(i), corner(i + 1)]
  const own = reachOf(a, b, y, half)
  let { end, start } = { end: own.reach, start: own.reach }
  for (const [before, at, after] of [
    [corner(i - 1), a, b],
    [a, b, corner(i + 2)],
  ] as const) {
    if (Math.abs(at[1] - y) > half || isReflex(before, at, after) === left) continue
    const [from, to] = at === a ? [before, a] : [b, after]
    if (from[1] === to[1]) continue
    const other = reachOf(from, to, y, half)
    end = Math.min(end, other.x - own.x + other.reach)
    start = Math.min(start, own.x - other.x + other.reach)
  }
  return { x: own.x, end, start }
}

/** Where the line of an edge crosses a row, and how far a bar may reach beyond: the half-angle between them keeps its corner at the cover. */
function reachOf(
  a: Point,
  b: Point,
  y: number,
  half: number,
): { readonly x: number; readonly reach: number } {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  const length = Math.sqrt(dx * dx + dy * dy)
  return { x: a[0] + (dx * (y - a[1])) / dy, reach: (half * (length - Math.abs(dx))) / Math.abs(dy) }
}

/** Whether the path turns to the right at the middle corner. */
function isReflex(a: Point, b: Point, c: Point): boolean {
  return (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]) < 0
}

function pairs(crossings: Crossing[]): [Crossing, Crossing][] {
  crossings.sort((a, b) => a.x - b.x)
  const spans: [Crossing, Crossing][] = []
  for (let i = 0; i + 1 < crossings.length; i += 2) {
    spans.push([crossings[i] as Crossing, crossings[i + 1] as Crossing])
  }
  return spans
}
