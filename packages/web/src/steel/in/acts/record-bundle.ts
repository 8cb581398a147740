import type { Bundle } from '@castwright/engine/steel/incoming'
import type { EntryDraft } from '../../../record/index.ts'

export interface BundleInput {
  readonly id: string
  readonly bundle: Bundle
  /** The entry that it corrects, with why. */
  readonly corrects?: { readonly entry: string; readonly reason: string }
}

/** A bundle as it came, or what was read of it later. */
export const recordBundle = {
  name: 'record-bundle',
  label: 'Record the bundle',
  draft: ({ id, bundle, corrects }: BundleInput): EntryDraft => ({
    kind: corrects === undefined ? 'bundle' : 'correction',
    subject: { kind: 'bundle', id },
    value: bundle as unknown as EntryDraft['value'],
    ...(corrects === undefined ? {} : { about: corrects.entry, reason: corrects.reason }),
  }),
}
