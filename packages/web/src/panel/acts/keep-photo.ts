import type { StepId } from '@castwright/engine/steps'
import type { Attachment } from '@castwright/record'
import { attached, type EntryAct, stamped } from './act.ts'

export interface PhotoInput {
  readonly step: StepId
  readonly attachments: readonly Attachment[]
}

/** A picture of how it was at this step. */
export const keepPhoto: EntryAct<PhotoInput> = {
  name: 'keep-photo',
  label: 'Photo',
  draft: (place, { step, attachments }) => ({
    ...stamped(place),
    kind: 'photo',
    step,
    value: null,
    ...attached(attachments),
  }),
}
