import type { StepId } from '@castwright/engine/steps'
import { type EntryAct, stamped } from './act.ts'

/** A signature that asks the record to open a hold. The record judges again before it opens. */
export const askToOpen: EntryAct<{ readonly step: StepId }> = {
  name: 'ask-to-open',
  label: 'Sign',
  draft: (place, { step }) => ({ ...stamped(place), kind: 'request', step, value: null }),
}
