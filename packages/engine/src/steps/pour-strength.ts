import type { Plan } from '../plan.ts'
import { unknown, type Worked } from '../working/worked.ts'
import { curveLow } from './curve-low.ts'
import type { PanelFacts, YardFacts } from './facts.ts'
import { CUBE_RATIO_LIMIT } from './pour-results.ts'
import { type StrengthAtLift, strengthAtLift } from './strength-at-lift.ts'

export interface PourStrengthInput {
  readonly plan: { readonly pour: Pick<Plan['pour'], 'mix'> }
  readonly facts: PanelFacts
  readonly yard: YardFacts
  /** UTC instant. */
  readonly now: string
}

/** Low edge of the strength of a panel's own pour at this instant: what the strip hold goes by. Unknown without a result of the pour. */
export function pourStrength({ plan, facts, yard, now }: PourStrengthInput): Worked<StrengthAtLift> {
  if (facts.cast === null) return unknown('time of mixing: the pour is not on record')
  const hour = (Date.parse(now) - Date.parse(facts.cast.at)) / 3_600_000
  const mark = facts.cast.mix ?? plan.pour.mix
  const mix = yard.yard?.mixes?.find((listed) => listed.mark === mark)
  return strengthAtLift({
    specimens: facts.specimens,
    hour,
    scatter: mix?.scatter ?? null,
    cubeRatio: yard.limits[CUBE_RATIO_LIMIT] ?? null,
    curveLow: mix === undefined ? null : curveLow({ mix, logs: facts.temperatures, hour }),
  })
}
