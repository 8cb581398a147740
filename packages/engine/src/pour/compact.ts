import type { Point } from '../panel/point.ts'
import { type Region, regionArea, ringsOf } from '../panel/region.ts'
import { belowZero, notAboveZero } from '../working/guard.ts'
import { GEOMETRY } from '../working/source.ts'
import { type Assumed, type Step, unknown, type Worked } from '../working/worked.ts'
import { Cover } from './compaction/cover.ts'
import { Ground } from './compaction/ground.ts'
import { CONGESTED_SHARE, type Congested, type Part, partsOf } from './compaction/parts.ts'
import { MOST_INSERTIONS, pattern, planeCount } from './compaction/pattern.ts'
import { uncoveredArea } from './compaction/uncovered-area.ts'
import { pathLength } from './compaction/working-order.ts'
import { placingZones } from './compaction/zones.ts'
import { type Displaced, wholeOf } from './displaced.ts'
import { LEFT_TOO_LONG } from './left-too-long.ts'
import { ASSUMED_MARGIN } from './margin.ts'
import type { CompactionPlan } from './pour-plan.ts'
import {
  coveringRadius,
  LAYER_DEPTH,
  LAYERS,
  placingRate,
  radiusOfAction,
  SECONDS_IN,
  SECONDS_MOVING,
  VIBRATING_TIME,
} from './vibrator.ts'

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
  /** Where close steel or inserts cut the reach. */
  readonly congested?: readonly Congested[] | undefined
  /** What void formers and ducts take from the concrete, seen from above, m³. */
  readonly displaced?: readonly Displaced[] | undefined
  /** Vibrators at work at the same time; 1 if not given. */
  readonly vibrators?: number | undefined
  /** Concrete that the gang places, m³/h; bands follow the heads alone if not given. */
  readonly placing?: number | undefined
  /** Minutes that a band may wait for the one beside it; 15 if not given. */
  readonly wait?: number | undefined
  /** Seconds in the concrete at one insertion; 10 if not given. */
  readonly secondsIn?: number | undefined
  /** For plans of many panels: a slightly longer pattern, found much faster. */
  readonly quick?: boolean
}

