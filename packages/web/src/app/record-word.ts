import type { RecordSnapshot } from '../record/record-store.ts'

export interface RecordWord {
  readonly label: string
  readonly text: string
  /** Something waits for a person. */
  readonly urgent: boolean
}

/** What the head says of the record: *kept here* or *in the record*, and whether there is a network. */
export function recordWord({ kept, sync }: Pick<RecordSnapshot, 'kept' | 'sync'>): RecordWord {
  const label = sync.online === false ? 'No network' : 'Record'
  const refused = kept.filter(({ state }) => state === 'refused').length
  if (refused > 0) return { label, text: `${refused} refused`, urgent: true }
  if (kept.length > 0) return { label, text: `${kept.length} kept here`, urgent: sync.online === false }
  if (sync.at === null) return { label, text: sync.online === null ? 'asking' : 'not reached', urgent: false }
  return { label, text: 'all in the record', urgent: false }
}
