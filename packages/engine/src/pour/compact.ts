import type { Point } from '../panel/point.ts'
import { type Region, regionArea, ringsOf } from '../panel/region.ts'
import { belowZero, notAboveZero } from '../working/guard.ts'
import { GEOMETRY } from '../working/source.ts'
import { type Assumed, type Step, unknown, type Worked } from '../working/worked.ts'
import { Cover } from './compaction/cover.ts'
import { Ground } from './compaction/ground.ts'
import { MOST_INSERTIONS, pattern, planeCount } from './compaction/pattern.ts'
import { uncoveredArea } from './compaction/uncovered-area.ts'
import { BAND_WIDTH, pathLength, workingOrder } from './compaction/working-order.ts'
import type { CompactionPlan, PlacingZone } from './pour-plan.ts'
import { coveringRadius, radiusOfAction, SECONDS_IN, SECONDS_MOVING, VIBRATING_TIME } from './vibrator.ts'

/** Distance from faces where none is given, mm; always listed as assumed. */
export const ASSUMED_MARGIN = 75

export interface CompactInput {
  readonly region: Region
  /** mm */
  readonly thickness: number
  /** Diameter of the vibrator's head, mm; not needed where a radius is given. */
  readonly head?: number | undefined
  /** Covering radius, mm, taken as given. */
  readonly radius?: number | undefined
  /** Radius of action by the maker, mm: outranks the table. */
  readonly action?: number | undefined
  /** Wanted distance from faces, mm. */
  readonly margin?: number | undefined
  /** Where the concrete comes from, mm. */
  readonly chute: Point
  /** For plans of many panels: a slightly longer pattern, found much faster. */
  readonly quick?: boolean
}

/**
 * Where the vibrator goes in, in which order, and proof of what is reached.
 *
 * An insertion reaches what lies within the radius in a straight line, not across an opening or out of the panel and back. `uncovered` is 0
 * only where every vertex that a missed region could have was looked at and found reached. Left out: depth (one layer, up to about 300 mm),
 * reinforcement that cuts the reach, cast-ins.
 *
 * Unknown where neither radius nor a head in the table is given, where a size is not above 0, or where the radius would need more than
 * 40 000 insertions.
 */
export function compact(input: CompactInput): Worked<CompactionPlan> {
  const assumed: Assumed[] = []
  const margin = input.margin ?? ASSUMED_MARGIN
  if (input.margin === undefined)
    assumed.push({
      field: 'margin',
      value: margin,
      unit: 'mm',
      why: 'usual distance of the head from a face',
    })
  const reach = reachOf(input)
  if (!reach.known) return reach
  const { radius, action } = reach.value
  const gaps = [...notAboveZero({ radius, thickness: input.thickness }), ...belowZero({ margin })]
  if (gaps.length > 0) return unknown(...gaps)
  const area = regionArea(input.region)
  if (planeCount(area, radius) + lengthAround(input.region) / (2 * radius) > MOST_INSERTIONS)
    return unknown(`radius: ${radius} mm would need more than ${MOST_INSERTIONS} insertions`)

  const { points } = pattern({ region: input.region, radius, margin, quick: input.quick === true })
  // The proof is made anew from the points alone, apart from the search that placed them.
  const proof = new Cover(new Ground(input.region, radius), radius)
  for (const [x, y] of points) proof.add(x, y)
  const uncovered = proof.gaps(1).length === 0 ? 0 : uncoveredArea(input.region, points, radius)

  const bands = workingOrder({ region: input.region, points, chute: input.chute, rowPitch: 1.55 * radius })
  const insertions = bands.flatMap((band) => band.points)
  const secondsEach = SECONDS_IN + SECONDS_MOVING
  let first = 0
  const zones = bands.map((band, index): PlacingZone => {
    const from = first
    first += band.points.length
    return {
      order: index + 1,
      outlines: band.outlines,
      volume: band.area * (input.thickness / 1000),
      insertions: band.points.map((_, i) => from + i),
      minutes: (band.points.length * secondsEach) / 60,
    }
  })
  assumed.push(
    { field: 'seconds in', value: SECONDS_IN, unit: 's', why: 'time of one insertion, 5 to 15 s' },
    { field: 'seconds moving', value: SECONDS_MOVING, unit: 's', why: 'to the next insertion' },
    { field: 'band width', value: BAND_WIDTH, unit: 'mm', why: 'about what is worked from one stand' },
  )
  const plan: CompactionPlan = {
    insertions,
    radius,
    action,
    uncovered,
    path: pathLength(insertions),
    minutes: (insertions.length * secondsEach) / 60,
    close: insertions.flatMap(([x, y], index) =>
      proof.ground.clearance(x, y, radius + margin) < margin - 0.01 ? [index] : [],
    ),
    zones,
  }
  return {
    known: true,
    value: plan,
    working: [...reach.working, ...stepsOf(plan, area, secondsEach)],
    assumed,
  }
}

function reachOf(input: CompactInput): Worked<{ readonly radius: number; readonly action: number | null }> {
  if (input.radius !== undefined) {
    return { known: true, value: { radius: input.radius, action: null }, working: [] }
  }
  if (input.action !== undefined) {
    const gaps = notAboveZero({ action: input.action })
    if (gaps.length > 0) return unknown(...gaps)
    const { radius, step } = coveringRadius(input.action)
    return { known: true, value: { radius, action: input.action }, working: [step] }
  }
  if (input.head === undefined) return unknown('head: diameter of the vibrator, mm, or a radius')
  const action = radiusOfAction(input.head)
  if (!action.known) return action
  const { radius, step } = coveringRadius(action.value)
  return { known: true, value: { radius, action: action.value }, working: [...action.working, step] }
}

function stepsOf(plan: CompactionPlan, area: number, seconds: number): Step[] {
  return [
    {
      symbol: 'N_plane',
      formula: '2 A / (3 √(3) R²)',
      given: { A: area, R: plan.radius },
      result: (2 * area) / (3 * Math.sqrt(3) * plan.radius ** 2),
      unit: '',
      source: {
        standard: 'Kershner, American Journal of Mathematics 61',
        clause: '1939',
        status: 'from memory',
      },
      note: 'thinnest cover of a plane; edges need more',
    },
    {
      symbol: 'N',
      formula: 'triangular rows, mended at edges and openings, spare ones taken out',
      given: { R: plan.radius },
      result: plan.insertions.length,
      unit: '',
      source: GEOMETRY,
      by: 'search',
    },
    {
      symbol: 'A_u',
      formula: 'concrete outside every reach: all vertices of a missed region looked at',
      given: { N: plan.insertions.length },
      result: plan.uncovered,
      unit: 'm²',
      source: GEOMETRY,
      by: 'search',
    },
    {
      symbol: 't_v',
      formula: 'N t_one / 60',
      given: { N: plan.insertions.length, t_one: seconds },
      result: plan.minutes,
      unit: 'min',
      source: VIBRATING_TIME,
    },
  ]
}

function lengthAround(region: Region): number {
  return ringsOf(region).reduce(
    (sum, ring) =>
      sum +
      ring.reduce((length, [x, y], i) => {
        const [px, py] = ring[(i + ring.length - 1) % ring.length] as Point
        return length + Math.hypot(x - px, y - py)
      }, 0),
    0,
  )
}
