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
  const rings = alongX(shrunk, direction)
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const ring of rings) {
    for (const [, y] of ring) {
      if (y < low) low = y
      if (y > high) high = y
    }
  }
  if (!(high >= low)) return { lines: [], spacing: null, rows: 0, dropped: 0, even: true }
  const spansAt = (at: number) => slice(rings, at, diameter / 2)
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
  const even = obstacles.length === 0
  return { lines, spacing: even ? evenStep(low, high, rows) : widest(places), rows, dropped, even }
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
  const rings = alongX(shrunk, direction)
  return (at) => slice(rings, at, diameter / 2)
}

function alongX(shrunk: Region, direction: 'x' | 'y'): (readonly Point[])[] {
  return ringsOf(shrunk).map((ring) => (direction === 'x' ? ring : ring.map(([x, y]): Point => [y, x])))
}

interface Crossing {
  readonly x: number
  /** How far the bar's end may reach beyond the crossing. */
  readonly reach: number
}

/**
 * Where a row lies in closed concrete: just above it and just below it, joined, so that a row on an edge counts as inside.
 */
function slice(rings: readonly (readonly Point[])[], y: number, half: number): [number, number][] {
  const above: Crossing[] = []
  const below: Crossing[] = []
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i += 1) {
      const a = ring[i] as Point
      const b = ring[i + 1 === ring.length ? 0 : i + 1] as Point
      const [bottom, top] = a[1] < b[1] ? [a, b] : [b, a]
      if (bottom[1] === top[1] || y < bottom[1] || y > top[1]) continue
      const [dx, dy] = [top[0] - bottom[0], top[1] - bottom[1]]
      const x = bottom[0] + (dx * (y - bottom[1])) / dy
      // Angle between bar and edge: its half-angle tangent keeps the bar's corner at the cover.
      const length = Math.sqrt(dx * dx + dy * dy)
      const crossing = { x, reach: (half * (length - Math.abs(dx))) / dy }
      if (y < top[1]) above.push(crossing)
      if (y > bottom[1]) below.push(crossing)
    }
  }
  const spans = [...pairs(above), ...pairs(below)].sort((a, b) => a[0].x - b[0].x)
  const joined: [Crossing, Crossing][] = []
  for (const span of spans) {
    const last = joined.at(-1)
    if (last === undefined || span[0].x > last[1].x) joined.push([span[0], span[1]])
    else if (span[1].x > last[1].x) last[1] = span[1]
  }
  return joined.map(([from, to]) => [from.x - from.reach, to.x + to.reach])
}

function pairs(crossings: Crossing[]): [Crossing, Crossing][] {
  crossings.sort((a, b) => a.x - b.x)
  const spans: [Crossing, Crossing][] = []
  for (let i = 0; i + 1 < crossings.length; i += 2) {
    spans.push([crossings[i] as Crossing, crossings[i + 1] as Crossing])
  }
  return spans
}
