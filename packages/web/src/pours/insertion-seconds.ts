import type { CompactionPlan } from '@castwright/engine/pour'
import { secondsAt, TOUCHES_ONLY } from '@castwright/engine/pour/live'
import type { PanelFacts } from '@castwright/engine/steps'

export interface InsertionSeconds {
  readonly seconds: number
  /** Where they come from, in words. */
  readonly from: string
}

/** Seconds of an insertion: by the slump measured at the truck, else as planned. `slumps`: of the dockets, the last one last. */
export function insertionSeconds(
  facts: PanelFacts,
  compaction: CompactionPlan,
  slumps: readonly (number | undefined)[],
): InsertionSeconds {
  const typed = facts.steps.deliver.values.slump?.value
  const docket = slumps.filter((each) => each !== undefined).at(-1)
  const slump = docket ?? (typeof typed === 'number' ? typed : null)
  if (slump === null)
    return {
      seconds: compaction.seconds.in,
      from: `Planned ${Math.round(compaction.seconds.in)} s; no slump measured`,
    }
  return {
    seconds: secondsAt(slump),
    from:
      slump > TOUCHES_ONLY
        ? `Slump ${slump} mm measured: touches only, at most ${secondsAt(slump)} s`
        : `${Math.round(secondsAt(slump))} s for the ${slump} mm of slump measured`,
  }
}
