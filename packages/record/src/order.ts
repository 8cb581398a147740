import type { Entry, StoredEntry } from './entry.ts'

export type AnyEntry = Entry | StoredEntry

/** Whether the record has it; otherwise it is only kept on a device. */
export function isStored(entry: AnyEntry): entry is StoredEntry {
  return 'stored' in entry
}

export function storedAt(entry: AnyEntry): string | null {
  return isStored(entry) ? entry.stored : null
}

/** The order in which entries speak: time seen, device, counter, id. The same on every machine. */
export function compareEntries(a: AnyEntry, b: AnyEntry): number {
  if (a.seen !== b.seen) return a.seen < b.seen ? -1 : 1
  if (a.device.id !== b.device.id) return a.device.id < b.device.id ? -1 : 1
  if (a.device.counter !== b.device.counter) return a.device.counter - b.device.counter
  return a.id === b.id ? 0 : a.id < b.id ? -1 : 1
}

/** Whether `entry` came into the record after `other`: by place in the log; what is not stored yet is later than all. */
export function arrivedAfter(entry: AnyEntry, other: AnyEntry): boolean {
  if (!isStored(entry)) return isStored(other) || compareEntries(entry, other) > 0
  return isStored(other) && entry.index > other.index
}

/** Latest of a list in the order of entries; null for none. */
export function latest<T extends AnyEntry>(entries: readonly T[]): T | null {
  return entries.reduce<T | null>(
    (best, entry) => (best === null || compareEntries(entry, best) > 0 ? entry : best),
    null,
  )
}
