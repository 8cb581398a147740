import { codeFamily } from '../codes/index.ts'
import type { PlanInput } from '../plan.ts'
import { placingChoice } from '../pour/placing-choice.ts'
import type { PanelFacts, YardFacts } from './facts.ts'

/**
 * What the plan of a panel is computed from, by the record: its drawing in force, the yard with its limits, and how the floor settled that
 * it is placed (said for the revision in force). Every place that plans a panel of the record takes its input from here, so that all say the same. Null where there is no
 * drawing, or nothing names a code family.
 */
export function planInputOf(
  { drawing, revision, steps }: Pick<PanelFacts, 'drawing' | 'revision' | 'steps'>,
  { yard, limits }: Pick<YardFacts, 'yard' | 'limits'>,
): PlanInput | null {
  const family = drawing?.code ?? yard?.code
  if (drawing === null || family === undefined) return null
  const inForce = Object.fromEntries(
    Object.entries(steps.place.values).filter(([, value]) => value.revision === revision),
  )
  return { drawing, yard, family: codeFamily(family), limits, placing: placingChoice(inForce) }
}
