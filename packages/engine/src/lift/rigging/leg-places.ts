import { distance, type Point } from '../../panel/point.ts'
import { STATICS } from '../../working/source.ts'
import { known, type Step, unknown, type Worked } from '../../working/worked.ts'
import type { YardRigging } from '../../yard/yard.ts'
import type { LegPick, RiggedBeam } from './rigging-types.ts'

/** Where each leg goes, for a panel that hangs level under a hook over its centre of gravity. */
export interface LegPlaces {
  /** Where the hook stands over, mm. */
  readonly hook: Point
  /** Line of the picks, or the direction of a spreader: unit vector. */
  readonly along: Point
  /** Upper ends of the legs above the picks, mm. */
  readonly height: number
  /** Hook above the picks, mm; null where the top slings are not given. */
  readonly hookHeight: number | null
  /** In the order of the picks. */
  readonly legs: readonly LegPlace[]
  /** Plan distance between the upper ends, mm: length of the spreader, 0 for one hook. */
  readonly spread: number
  /** Top slings from the vertical, degrees; null without a spreader or where it hangs at its middle. */
  readonly topAngle: RiggedBeam['topAngle']
  readonly gaps: readonly string[]
}

export interface LegPlace {
  /** Plan distance from pick to upper end, mm. */
  readonly reach: number
  /** From the vertical, degrees. */
  readonly angle: number
  /** mm */
  readonly length: number
  /** Of the pull in plan, degrees; null where the leg is vertical. */
  readonly bearing: number | null
  /** Which end of the spreader it hangs from, −1 or 1; 0 from its middle or from the hook. */
  readonly end: number
  /** How far its pick lies inward of that end, along the spreader, mm; negative: outward. */
  readonly inward: number
}

const DEGREES = 180 / Math.PI

/**
 * Reach, angle and length of each leg. The leg with the greatest plan distance is as long as the rigging says and sets the height; the others
 * are then shorter, as they must be for the panel to hang level with its horizontal pulls in balance.
 *
 * The angle is taken on the leg's own plan distance: the diagonal of four picks, not a side. Legs of a spreader hang from the nearer of its two
 * ends, the spreader lying along the longer direction of the picks.
 *
 * Unknown where the number of legs is not that of the picks, where the length of a spreader is not given, or where a leg does not reach.
 *
 * Source: statics.
 * Example: four legs of 4 m to picks 1757 and 879 mm either side: reach 1964.6 mm, height 3484.3 mm, 29.42°.
 */
export function legPlaces({
  rigging,
  picks,
  centre,
  hang,
}: {
  readonly rigging: YardRigging
  readonly picks: readonly LegPick[]
  /** mm */
  readonly centre: Point
  readonly hang: 'flat' | 'row'
}): Worked<LegPlaces> {
  const name = `rigging ${rigging.mark}`
  if (rigging.legs !== picks.length)
    return unknown(`${name}: ${rigging.legs} legs for ${picks.length} inserts`)
  if (rigging.spreader === true) return unknown(`${name}: length of the spreader`)
  const spread = typeof rigging.spreader === 'number' ? rigging.spreader : 0
  const points = picks.map(({ at }) => at)
  const along = mainDirection(points)
  const hook = hang === 'row' || picks.length === 2 ? footOn(centre, points, along) : centre
  const ends = points.map(([x, y]) => {
    const [dx, dy] = [x - hook[0], y - hook[1]]
    const s = dx * along[0] + dy * along[1]
    const end = spread > 0 && Math.abs(s) > 1e-9 * spread ? Math.sign(s) : 0
    return { s, t: dy * along[0] - dx * along[1], end }
  })
  const reaches = ends.map(({ s, t, end }) => Math.hypot(s - (end * spread) / 2, t))
  const farthest = Math.max(...reaches)
  if (!Number.isFinite(farthest)) return unknown('positions of the inserts')
  if (!(farthest < rigging.length)) {
    return unknown(`${name}: a leg of ${rigging.length} mm does not reach ${farthest.toFixed(0)} mm out`)
  }
  const height = Math.sqrt(rigging.length ** 2 - farthest ** 2)
  const working: Step[] = [
    {
      symbol: 'h',
      formula: '√(L² − r²)',
      given: { L: rigging.length, r: farthest },
      result: height,
      unit: 'mm',
      source: STATICS,
      note: 'upper ends of the legs above the picks, by the leg that reaches farthest',
    },
  ]
  const legs = ends.map(({ s, t, end }, i): LegPlace => {
    const [reach, e] = [reaches[i]!, (end * spread) / 2]
    const angle = Math.atan(reach / height) * DEGREES
    const pull: Point = [(e - s) * along[0] + t * along[1], (e - s) * along[1] - t * along[0]]
    working.push(
      {
        symbol: `r ${picks[i]!.mark}`,
        formula: '√((s − e)² + t²)',
        given: { s, e, t },
        result: reach,
        unit: 'mm',
        source: STATICS,
        note: spread > 0 ? 's along the spreader, e its end' : 'plan distance from hook to pick',
      },
      {
        symbol: `β ${picks[i]!.mark}`,
        formula: 'atan(r / h) · 180 / π',
        given: { r: reach, h: height },
        result: angle,
        unit: '°',
        source: STATICS,
        note: 'leg from the vertical',
      },
    )
    const bearing = reach > 1e-6 * rigging.length ? Math.atan2(pull[1], pull[0]) * DEGREES : null
    return {
      reach,
      angle,
      length: Math.hypot(reach, height),
      bearing,
      end,
      inward: Math.abs(e) - Math.abs(s),
    }
  })
  const top = topOf(rigging, spread, height)
  if (!top.known) return top
  return known({ hook, along, height, legs, spread, ...top.value }, [...working, ...top.working])
}

