import type { Point, Ring } from '../../panel/point.ts'
import { edges } from '../../panel/polygon.ts'
import { type Region, ringsOf } from '../../panel/region.ts'
import type { BarLine } from '../mat-lines.ts'

export interface LayChairsInput {
  readonly region: Region
  /** Rows of the bars that lie on the chairs, mm. */
  readonly lines: readonly BarLine[]
  readonly direction: 'x' | 'y'
  /** Largest distance between chairs, along a bar and across, mm. */
  readonly spacing: number
  /** From the end of a bar to the edge of the concrete, mm. */
  readonly edge: number
}

/** A chair's foot keeps this far in from the end of its bar, mm. Common practice, no source. */
export const FOOT = 50

/**
 * Chairs under the bars that they carry: rows of bars at not more than the spacing, chairs along each at even pitch, every second
 * row half a pitch aside. The first chair lies within half a spacing of each edge and opening where a bar runs there; a stretch of
 * edge that the rows leave without gets a chair of its own.
 */
export function layChairs(input: LayChairsInput): Point[] {
  const { lines, direction, spacing } = input
  if (!(spacing > 0) || lines.length === 0) return []
  const chairs: Point[] = []
  chairedRows(input).forEach((at, index) => {
    for (const line of lines) {
      if (line.at === at) chairs.push(...alongBar(line, input, index % 2 === 1))
    }
  })
  return [...chairs, ...alongEdges(input, chairs)].map(
    ([along, across]): Point => (direction === 'x' ? [along, across] : [across, along]),
  )
}

/** Rows that get chairs: as few as the spacing allows, evenly where the bars lie so, the outer ones within half a spacing of the edge. */
function chairedRows({ region, lines, direction, spacing }: LayChairsInput): number[] {
  const places = [...new Set(lines.map((line) => line.at))].sort((a, b) => a - b)
  const sides = ringsOf(region).flatMap((ring) => ring.map((point) => point[direction === 'x' ? 1 : 0]))
  const [low, high] = [Math.min(...sides), Math.max(...sides)]
  const fewest = greedyRows(places, low, high, spacing)
  const pitch = (high - low) / fewest.length
  const even = [...new Set(fewest.map((_, i) => nearest(places, low + (i + 0.5) * pitch)))]
  return holds(even, low, high, spacing) ? even : fewest
}

function greedyRows(places: readonly number[], low: number, high: number, spacing: number): number[] {
  const rows: number[] = []
  let reach = low + spacing / 2
  for (let i = 0; i < places.length; i += 1) {
    const [here, next] = [places[i] as number, places[i + 1]]
    const last = next === undefined
    const enough = rows.length > 0 && high - (rows.at(-1) as number) <= spacing / 2
    if (enough || (!last && next <= reach + 1e-9)) continue
    rows.push(here)
    reach = here + spacing
  }
  return rows
}

function holds(rows: readonly number[], low: number, high: number, spacing: number): boolean {
  const [first, last] = [rows[0], rows.at(-1)]
  if (first === undefined || last === undefined) return false
  if (first - low > spacing / 2 + 1e-9 || high - last > spacing / 2 + 1e-9) return false
  return rows.every((row, i) => i === 0 || row - (rows[i - 1] as number) <= spacing + 1e-9)
}

function nearest(places: readonly number[], wanted: number): number {
  return places.reduce((best, place) => (Math.abs(place - wanted) < Math.abs(best - wanted) ? place : best))
}

/** Chairs along one bar, as (along, across). */
function alongBar({ from, to, at }: BarLine, { spacing, edge }: LayChairsInput, aside: boolean): Point[] {
  const whole = to - from + 2 * edge
  const count = Math.max(1, Math.ceil(whole / spacing - 1e-9))
  const pitch = whole / count
  const foot = Math.min(FOOT, (to - from) / 2)
  const places = Array.from(
    { length: aside ? count + 1 : count },
    (_, i) => from - edge + (aside ? i : i + 0.5) * pitch,
  ).map((place) => Math.min(to - foot, Math.max(from + foot, place)))
  return [...new Set(places)].map((along): Point => [along, at])
}

/** Chairs for stretches of edge with none within half a spacing, looked at every quarter of it. */
function alongEdges(input: LayChairsInput, chairs: readonly Point[]): Point[] {
  const { region, spacing, direction } = input
  const half = spacing / 2
  const added: Point[] = []
  const rings: Ring[] = ringsOf(region)
  for (const ring of rings) {
    for (const [a, b] of edges(ring)) {
      const length = Math.hypot(b[0] - a[0], b[1] - a[1])
      if (!(length > 0)) continue
      const tangent: Point = [(b[0] - a[0]) / length, (b[1] - a[1]) / length]
      const looks = Math.max(1, Math.ceil(length / (half / 2)))
      for (let i = 0; i < looks; i += 1) {
        const along = ((i + 0.5) * length) / looks
        const place: Point = [a[0] + tangent[0] * along, a[1] + tangent[1] * along]
        const near = (point: Point): boolean => isNear(turned(point, direction), place, tangent, half)
        if (chairs.some(near) || added.some(near)) continue
        const chair = onNearestBar(input, place, tangent, near)
        if (chair !== null) added.push(chair)
      }
    }
  }
  return added
}

/** Concrete lies left of an edge: within half a spacing of it and of the place along it. */
function isNear([x, y]: Point, place: Point, tangent: Point, half: number): boolean {
  const [dx, dy] = [x - place[0], y - place[1]]
  const along = dx * tangent[0] + dy * tangent[1]
  const inward = dy * tangent[0] - dx * tangent[1]
  return inward >= 0 && inward <= half + 1e-6 && Math.abs(along) <= half + 1e-6
}

/** The place on a bar nearest the middle of where a chair is wanted; null where no bar runs there. */
function onNearestBar(
  { lines, direction, spacing }: LayChairsInput,
  place: Point,
  tangent: Point,
  near: (point: Point) => boolean,
): Point | null {
  const inward = spacing / 4
  const wanted = turned([place[0] - tangent[1] * inward, place[1] + tangent[0] * inward], direction)
  let [best, least]: [Point | null, number] = [null, Number.POSITIVE_INFINITY]
  for (const { at, from, to } of lines) {
    const foot = Math.min(FOOT, (to - from) / 2)
    const point: Point = [Math.min(to - foot, Math.max(from + foot, wanted[0])), at]
    const away = Math.hypot(point[0] - wanted[0], point[1] - wanted[1])
    if (away < least && near(point)) [best, least] = [point, away]
  }
  return best
}

/** Between (along, across) and (x, y): the same both ways. */
function turned([a, b]: Point, direction: 'x' | 'y'): Point {
  return direction === 'x' ? [a, b] : [b, a]
}
