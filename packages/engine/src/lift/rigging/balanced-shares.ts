import { distance, type Point } from '../../panel/point.ts'
import { UNEVEN } from '../plate/supports.ts'
import { EQUALISED_OFFSET, IN_LINE } from '../supports.ts'
import { meanOf } from './leg-places.ts'

/** Legs that carry equal forces, because one sling runs through them: their numbers from 0, and the middle of their picks. */
export interface LegRun {
  readonly legs: readonly number[]
  readonly at: Point
}

/** One way to hold the load: share of it on each run, sum 1. */
export type Holding = readonly number[]

/** Runs of the legs: those of `pairs`, else all of an equalised set of four and more, else each leg for itself. */
export function legRuns({
  points,
  equalised,
  pairs = [],
}: {
  readonly points: readonly Point[]
  readonly equalised: boolean
  /** Leg numbers from 1. */
  readonly pairs?: readonly (readonly [number, number])[] | undefined
}): LegRun[] {
  const all = points.map((_, i) => i)
  const paired = pairs.map(([a, b]) => [a - 1, b - 1])
  const groups =
    paired.length > 0
      ? [...paired, ...all.filter((i) => !paired.flat().includes(i)).map((i) => [i])]
      : equalised && points.length > 3
        ? [all]
        : all.map((i) => [i])
  return groups.map((legs) => ({ legs, at: meanOf(legs.map((i) => points[i]!)) }))
}

/**
 * Every way in which as few runs as possible hold the load in balance without one pushing: three that surround the centre of gravity, two in
 * line with it, or one under it. The loads of any other way lie between these, so that their greatest is the greatest that a leg can get
 * whatever the lengths of the legs. Empty: the centre of gravity is outside of all picks.
 *
 * `row`: places along one line; else in plan. Runs over a block may stand off by `EQUALISED_OFFSET` of the least distance of a pick to the
 * middle, two single picks by `IN_LINE`; one run of all legs as far as its vertical parts differ by `UNEVEN`.
 *
 * Source: statics (vertices of the set of non-negative balanced forces).
 */
export function holdings({
  runs,
  points,
  centre,
  hang,
}: {
  readonly runs: readonly LegRun[]
  readonly points: readonly Point[]
  readonly centre: Point
  readonly hang: 'flat' | 'row'
}): Holding[] {
  if (runs.length === 1) {
    const uneven = equalShares(points, centre).map((share) => Math.abs(share * points.length - 1))
    return Math.max(...uneven) <= UNEVEN ? [[1]] : []
  }
  const middle = meanOf(points)
  const radius = Math.min(...points.map((at) => distance(at, middle)))
  const running = runs.some(({ legs }) => legs.length > 1)
  const slack = running ? Math.max(IN_LINE, EQUALISED_OFFSET * radius) : IN_LINE
  // Single legs in plan need no pairs: three round the centre of gravity hold what two in line with it do.
  const pairs = running || runs.length === 2
  const found: Holding[] = []
  const add = (shares: readonly (readonly [number, number])[]): void => {
    if (shares.some(([, share]) => share < -1e-9)) return
    const holding = runs.map(() => 0)
    for (const [i, share] of shares) holding[i] = Math.max(0, share)
    found.push(holding)
  }
  for (let i = 0; i < runs.length; i += 1) {
    const a = runs[i]!.at
    if (running && distance(a, centre) <= slack) add([[i, 1]])
    for (let j = i + 1; j < runs.length; j += 1) {
      const b = runs[j]!.at
      const span = distance(a, b)
      if (span > slack) {
        const along = ((centre[0] - a[0]) * (b[0] - a[0]) + (centre[1] - a[1]) * (b[1] - a[1])) / span ** 2
        if (hang === 'row' || (pairs && Math.abs(cross(a, b, centre)) / span <= slack))
          add([
            [i, 1 - along],
            [j, along],
          ])
      }
      for (let k = j + 1; hang === 'flat' && k < runs.length; k += 1) {
        const c = runs[k]!.at
        const whole = cross(a, b, c)
        const longest = Math.max(span, distance(b, c), distance(a, c))
        if (!(Math.abs(whole) > IN_LINE * longest)) continue
        add([
          [i, cross(centre, b, c) / whole],
          [j, cross(a, centre, c) / whole],
          [k, cross(a, b, centre) / whole],
        ])
      }
    }
  }
  return found
}

/** Twice the area of the triangle a, b, c, mm². */
function cross(a: Point, b: Point, c: Point): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
}

/**
 * Share of each run by statics alone, sum 1; negative where a run would have to push. Null where statics is not enough: four runs and more in
 * plan, three and more in a row, runs that cross at one point.
 */
export function onlyHolding({
  runs,
  centre,
  hang,
}: {
  readonly runs: readonly LegRun[]
  readonly centre: Point
  readonly hang: 'flat' | 'row'
}): Holding | null {
  const [a, b, c] = runs.map(({ at }) => at)
  if (a === undefined || runs.length > 3) return null
  if (b === undefined) return [1]
  if (c === undefined) {
    const span = distance(a, b)
    if (!(span > IN_LINE)) return null
    const along = ((centre[0] - a[0]) * (b[0] - a[0]) + (centre[1] - a[1]) * (b[1] - a[1])) / span ** 2
    return [1 - along, along]
  }
  const whole = cross(a, b, c)
  const longest = Math.max(distance(a, b), distance(b, c), distance(a, c))
  if (hang === 'row' || !(Math.abs(whole) > IN_LINE * longest)) return null
  return [cross(centre, b, c) / whole, cross(a, centre, c) / whole, cross(a, b, centre) / whole]
}

/** Middle of the picks and how equal pulls must differ along x and y for the balance, per mm. */
export function equalParts(
  points: readonly Point[],
  centre: Point,
): { readonly middle: Point; readonly a: number; readonly b: number } {
  const middle = meanOf(points)
  const [ex, ey] = [centre[0] - middle[0], centre[1] - middle[1]]
  let [xx, xy, yy] = [0, 0, 0]
  for (const [x, y] of points) {
    xx += (x - middle[0]) ** 2
    xy += (x - middle[0]) * (y - middle[1])
    yy += (y - middle[1]) ** 2
  }
  const whole = xx * yy - xy ** 2
  if (!(whole > 1e-9 * (xx + yy) ** 2)) return { middle, a: xx > 0 ? ex / xx : 0, b: 0 }
  return { middle, a: (ex * yy - ey * xy) / whole, b: (ey * xx - ex * xy) / whole }
}

/**
 * Equal pulls whose vertical parts differ by as much as balance asks: 1 / n + a x + b y, sum 1, its middle at the centre of gravity.
 */
export function equalShares(points: readonly Point[], centre: Point): number[] {
  const { middle, a, b } = equalParts(points, centre)
  return points.map(([x, y]) => 1 / points.length + a * (x - middle[0]) + b * (y - middle[1]))
}
