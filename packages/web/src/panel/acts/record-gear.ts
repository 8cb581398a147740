import type { EntryDraft } from '../../record/index.ts'

export interface GearInput {
  /** Mark in the yard's list. */
  readonly mark: string
  /** In date up to and with this day of the yard, `2026-11-30`. */
  readonly due: string
  /** Who looked at it, or the number of the ticket. */
  readonly what: string
}

/** A piece of gear was inspected: it is in date until a day. About the gear and not about a panel. */
export const recordGear = {
  name: 'record-gear',
  label: 'Record the inspection',
  draft: ({ mark, due, what }: GearInput): EntryDraft => ({
    kind: 'gear',
    subject: { kind: 'gear', id: mark },
    value: { due, ...(what.trim() === '' ? {} : { what: what.trim() }) },
  }),
}
