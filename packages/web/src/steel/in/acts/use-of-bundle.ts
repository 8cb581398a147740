import type { EntryDraft } from '../../../record/index.ts'

export interface UseInput {
  readonly id: string
  /** `<job>/<mark>` */
  readonly panel: string
}

/** Bars of a bundle went into a panel without a cutting plan. */
export const useOfBundle = {
  name: 'use-of-bundle',
  label: 'Record that it went there',
  draft: ({ id, panel }: UseInput): EntryDraft => ({
    kind: 'used',
    subject: { kind: 'bundle', id },
    value: { panel },
  }),
}
