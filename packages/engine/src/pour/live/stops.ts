import type { CompactionPlan } from '../pour-plan.ts'
import type { Place, Visit } from './walk.ts'

/** One time that the vibrator goes in: an insertion of the pattern in one layer. */
export interface Stop extends Place {
  /** Index into the plan's insertions. */
  readonly insertion: number
  /** Index into the plan's zones. */
  readonly zone: number
  /** From 1: whose share it is. */
  readonly vibrator: number
}

interface Stops {
  readonly all: readonly Stop[]
  readonly at: ReadonlyMap<string, number>
}

const KNOWN = new WeakMap<CompactionPlan, Stops>()

/**
 * Every stop in working order: zone by zone, in a zone layer by layer, in a layer the share of each vibrator. A layer of a zone is worked
 * before the next comes on it.
 */
export function stopsOf(plan: CompactionPlan): readonly Stop[] {
  return stops(plan).all
}

/** The stop of a visit: same place and layer. Undefined where the pattern has none there. */
export function stopAt(plan: CompactionPlan, visit: Pick<Visit, 'at' | 'layer'>): number | undefined {
  return stops(plan).at.get(placeKey(visit))
}

function stops(plan: CompactionPlan): Stops {
  const known = KNOWN.get(plan)
  if (known !== undefined) return known
  const reach = new Map(
    plan.reduced.flatMap(({ insertions, radius }) => insertions.map((at) => [at, radius] as const)),
  )
  const all: Stop[] = []
  for (const [zone, { shares }] of plan.zones.entries())
    for (let layer = 1; layer <= plan.layers.count; layer += 1)
      for (const [share, insertions] of shares.entries())
        for (const insertion of insertions) {
          const at = plan.insertions[insertion]
          if (at === undefined) continue
          all.push({
            at,
            layer,
            radius: reach.get(insertion) ?? plan.radius,
            insertion,
            zone,
            vibrator: share + 1,
          })
        }
  const made = { all, at: new Map(all.map((stop, index) => [placeKey(stop), index])) }
  KNOWN.set(plan, made)
  return made
}

/** Half a millimetre is the same place: the record keeps whole millimetres. */
function placeKey({ at: [x, y], layer }: Pick<Visit, 'at' | 'layer'>): string {
  return `${layer} ${Math.round(x)} ${Math.round(y)}`
}
