import type { PanelFacts } from './facts.ts'
import { panelStep, STEP_IDS, STEPS, type StepId } from './steps.ts'

/** The hold that a step stands behind, the nearest one before it; null for the steps before the first. */
export function holdBefore(step: StepId): StepId | null {
  const at = STEP_IDS.indexOf(step)
  return STEPS.filter(({ hold }, index) => hold && index < at).at(-1)?.id ?? null
}

/**
 * Whether a hold is open for the drawing revision in force. An opening for an older revision counts only once the work has
 * gone past it: concrete cannot be taken out of the mould again, nor a lifted panel put back.
 */
export function holdIsOpen(step: StepId, facts: PanelFacts): boolean {
  const { opening } = facts.steps[step]
  if (opening === null) return false
  return opening.revision === facts.revision || gonePast(step, facts)
}

/** The nearest hold before a step that is still shut; null where the way is free. Holds before that one count too. */
export function shutHold(step: StepId, facts: PanelFacts): StepId | null {
  const at = STEP_IDS.indexOf(step)
  const before = STEPS.filter(({ hold }, index) => hold && index < at)
  return before.find(({ id }) => !holdIsOpen(id, facts))?.id ?? null
}

/** Whether a step is finished for the revision in force. */
export function stepIsDone(step: StepId, facts: PanelFacts): boolean {
  if (panelStep(step).hold) return holdIsOpen(step, facts)
  return facts.steps[step].closed !== null && facts.steps[step].closed.revision === facts.revision
}

function gonePast(step: StepId, facts: PanelFacts): boolean {
  if (step === 'set' && facts.cast !== null) return true
  return STEP_IDS.slice(STEP_IDS.indexOf(step) + 1).some((later) => {
    const found = facts.steps[later]
    return found.closed !== null || found.opening !== null
  })
}