/**
 * Where the vibrator goes in, in which order, and proof of what is reached.
 *
 * An insertion reaches what lies within the radius in a straight line, not across an opening or out of the panel and back. `uncovered` is 0
 * only where every vertex that a missed region could have was looked at and found reached. A congested zone is covered from within, with its
 * own radius. Deeper than 300 mm every layer has all insertions. Left out: steel and inserts that are not given as congested.
 *
 * Unknown where neither radius nor a head in the table is given, where a size is not above 0, where vibrators are not a whole number or the
 * share of a zone not from 0 to 1, or where the radius would need more than 40 000 insertions.
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
  const { congested = [], vibrators = 1 } = input
  const { secondsIn = SECONDS_IN, wait = LEFT_TOO_LONG, placing = null } = input
  const gaps = [
    ...notAboveZero({ radius, thickness: input.thickness, secondsIn, wait }),
    ...notAboveZero(placing === null ? {} : { placing }),
    ...belowZero({ margin }),
    ...(Number.isInteger(vibrators) && vibrators >= 1 ? [] : ['vibrators: a whole number from 1']),
    ...(input.chute.every(Number.isFinite) ? [] : ['chute: where the concrete comes from, x and y, mm']),
    ...congested.flatMap(({ share = CONGESTED_SHARE }, i) =>
      share > 0 && share <= 1 ? [] : [`congested[${i}].share: above 0, at most 1`],
    ),
  ]
  if (gaps.length > 0) return unknown(...gaps)
  const area = regionArea(input.region)
  const parts = partsOf(input.region, congested)
  const expected = parts.reduce(
    (sum, part) => sum + planeCount(regionArea(part.region), part.share * radius),
    lengthAround(input.region) / (2 * radius),
  )
  if (expected > MOST_INSERTIONS)
    return unknown(`radius: ${radius} mm would need more than ${MOST_INSERTIONS} insertions`)

  const covered = parts.map((part) => coverPart(part, radius, margin, input.quick === true))
  const points = covered.flatMap((part) => part.points)
  const uncovered = covered.reduce((sum, part) => sum + part.uncovered, 0)
  const layers = Math.ceil(input.thickness / LAYER_DEPTH - 1e-9)
  const depths = { count: layers, depth: input.thickness / layers }
  const secondsEach = (secondsIn + SECONDS_MOVING) * layers
  const { displaced = [] } = input
  const volume = (area * input.thickness) / 1e9 - wholeOf(displaced)
  const { bands, zones, zoneMinutes, steps } = placingZones({
    region: input.region,
    points,
    chute: input.chute,
    thickness: input.thickness,
    volume,
    displaced,
    radius,
    secondsEach,
    vibrators,
    placing,
    wait,
  })
  const insertions = bands.flatMap((band) => band.points)
  const minutes = zones.reduce((sum, zone) => sum + zone.minutes, 0)
  assumed.push(
    ...(input.secondsIn === undefined
      ? [{ field: 'seconds in', value: SECONDS_IN, unit: 's', why: 'time of one insertion, 5 to 15 s' }]
      : []),
    { field: 'seconds moving', value: SECONDS_MOVING, unit: 's', why: 'to the next insertion' },
    ...(input.wait === undefined
      ? [
          {
            field: 'wait of a band',
            value: LEFT_TOO_LONG,
            unit: 'min',
            why: 'thin visible work in warm weather, common practice',
          },
        ]
      : []),
  )
  if (congested.some(({ share }) => share === undefined))
    assumed.push({
      field: 'congested share',
      value: CONGESTED_SHARE,
      unit: '',
      why: 'reach that is left in close steel, common practice',
    })
  if (layers > 1)
    assumed.push({ field: 'layer depth', value: LAYER_DEPTH, unit: 'mm', why: 'deepest layer at once' })
  const ground = new Ground(input.region, radius + margin)
  const plan: CompactionPlan = {
    insertions,
    radius,
    action,
    uncovered,
    path: pathLength(insertions),
    minutes,
    close: insertions.flatMap(([x, y], index) =>
      ground.clearance(x, y, radius + margin) < margin - 0.01 ? [index] : [],
    ),
    zones,
    reduced: covered.flatMap((part) => {
      if (part.share === 1) return []
      const mark = part.mark === undefined ? {} : { mark: part.mark }
      const own = new Set(part.points)
      const indices = insertions.flatMap((point, i) => (own.has(point) ? [i] : []))
      return [{ ...mark, outlines: ringsOf(part.region), radius: part.share * radius, insertions: indices }]
    }),
    layers: depths,
    seconds: { in: secondsIn, moving: SECONDS_MOVING },
    pace: (volume * 60) / minutes,
    zoneMinutes,
    headRate: input.head === undefined ? null : placingRate(input.head),
  }
  return {
    known: true,
    value: plan,
    working: [...reach.working, ...stepsOf(plan, area, secondsEach, vibrators, depths), ...steps],
    assumed,
  }
}

interface CoveredPart extends Part {
  readonly points: readonly Point[]
  /** m² */
  readonly uncovered: number
}

/** Insertions for one part. The proof is made anew from the points alone, apart from the search that placed them. */
function coverPart(part: Part, radius: number, margin: number, quick: boolean): CoveredPart {
  const reach = part.share * radius
  const { points } = pattern({ region: part.region, radius: reach, margin, quick })
  const proof = new Cover(new Ground(part.region, reach), reach)
  for (const [x, y] of points) proof.add(x, y)
  const uncovered = proof.gaps(1).length === 0 ? 0 : uncoveredArea(part.region, points, reach)
  return { ...part, points, uncovered }
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

function stepsOf(
  plan: CompactionPlan,
  area: number,
  seconds: number,
  vibrators: number,
  layers: { readonly count: number; readonly depth: number },
): Step[] {
  const all = plan.zones.reduce(
    (sum, zone) => sum + Math.max(0, ...zone.shares.map(({ length }) => length)),
    0,
  )
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
      formula: 'triangular rows, spread from edges and openings, spare ones taken out',
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
      given: { N: all, t_one: seconds },
      result: plan.minutes,
      unit: 'min',
      source: VIBRATING_TIME,
      ...(vibrators > 1 ? { note: 'N: the longest share of each zone, zone by zone' } : {}),
    },
    ...(layers.count > 1
      ? [
          {
            symbol: 'n_l',
            formula: 'h / 300 mm, rounded up',
            given: { h: layers.count * layers.depth },
            result: layers.count,
            unit: '',
            source: LAYERS,
            by: 'search' as const,
            note: 't_one counts every layer',
          },
        ]
      : []),
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