type Top = Pick<LegPlaces, 'hookHeight' | 'topAngle' | 'gaps'>

/** From the legs' upper ends to the hook. */
function topOf({ mark, top }: YardRigging, spread: number, height: number): Worked<Top> {
  if (spread === 0 || top === 'middle') return known({ hookHeight: height, topAngle: null, gaps: [] }, [])
  if (top === undefined) {
    return known(
      {
        hookHeight: null,
        topAngle: null,
        gaps: [`rigging ${mark}: length of the slings above the spreader`],
      },
      [],
    )
  }
  const half = spread / 2
  if (!(top > half)) return unknown(`rigging ${mark}: a top sling of ${top} mm does not reach ${half} mm out`)
  const rise = Math.sqrt(top ** 2 - half ** 2)
  const topAngle = Math.asin(half / top) * DEGREES
  return known({ hookHeight: height + rise, topAngle, gaps: [] }, [
    {
      symbol: 'β top',
      formula: 'asin(b / (2 l)) · 180 / π',
      given: { b: spread, l: top },
      result: topAngle,
      unit: '°',
      source: STATICS,
      note: 'slings above the spreader',
    },
    {
      symbol: 'h hook',
      formula: 'h + √(l² − (b / 2)²)',
      given: { h: height, l: top, b: spread },
      result: height + rise,
      unit: 'mm',
      source: STATICS,
      note: 'hook above the picks; the links themselves are not in it',
    },
  ])
}

/** Unit vector along which the points spread most; x where no direction is longer. */
export function mainDirection(points: readonly Point[]): Point {
  const [cx, cy] = meanOf(points)
  let [xx, xy, yy] = [0, 0, 0]
  for (const [x, y] of points) {
    xx += (x - cx) ** 2
    xy += (x - cx) * (y - cy)
    yy += (y - cy) ** 2
  }
  if (Math.hypot(xx - yy, 2 * xy) <= 1e-9 * (xx + yy)) return [1, 0]
  const turn = Math.atan2(2 * xy, xx - yy) / 2
  return [Math.cos(turn), Math.sin(turn)]
}

export function meanOf(points: readonly Point[]): Point {
  const n = points.length
  return [points.reduce((sum, [x]) => sum + x, 0) / n, points.reduce((sum, [, y]) => sum + y, 0) / n]
}

/** Foot of a point on the line through the middle of the picks. */
function footOn(at: Point, points: readonly Point[], along: Point): Point {
  const mean = meanOf(points)
  const s = (at[0] - mean[0]) * along[0] + (at[1] - mean[1]) * along[1]
  return [mean[0] + s * along[0], mean[1] + s * along[1]]
}

/** How far the points stand off their own line at most, mm. */
export function offLine(points: readonly Point[]): number {
  const along = mainDirection(points)
  return Math.max(0, ...points.map((at) => distance(at, footOn(at, points, along))))
}
