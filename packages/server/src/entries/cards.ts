import { type Plan, plan as planPanel } from '@castwright/engine/plan'
import {
  type Card,
  cardOf,
  type PanelFacts,
  planInputOf,
  type StepId,
  type YardFacts,
} from '@castwright/engine/steps'
import { InputError } from '@castwright/engine/working'
import type { YardState } from '@castwright/record'

export interface PanelCard {
  readonly facts: PanelFacts
  readonly plan: Plan
  readonly card: Card
}

/** Why a card cannot be made: nothing is known of the panel, or nothing says by which code. */
export interface NoCard {
  readonly missing: string
}

/** Makes a card of a panel (`<job>/<mark>`) and step by a state, at a UTC instant. */
export type CardMaker = (state: YardState, panel: string, step: StepId, now: string) => PanelCard | NoCard

const PLANS = new WeakMap<
  object,
  { readonly yard: YardFacts; readonly placing: string; readonly plan: Plan | InputError }
>()

/** Plan and card of a panel's step, computed here from the record, whatever a device has shown. */
export const panelCard: CardMaker = (state, panel, step, now) => {
  const facts = state.panels.get(panel)
  if (facts === undefined || facts.drawing === null) {
    return { missing: `a drawing of ${panel} in the record` }
  }
  const plan = planOf(facts, state.yard)
  if (plan === null) return { missing: 'the code family: neither drawing nor yard says it' }
  if (plan instanceof InputError) return { missing: `a drawing that can be planned (${plan.message})` }
  return { facts, plan, card: cardOf({ plan, step, facts, yard: state.yard, now }) }
}

/**
 * The plan of a panel by the yard and the choices of its pour as they are; null where nothing says the code family, the error where the drawing cannot
 * be planned.
 */
export function planOf(facts: PanelFacts, yard: YardFacts): Plan | InputError | null {
  const input = planInputOf(facts, yard)
  if (input === null) return null
  const { drawing } = input
  const placing = JSON.stringify(input.placing)
  const known = PLANS.get(drawing)
  if (known !== undefined && known.yard === yard && known.placing === placing) return known.plan
  const plan = planned(() => planPanel(input))
  PLANS.set(drawing, { yard, placing, plan })
  return plan
}

function planned(make: () => Plan): Plan | InputError {
  try {
    return make()
  } catch (error) {
    if (error instanceof InputError) return error
    throw error
  }
}
