import { type Draft, type Entry, makeEntry, type Person } from '@castwright/record'
import { type DeviceDatabase, type DeviceRow, NO_CLOCK } from './database.ts'

/** What a screen says of a new entry; id, person, device and time are added here. */
export type EntryDraft = Draft

export interface NewEntry {
  readonly draft: EntryDraft
  readonly person: Person
  readonly yard: string
  /** The device's clock, ms. */
  readonly now: number
}

/**
 * Makes an entry and keeps it here, in one transaction: two tabs cannot take the same counter, and no entry is without its
 * place in the device's chain.
 *
 * @throws InputError where the draft does not have the form that its kind asks for; then nothing was kept.
 */
export async function keepEntry(db: DeviceDatabase, { draft, person, yard, now }: NewEntry): Promise<Entry> {
  return await db.transaction('rw', db.settings, db.kept, async () => {
    const row = await db.setting('device', newDevice())
    const { offset } = await db.setting('clock', NO_CLOCK)
    const made = makeEntry({
      device: { id: row.id, counter: row.counter, previous: row.previous, clockOffset: offset },
      person,
      yard,
      now,
      draft: given(draft),
    })
    await db.kept.add({
      id: made.entry.id,
      entry: made.entry,
      counter: made.device.counter,
      state: 'waiting',
      tries: 0,
      fault: null,
      keptAt: new Date(now).toISOString(),
    })
    const { id, counter, previous } = made.device
    await db.settings.put({ key: 'device', id, counter, previous })
    return made.entry
  })
}

/** Makes several entries and keeps all of them here or, where one cannot be kept, none. @throws InputError as `keepEntry`. */
export async function keepEntries(
  db: DeviceDatabase,
  { drafts, ...rest }: Omit<NewEntry, 'draft'> & { readonly drafts: readonly EntryDraft[] },
): Promise<Entry[]> {
  return await db.transaction('rw', db.settings, db.kept, async () => {
    const entries: Entry[] = []
    for (const draft of drafts) entries.push(await keepEntry(db, { ...rest, draft }))
    return entries
  })
}

/**
 * Takes back an entry that never counted, such as a signature with a wrong PIN. Only the device's last one can go, so that
 * its chain stays without gaps; false where another came after it.
 */
export async function takeBack(db: DeviceDatabase, entry: Entry): Promise<boolean> {
  return await db.transaction('rw', db.settings, db.kept, async () => {
    const device = await db.setting('device', newDevice())
    if (device.id !== entry.device.id || device.counter !== entry.device.counter) return false
    await db.kept.delete(entry.id)
    await db.settings.put({ ...device, counter: device.counter - 1, previous: entry.device.previous })
    return true
  })
}

/** The device as it stands; made on first use. */
export async function thisDevice(db: DeviceDatabase): Promise<DeviceRow> {
  return await db.transaction('rw', db.settings, async () => {
    const device = await db.setting('device', newDevice())
    await db.settings.put(device)
    return device
  })
}

function newDevice(): DeviceRow {
  return { key: 'device', id: crypto.randomUUID(), counter: 0, previous: null }
}

/** Absent and undefined are one in JSON: only what is given is hashed. */
function given(draft: EntryDraft): EntryDraft {
  return Object.fromEntries(Object.entries(draft).filter(([, value]) => value !== undefined)) as EntryDraft
}
