import { distance, type Point } from '../panel/point.ts'
import { STATICS } from '../working/source.ts'
import { known, type Step, unknown, type Worked } from '../working/worked.ts'
import type { YardRigging } from '../yard/yard.ts'

export interface SlingInput {
  readonly rigging: YardRigging
  /** Where the hook hangs over, in plan, mm: the centre of gravity. */
  readonly hook: Point
  readonly picks: readonly Point[]
}

export interface Sling {
  /** Greatest angle of a leg from the vertical, degrees. */
  readonly angle: number
  /** Plan distance of that leg from its upper end to its pick, mm. */
  readonly reach: number
  /** Height from the picks to the upper ends of the legs (hook or spreader), the least, mm. */
  readonly height: number
}

/** Tension of one leg, kN: vertical share over the cosine of its angle from the vertical. */
export function legTension(load: number, angle: number): number {
  return load / Math.cos((angle * Math.PI) / 180)
}

/** Horizontal pull of one leg on its insert, kN. */
export function legPull(load: number, angle: number): number {
  return load * Math.tan((angle * Math.PI) / 180)
}

/**
 * Steepness of the rigging: the greatest angle of a leg from the vertical, taken on the leg's own plan distance (the
 * diagonal of four picks, not a side), degrees. From two picks the panel hangs down: the hook is over their line.
 *
 * The legs hang from the hook over the centre of gravity, or, where the rigging has a spreader of given length, from its
 * two ends, the spreader lying along the picks' longer direction. Unknown where the number of legs is not that of the picks, where the length of
 * a spreader is not given, or where a leg does not reach.
 *
 * Source: statics.
 * Example: four legs of 4 m to picks 1757 and 879 mm either side: 1964.6 mm, 29.42°.
 */
export function slingAngle({ rigging, hook, picks }: SlingInput): Worked<Sling> {
  if (picks.length === 0) return unknown('inserts: none drawn')
  if (rigging.legs !== picks.length) {
    return unknown(`rigging ${rigging.mark}: ${rigging.legs} legs for ${picks.length} inserts`)
  }
  const beam = rigging.spreader
  if (beam === true) return unknown(`rigging ${rigging.mark}: length of the spreader`)
  const length = typeof beam === 'number' ? beam : 0
  const over = hangPoint(hook, picks)
  const along = longDirection(picks)
  let worst: Step | null = null
  let reach = 0
  for (const [x, y] of picks) {
    const [dx, dy] = [x - over[0], y - over[1]]
    const s = dx * along[0] + dy * along[1]
    const t = -dx * along[1] + dy * along[0]
    const end = (Math.sign(s) * length) / 2
    const plan = Math.hypot(s - end, t)
    if (worst === null || plan > reach) {
      reach = plan
      worst = {
        symbol: 'r',
        formula: '√((s − e)² + t²)',
        given: { s, e: end, t },
        result: plan,
        unit: 'mm',
        source: STATICS,
        note: length > 0 ? 's along the spreader, e its end' : 'plan distance from hook to pick',
      }
    }
  }
  if (worst === null || !Number.isFinite(reach)) return unknown('positions of the inserts')
  if (!(reach < rigging.length)) {
    return unknown(
      `rigging ${rigging.mark}: a leg of ${rigging.length} mm does not reach ${reach.toFixed(0)} mm out`,
    )
  }
  const angle = (Math.asin(reach / rigging.length) * 180) / Math.PI
  const height = Math.sqrt(rigging.length ** 2 - reach ** 2)
  return known({ angle, reach, height }, [
    worst,
    {
      symbol: 'β',
      formula: 'asin(r / L) · 180 / π',
      given: { r: reach, L: rigging.length },
      result: angle,
      unit: '°',
      source: STATICS,
      note: 'from the vertical',
    },
    {
      symbol: 'h',
      formula: '√(L² − r²)',
      given: { L: rigging.length, r: reach },
      result: height,
      unit: 'mm',
      source: STATICS,
    },
  ])
}

/** Two picks hold the panel hanging from their line: the hook stands over the line, level with the centre of gravity. */
function hangPoint(hook: Point, picks: readonly Point[]): Point {
  const [a, b] = picks
  if (picks.length !== 2 || a === undefined || b === undefined) return hook
  const square = (b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2
  if (!(square > 0)) return hook
  const t = ((hook[0] - a[0]) * (b[0] - a[0]) + (hook[1] - a[1]) * (b[1] - a[1])) / square
  return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]
}

/** Unit vector between the two picks that are farthest apart along x or y: a spreader lies along the panel. */
function longDirection(picks: readonly Point[]): Point {
  const spread = (axis: 0 | 1): number => {
    const values = picks.map((pick) => pick[axis])
    return Math.max(...values) - Math.min(...values)
  }
  return spread(0) >= spread(1) ? [1, 0] : [0, 1]
}

export interface TiltInput {
  readonly centre: Point
  readonly hook: Point
  /** Hook above the picks, mm. */
  readonly height: number
  /** Centre of gravity below the picks, mm. */
  readonly depth: number
}

/**
 * Tilt of a panel whose hook is not over its centre of gravity: `atan(e / (h + d))`, degrees.
 *
 * Source: statics. Example: 50 mm off, hook 3 m above, centre 75 mm below: 0.9316°.
 */
export function tilt({ centre, hook, height, depth }: TiltInput): Worked<number> {
  const e = distance(centre, hook)
  if (!Number.isFinite(e) || !(height + depth > 0)) return unknown('hook height above the centre of gravity')
  const angle = (Math.atan(e / (height + depth)) * 180) / Math.PI
  return known(angle, [
    {
      symbol: 'θ',
      formula: 'atan(e / (h + d)) · 180 / π',
      given: { e, h: height, d: depth },
      result: angle,
      unit: '°',
      source: STATICS,
    },
  ])
}
