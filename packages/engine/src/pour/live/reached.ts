import type { Point, Ring } from '../../panel/point.ts'
import { edges, placeInRing, segmentsMeet } from '../../panel/polygon.ts'
import type { CompactionPlan } from '../pour-plan.ts'
import { stopAt, stopsOf } from './stops.ts'
import type { Visit } from './walk.ts'

/** What visits mean for the stops of a plan. */
export interface Reached {
  /** Visits at each stop, in order of time. */
  readonly visits: readonly (readonly Visit[])[]
  /** 1 where concrete was reached by visits of another pattern all round the stop. */
  readonly before: Uint8Array
  /** 1 where nothing was walked and somebody ticked the zone: reached by that person's word alone. */
  readonly said: Uint8Array
}

export interface ReachedInput {
  readonly plan: CompactionPlan
  readonly visits: readonly Visit[]
  /** The panel's outline, then its openings: no reach goes across them. */
  readonly rings: readonly Ring[]
  /** Ids of zones that somebody ticked as placed and vibrated. */
  readonly ticked?: ReadonlySet<string>
}

/**
 * Visits put to the stops of a plan by their place. Where the pattern changed under the walk (other heads), an old visit stands at no stop: a
 * new stop then counts as reached only if its whole reach, looked at in 37 places, lies in the reach of old visits of that layer, in a straight line
 * inside the concrete. What is left in a zone that was ticked is reached by word.
 */
export function reachedOf({ plan, visits, rings, ticked }: ReachedInput): Reached {
  const stops = stopsOf(plan)
  const own: Visit[][] = stops.map(() => [])
  const strange: Visit[] = []
  for (const visit of [...visits].sort((a, b) => a.from - b.from)) {
    const at = stopAt(plan, visit)
    if (at === undefined) strange.push(visit)
    else own[at]?.push(visit)
  }
  const before = new Uint8Array(stops.length)
  if (strange.length > 0)
    for (const [at, { at: place, layer, radius }] of stops.entries()) {
      const near = strange.filter(
        (visit) =>
          visit.layer === layer &&
          Math.hypot(visit.at[0] - place[0], visit.at[1] - place[1]) <= radius + visit.radius,
      )
      if (near.length > 0 && within(place, radius, near, rings)) before[at] = 1
    }
  const said = Uint8Array.from(stops, ({ zone }, at) =>
    own[at]?.length === 0 && before[at] === 0 && ticked?.has(plan.zones[zone]?.id ?? '') ? 1 : 0,
  )
  return { visits: own, before, said }
}

/** The stop itself and three rings of twelve places around it. */
const RINGS = [1 / 3, 2 / 3, 1] as const
const ON_RING = 12

function within(place: Point, radius: number, visits: readonly Visit[], rings: readonly Ring[]): boolean {
  const [outline, ...openings] = rings
  if (outline === undefined) return false
  const sides = rings.flatMap((ring) => edges(ring))
  const samples: Point[] = [
    place,
    ...RINGS.flatMap((share) =>
      Array.from({ length: ON_RING }, (_, i): Point => {
        const angle = (2 * Math.PI * i) / ON_RING
        return [place[0] + share * radius * Math.cos(angle), place[1] + share * radius * Math.sin(angle)]
      }),
    ),
  ]
  return samples
    .filter(
      (sample) =>
        placeInRing(sample, outline) === 'inside' &&
        openings.every((opening) => placeInRing(sample, opening) === 'outside'),
    )
    .every((sample) =>
      visits.some(
        ({ at, radius: reach }) =>
          Math.hypot(at[0] - sample[0], at[1] - sample[1]) <= reach &&
          !sides.some((side) => segmentsMeet([at, sample], side)),
      ),
    )
}
