import type { Point } from '../../panel/point.ts'
import { STATICS } from '../../working/source.ts'
import { known, type Step, unknown, type Worked } from '../../working/worked.ts'
import { dot, frameAt, fromTo, middle } from './frame.ts'

export interface SharesInput {
  /** Inserts of the group, mm. */
  readonly at: readonly Point[]
  /** Resultant from the centroid of the inserts, mm. */
  readonly eccentricity: Point
}

/** Moment that counts as none, and spread that counts as a line, both against the size of the group. */
const NONE = 1e-9

/**
 * Part of the tension that each insert carries, all together 1: a rigid piece on equal springs that can pull and not push.
 *
 * Unknown where the resultant lies outside the inserts (then some would have to push), or beside the line of inserts in one line.
 *
 * Source: statics; elastic distribution as in ACI 318-19, 17.5.1.2 and EN 1992-4:2018, 6.2.1 (from memory).
 * Example: two inserts 200 mm apart, resultant 50 mm from the middle: 0.75 and 0.25.
 */
export function tensionShares({ at, eccentricity }: SharesInput): Worked<readonly number[]> {
  const all = at.map(() => 1)
  const centre = middle(at, all)
  const resultant: Point = [centre[0] + eccentricity[0], centre[1] + eccentricity[1]]
  const pulling = pullingShares(at, resultant)
  if (pulling === null) {
    return unknown(
      'eccentricity: the resultant lies outside the inserts or beside their line, and some would have to push',
    )
  }
  return known(pulling.shares, stepsOf(at, pulling))
}

interface Pulling {
  readonly shares: readonly number[]
  /** Inserts in tension. */
  readonly active: readonly number[]
  readonly resultant: Point
}

/** Springs that would push drop out until none does; they come back where the piece would lift off them. */
function pullingShares(at: readonly Point[], resultant: Point): Pulling | null {
  let active = at.map((_, index) => index)
  for (let round = 0; round <= 4 * at.length; round += 1) {
    const lift = liftOf(
      active.map((index) => at[index] as Point),
      resultant,
    )
    if (lift === null) return null
    const rises = at.map((point) => lift(point))
    const next = at.map((_, index) => index).filter((index) => (rises[index] ?? 0) > -NONE)
    if (next.length === 0) return null
    if (same(next, active)) {
      const shares = at.map((_, index) => (active.includes(index) ? Math.max(0, rises[index] ?? 0) : 0))
      return { shares, active, resultant }
    }
    active = next
  }
  return null
}

/** Load of a spring by its place, for a unit resultant, when exactly these springs act; null where they cannot hold it. */
function liftOf(at: readonly Point[], resultant: Point): ((point: Point) => number) | null {
  const n = at.length
  const centre = middle(
    at,
    at.map(() => 1),
  )
  const { along, across } = frameAt(principalAngle(at, centre))
  const spread = (axis: Point) => at.reduce((sum, point) => sum + dot(fromTo(centre, point), axis) ** 2, 0)
  const size = Math.max(1, ...at.map((point) => Math.hypot(...fromTo(centre, point))))
  const arm = fromTo(centre, resultant)
  const slopes: [Point, number][] = []
  for (const axis of [along, across]) {
    const moment = dot(arm, axis)
    const stiff = spread(axis)
    if (stiff > NONE * size ** 2) slopes.push([axis, moment / stiff])
    else if (Math.abs(moment) > 1e-6 * size) return null
  }
  return (point) =>
    slopes.reduce((sum, [axis, slope]) => sum + slope * dot(fromTo(centre, point), axis), 1 / n)
}

/** Direction of the greatest spread, so that inserts in one line show as such. */
function principalAngle(at: readonly Point[], centre: Point): number {
  let [xx, yy, xy] = [0, 0, 0]
  for (const point of at) {
    const [x, y] = fromTo(centre, point)
    xx += x * x
    yy += y * y
    xy += x * y
  }
  return 0.5 * Math.atan2(2 * xy, xx - yy)
}

function same(one: readonly number[], other: readonly number[]): boolean {
  return one.length === other.length && one.every((value, index) => value === other[index])
}

function stepsOf(at: readonly Point[], { shares, active, resultant }: Pulling): Step[] {
  if (at.length === 1) return []
  const most = shares.indexOf(Math.max(...shares))
  const place = at[most] as Point
  const acting = active.map((index) => at[index] as Point)
  const centre = middle(
    acting,
    acting.map(() => 1),
  )
  const frame = frameAt(principalAngle(acting, centre))
  const given: Record<string, number> = { n: acting.length }
  const terms: string[] = []
  for (const [name, axis] of [
    ['u', frame.along],
    ['v', frame.across],
  ] as const) {
    const spread = acting.reduce((sum, point) => sum + dot(fromTo(centre, point), axis) ** 2, 0)
    const moment = dot(fromTo(centre, resultant), axis)
    if (spread < 1e-6 || Math.abs(moment) < 1e-9) continue
    given[`e${name}`] = moment
    given[`${name}i`] = dot(fromTo(centre, place), axis)
    given[`I${name}`] = spread
    terms.push(`e${name} ${name}i / I${name}`)
  }
  return [
    {
      symbol: 'Ni/N',
      formula: ['1 / n', ...terms].join(' + '),
      given,
      result: shares[most] ?? 0,
      unit: '',
      source: STATICS,
      note: `most loaded insert, number ${most + 1}; ${acting.length} of ${at.length} pull; I the sum of squares from their middle, mm²`,
    },
  ]
}

/**
 * Part of the shear that the most loaded insert carries: an equal part each, and the twist of a force beside the middle.
 *
 * `direction` in degrees from x; null: not known, the twist taken in full on top. Source: statics.
 */
export function shearShare({
  at,
  eccentricity,
  direction,
}: SharesInput & { readonly direction: number | null }): {
  readonly share: number
  readonly working: readonly Step[]
} {
  const n = at.length
  if (n === 1) return { share: 1, working: [] }
  const centre = middle(
    at,
    at.map(() => 1),
  )
  const arms = at.map((point) => fromTo(centre, point))
  const polar = arms.reduce((sum, arm) => sum + dot(arm, arm), 0)
  if (direction === null) {
    const e = Math.hypot(...eccentricity)
    const r = Math.max(...arms.map((arm) => Math.hypot(...arm)))
    const share = 1 / n + (e * r) / polar
    return {
      share,
      working: [
        {
          symbol: 'Vi/V',
          formula: '1 / n + e r / Ip',
          given: { n, e, r, Ip: polar },
          result: share,
          unit: '',
          source: STATICS,
          note: 'direction of the shear not known: its twist on the farthest insert in full',
        },
      ],
    }
  }
  const turn = (direction * Math.PI) / 180
  const [dx, dy] = [Math.cos(turn), Math.sin(turn)]
  const twist = eccentricity[0] * dy - eccentricity[1] * dx
  const loads = arms.map(([rx, ry]) =>
    Math.hypot(dx / n - (twist * ry) / polar, dy / n + (twist * rx) / polar),
  )
  const most = loads.indexOf(Math.max(...loads))
  const [rx, ry] = arms[most] as Point
  return {
    share: loads[most] as number,
    working: [
      {
        symbol: 'Vi/V',
        formula: '√((dx / n − T ry / Ip)² + (dy / n + T rx / Ip)²)',
        given: { dx, dy, n, T: twist, rx, ry, Ip: polar },
        result: loads[most] as number,
        unit: '',
        source: STATICS,
        note: `most sheared insert, number ${most + 1}; T the arm of a unit shear about the middle`,
      },
    ],
  }
}
