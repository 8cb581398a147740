import type { EntryDraft } from '../../../record/index.ts'

export interface RackInput {
  readonly diameter: number
  readonly grade: string
  /** mm */
  readonly length: number
  readonly count: number
  /** Name of the bundle; null where nobody knows. */
  readonly bundle: string | null
}

/** Offcuts that lie in the rack are counted into the record. */
export const countRack = {
  name: 'count-rack',
  label: 'Put them on record',
  draft: ({ diameter, grade, length, count, bundle }: RackInput): EntryDraft => ({
    kind: 'rack',
    subject: { kind: 'bar', id: `${diameter} ${grade}` },
    value: { diameter, grade, length, count, bundle },
  }),
}
