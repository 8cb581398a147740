import type { StepId } from '@castwright/engine/steps'
import { type EntryAct, stamped } from './act.ts'

/** A step that is not a hold is finished. */
export const closeStep: EntryAct<{ readonly step: StepId }> = {
  name: 'close-step',
  label: 'Close this step',
  draft: (place, { step }) => ({ ...stamped(place), kind: 'close', step, value: null }),
}
