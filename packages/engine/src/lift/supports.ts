import { distance, type Point } from '../panel/point.ts'
import { STATICS } from '../working/source.ts'
import { known, type Step, unknown, type Worked } from '../working/worked.ts'

export interface Support {
  readonly mark: string
  /** mm */
  readonly at: Point
  readonly kind: 'face' | 'edge'
}

export interface SupportLoadsInput {
  /** Load to share, kN; above 0. */
  readonly weight: number
  /** Centre of gravity in plan, mm. */
  readonly centre: Point
  readonly supports: readonly Support[]
  /** Whether the rigging shares the load equally between four legs. */
  readonly equalised: boolean
}

/** Two supports count as in line with the centre of gravity within this, mm; the same as an edge insert to its edge. */
export const IN_LINE = 1

/** Four equalised legs: the centre of gravity may stand off the middle of the picks by this share of their least radius. */
export const EQUALISED_OFFSET = 0.05

/**
 * Load on each support by statics alone, in the order of the supports: kN, downward load positive.
 *
 * Two: the centre of gravity on their line, or both edge inserts with the panel hanging upright from them. Three: not in one line. Four:
 * equalised and the centre of gravity near the middle of the picks. All else is unknown: four or more rigid supports are
 * statically undetermined and need the bending of the plate. A negative load is shown: that support would have to push down.
 *
 * Source: statics.
 * Example: 58.5 kN at (2692.3, 1361.5) on (1200, 600), (1200, 2400), (4600, 900): 12.353, 20.471, 25.676 kN.
 */
export function supportLoads(input: SupportLoadsInput): Worked<readonly number[]> {
  const { weight, centre, supports, equalised } = input
  const numbers = [weight, ...centre, ...supports.flatMap(({ at }) => [...at])]
  if (!numbers.every(Number.isFinite) || !(weight > 0)) return unknown('weight and positions: finite numbers')
  switch (supports.length) {
    case 0:
      return unknown('inserts: none drawn; proposals come with the picks')
    case 1:
      return unknown('supports: one insert does not hold a panel level')
    case 2:
      return twoSupports(input)
    case 3:
      return threeSupports(input)
    case 4:
      if (equalised) return fourEqualised(input)
      break
  }
  return unknown(`loads on ${supports.length} rigid supports: not computed yet: needs plate bending`)
}

/** Twice the area of the triangle a, b, c, mm². */
function cross(a: Point, b: Point, c: Point): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
}

/** Whether all points lie on one line, within `IN_LINE` mm of the line through the two that are farthest apart. */
export function inOneLine(points: readonly Point[]): boolean {
  let ends: readonly [Point, Point] | null = null
  let span = 0
  for (const [index, a] of points.entries()) {
    for (const b of points.slice(index + 1)) {
      const apart = distance(a, b)
      if (apart > span) [ends, span] = [[a, b], apart]
    }
  }
  if (ends === null) return true
  const [from, to] = ends
  return points.every((point) => Math.abs(cross(from, to, point)) / span <= IN_LINE)
}

function twoSupports({ weight, centre, supports }: SupportLoadsInput): Worked<readonly number[]> {
  const [first, second] = supports as readonly [Support, Support]
  const span = distance(first.at, second.at)
  if (!(span > 0)) return unknown('supports: two inserts at one place')
  const off = Math.abs(cross(first.at, second.at, centre)) / span
  const upright = first.kind === 'edge' && second.kind === 'edge'
  if (off > IN_LINE && !upright) {
    return unknown('loads on two face inserts: the centre of gravity is not on their line')
  }
  const along =
    ((centre[0] - first.at[0]) * (second.at[0] - first.at[0]) +
      (centre[1] - first.at[1]) * (second.at[1] - first.at[1])) /
    span
  const loads = [(weight * (span - along)) / span, (weight * along) / span]
  const note =
    off > IN_LINE
      ? 'hanging upright, the line of the inserts level'
      : 'the centre of gravity on the line of the inserts'
  return known(loads, [
    {
      symbol: `R ${first.mark}`,
      formula: 'W (l − a) / l',
      given: { W: weight, l: span, a: along },
      result: loads[0] as number,
      unit: 'kN',
      source: STATICS,
      note,
    },
    {
      symbol: `R ${second.mark}`,
      formula: 'W a / l',
      given: { W: weight, l: span, a: along },
      result: loads[1] as number,
      unit: 'kN',
      source: STATICS,
    },
  ])
}

function threeSupports({ weight, centre, supports }: SupportLoadsInput): Worked<readonly number[]> {
  const points = supports.map(({ at }) => at) as [Point, Point, Point]
  if (inOneLine(points)) return unknown('supports: all three in one line do not hold the panel level')
  const whole = cross(...points)
  const loads: number[] = []
  const working: Step[] = []
  for (const [index, support] of supports.entries()) {
    // The share of a corner is the area of the triangle between the other two and the centre of gravity.
    const [b, c] = [points[(index + 1) % 3] as Point, points[(index + 2) % 3] as Point]
    const load = (weight * cross(centre, b, c)) / whole
    loads.push(load)
    working.push({
      symbol: `R ${support.mark}`,
      formula: 'W ((xb − xg) (yc − yg) − (yb − yg) (xc − xg)) / A2',
      given: { W: weight, xb: b[0], yb: b[1], xc: c[0], yc: c[1], xg: centre[0], yg: centre[1], A2: whole },
      result: load,
      unit: 'kN',
      source: STATICS,
      note: 'A2 = twice the area of the triangle of the three supports',
    })
  }
  return known(loads, working)
}

/** The middle of the supports, mm. */
export function pickCentre(supports: readonly Support[]): Point {
  const n = supports.length
  return [
    supports.reduce((sum, { at }) => sum + at[0], 0) / n,
    supports.reduce((sum, { at }) => sum + at[1], 0) / n,
  ]
}

function fourEqualised({ weight, centre, supports }: SupportLoadsInput): Worked<readonly number[]> {
  if (inOneLine(supports.map(({ at }) => at)))
    return unknown('supports: all in one line do not hold the panel level')
  const middle = pickCentre(supports)
  const offset = distance(middle, centre)
  const radius = Math.min(...supports.map(({ at }) => distance(middle, at)))
  if (offset > EQUALISED_OFFSET * radius) {
    return unknown(
      'loads on four equalised legs: the centre of gravity is too far from the middle of the inserts to hang level',
    )
  }
  const load = weight / 4
  return known(
    supports.map(() => load),
    [
      {
        symbol: 'R',
        formula: 'W / 4',
        given: { W: weight },
        result: load,
        unit: 'kN',
        source: STATICS,
        note: `four equalised legs share alike; centre of gravity ${offset.toFixed(0)} mm off the middle of the inserts`,
      },
    ],
  )
}
