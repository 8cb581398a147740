import type { Panel } from '../panel/panel.ts'
import type { Ring } from '../panel/point.ts'
import { bounds, placeInRing } from '../panel/polygon.ts'
import { offset, unite } from '../panel/region.ts'
import { type Check, compare } from '../working/check.ts'
import { ceilTo } from '../working/round.ts'
import { GEOMETRY } from '../working/source.ts'
import type { CompactionPlan } from './pour-plan.ts'

/**
 * For each void former with concrete under it: how far the farthest of that concrete lies from the former’s sides, seen from above, against the reach of an insertion. The head cannot go
 * through the former.
 */
export function voidReachChecks(
  { drawing }: Panel,
  compaction: CompactionPlan | null,
  gaps: readonly string[],
): Check[] {
  return (drawing.voids ?? [])
    .filter(({ above }) => above > 0)
    .map(({ mark, outline }) => {
      const ring = outline as unknown as Ring
      const over = compaction?.insertions.filter((at) => placeInRing(at, ring) === 'inside').length ?? 0
      return compare({
        id: `void-reach:${mark}`,
        step: 'place',
        what: `Concrete under void former ${mark}, farthest from its sides`,
        demand: ceilTo(insideReach(ring), 0.1),
        limit: compaction?.radius ?? null,
        unit: 'mm',
        sense: 'at most',
        source: GEOMETRY,
        missing: compaction === null ? gaps : [],
        note: `The head goes in along all its sides, once in the first layer; ${over} of the pattern’s insertions stand over it and reach only what is above. Beyond the reach: vibrate that concrete before the former is set.`,
      })
    })
}

/** Greatest distance from a point in a ring to the ring, mm, to a tenth and not below it. */
export function insideReach(ring: Ring): number {
  const box = bounds(ring)
  const region = unite([ring])
  let [low, high] = [0, Math.min(box.right - box.left, box.top - box.bottom) / 2 + 0.1]
  while (high - low > 0.1) {
    const middle = (low + high) / 2
    if (offset(region, -middle).length > 0) low = middle
    else high = middle
  }
  return high
}
