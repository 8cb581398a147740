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
  if (sync.online === false) return { label, text: 'nothing waits', urgent: false }
  if (sync.at === null) return { label, text: 'asking', urgent: false }
  return { label, text: 'all in the record', urgent: false }
}

/** A length of time in the largest unit that fits, for ms. */
export function spanText(ms: number): string {
  if (ms < 2 * 3_600_000) return `${Math.round(ms / 60_000)} minutes`
  return ms < 2 * 86_400_000 ? `${Math.round(ms / 3_600_000)} hours` : `${Math.round(ms / 86_400_000)} days`
}
