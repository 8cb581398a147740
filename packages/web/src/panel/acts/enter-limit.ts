import type { EntryDraft } from '../../record/index.ts'

export interface LimitInput {
  /** The yard, as its record names it. */
  readonly yard: string
  /** Key that the engine reads it by. */
  readonly key: string
  readonly value: number
  readonly unit: string
  readonly standard: string
  readonly edition: string
  /** Why it was set, where it is more than the source says; empty for none. */
  readonly reason?: string
}

/** An engineer enters a limit with its source, where no confirmed value is built in. It counts for the whole yard. */
export const enterLimit = {
  name: 'enter-limit',
  label: 'Enter this limit for the yard',
  draft: ({ yard, key, value, unit, standard, edition, reason = '' }: LimitInput): EntryDraft => ({
    kind: 'limit',
    subject: { kind: 'yard', id: yard },
    check: key,
    value: { value, unit, standard, edition },
    unit,
    ...(reason === '' ? {} : { reason }),
  }),
}
