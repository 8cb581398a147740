import { monotonicFactory } from 'ulid'
import { ENTRY_FORMAT, type Entry, type Person } from './entry.ts'
import type { Flag } from './flags.ts'
import { entryHash, type Hash, sha256Of } from './hash.ts'
import type { AnyEntry } from './order.ts'
import { parseEntry } from './values.ts'

/** Where a device's chain of entries stands; kept on the device and moved on with every entry. */
export interface DeviceState {
  readonly id: string
  /** Number of its last entry; 0 for none. */
  readonly counter: number
  /** SHA-256 of its last entry, hex; null for none. */
  readonly previous: string | null
  /** Device clock less server clock at last contact, ms; null where never compared. */
  readonly clockOffset: number | null
}

/** What a person says; who, where and when are added by `makeEntry`. */
export type Draft = Omit<Entry, 'format' | 'id' | 'yard' | 'person' | 'device' | 'seen'>

export interface MakeEntryInput {
  readonly device: DeviceState
  readonly person: Person
  /** Name of the yard's log. */
  readonly yard: string
  /** Device clock, ms since 1970 UTC. */
  readonly now: number
  readonly draft: Draft
  /** Gives a ULID for the time; the built-in one never goes back within a process. */
  readonly nextId?: (now: number) => string
  readonly hash?: Hash
}

/** A device that has made nothing yet. */
export function newDevice(id: string): DeviceState {
  return { id, counter: 0, previous: null, clockOffset: null }
}

/**
 * The next entry of a device, numbered and chained to the one before, and the device's state after it. Keep both in one
 * transaction: an entry kept without its state would fork the chain.
 *
 * @throws InputError where the draft does not have the form that its kind asks for.
 */
export function makeEntry(input: MakeEntryInput): { readonly entry: Entry; readonly device: DeviceState } {
  const { device, person, yard, now, draft } = input
  const entry = parseEntry({
    format: ENTRY_FORMAT,
    id: (input.nextId ?? monotonicId)(now),
    yard,
    ...draft,
    person: { id: person.id, name: person.name, role: person.role },
    device: {
      id: device.id,
      counter: device.counter + 1,
      previous: device.previous,
      clockOffset: device.clockOffset,
    },
    seen: new Date(now).toISOString(),
  })
  return {
    entry,
    device: { ...device, counter: device.counter + 1, previous: entryHash(entry, input.hash ?? sha256Of) },
  }
}

/**
 * Whether each entry of a device carries the hash of the one before. Entries in any order; a pair with a missing number between
 * cannot be compared and is left to the flag that names the gap.
 */
export function checkChain(entries: Iterable<AnyEntry>, hash: Hash = sha256Of): Flag[] {
  const devices = new Map<string, Map<number, AnyEntry[]>>()
  for (const entry of entries) {
    const { id, counter } = entry.device
    const counters = devices.get(id) ?? new Map<number, AnyEntry[]>()
    devices.set(id, counters)
    counters.set(counter, [...(counters.get(counter) ?? []), entry])
  }
  const flags: Flag[] = []
  for (const [device, counters] of devices) {
    const hashes = new Map<number, ReadonlySet<string>>()
    for (const [counter, list] of counters)
      hashes.set(counter, new Set(list.map((entry) => entryHash(entry, hash))))
    for (const [counter, list] of [...counters].sort(([a], [b]) => a - b)) {
      const before = hashes.get(counter - 1)
      for (const entry of list) {
        const { previous } = entry.device
        const fits = counter === 1 ? previous === null : before === undefined || before.has(previous ?? '')
        if (fits) continue
        flags.push({
          kind: 'fork',
          panel: null,
          device,
          entries: [entry.id],
          text: `Entry ${counter} of device ${device} does not carry the hash of the one before.`,
        })
      }
    }
  }
  return flags
}

let ids: ((now?: number) => string) | undefined

function monotonicId(now: number): string {
  ids ??= monotonicFactory()
  return ids(now)
}
