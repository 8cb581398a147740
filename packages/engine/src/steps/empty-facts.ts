import type { PanelFacts, StepFacts } from './facts.ts'
import { STEP_IDS, type StepId } from './steps.ts'

/** A step of which nothing is on record. */
export function emptyStepFacts(): StepFacts {
  return { values: {}, decisions: {}, differences: {}, requests: [], opening: null, closed: null }
}

/** A panel of which nothing is on record. */
export function emptyPanelFacts({ job, mark }: { readonly job: string; readonly mark: string }): PanelFacts {
  return {
    job,
    mark,
    revision: null,
    drawing: null,
    steps: Object.fromEntries(STEP_IDS.map((id) => [id, emptyStepFacts()])) as Record<StepId, StepFacts>,
    design: null,
    cast: null,
    dockets: [],
    specimens: [],
    temperatures: [],
    defects: [],
    place: null,
  }
}
