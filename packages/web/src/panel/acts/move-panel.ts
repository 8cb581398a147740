import type { StepId } from '@castwright/engine/steps'
import { type EntryAct, stamped } from './act.ts'

/** Where the panel stands now: rack, bed or truck. */
export const movePanel: EntryAct<{ readonly step: StepId; readonly to: string }> = {
  name: 'move-panel',
  label: 'Record the place',
  draft: (place, { step, to }) => ({ ...stamped(place), kind: 'place', step, value: { place: to.trim() } }),
}
