import type { StepId } from '@castwright/engine/steps'
import type { Attachment } from '@castwright/record'
import { attached, type EntryAct, stamped } from './act.ts'

export interface DefectInput {
  readonly step: StepId
  readonly text: string
  /** mm of the drawing; null where it has no one place. */
  readonly place: readonly [number, number] | null
  readonly attachments?: readonly Attachment[]
}

/** Something found wrong. The panel is not loaded until somebody entitled has decided. */
export const reportDefect: EntryAct<DefectInput> = {
  name: 'report-defect',
  label: 'Record the defect',
  draft: (panel, { step, text, place, attachments }) => ({
    ...stamped(panel),
    kind: 'defect',
    step,
    value: { text, place: place === null ? null : [Math.round(place[0]), Math.round(place[1])] },
    ...attached(attachments),
  }),
}
