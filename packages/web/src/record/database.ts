import type { Entry, Person, StoredEntry } from '@castwright/record'
import { Dexie, type Table } from 'dexie'

/** An entry made on this device and not yet in the record. It leaves only when the record has it, never before. */
export interface KeptEntry {
  readonly id: string
  readonly entry: Entry
  /** Counter of the device: the order in which entries are sent. */
  readonly counter: number
  /** `refused`: the record will not take it; kept and shown with the reason, never dropped. */
  readonly state: 'waiting' | 'refused'
  readonly tries: number
  readonly fault: string | null
  readonly keptAt: string
}

/** A photo or file, by its hash. `waiting` until the record has the bytes. */
export interface KeptFile {
  readonly sha256: string
  readonly name: string
  readonly type: string
  readonly size: number
  readonly bytes: Blob
  readonly state: 'waiting' | 'sent' | 'refused'
  readonly tries: number
  readonly fault: string | null
}

/** This device's place in the record: its id, how many entries it made, and the hash of the last one. */
export interface DeviceRow {
  readonly key: 'device'
  readonly id: string
  readonly counter: number
  readonly previous: string | null
}

/** Who is signed in here and for which yard. No PIN and nothing made of one is ever stored. */
export interface SessionRow {
  readonly key: 'session'
  readonly person: Person | null
  readonly yard: string | null
  readonly demo: boolean
  /** Signed out here while the server did not answer: it is told before it may say who is signed in. */
  readonly leaving: boolean
}

/** How far the record has been read, without gaps: every index below `next` is here. */
export interface CursorRow {
  readonly key: 'cursor'
  readonly next: number
  /** Size of the record at last contact. */
  readonly size: number
  /** When the record last answered, by the device's clock. */
  readonly at: string | null
}

/** Device clock less server clock, ms, at last contact. */
export interface ClockRow {
  readonly key: 'clock'
  readonly offset: number | null
}

export interface PeopleRow {
  readonly key: 'people'
  readonly people: readonly (Person & { readonly active: boolean })[]
}

export type SettingRow = DeviceRow | SessionRow | CursorRow | ClockRow | PeopleRow
export type SettingKey = SettingRow['key']

/** What this device holds: the yard's whole log, what it made itself and has not sent, and its files. */
export class DeviceDatabase extends Dexie {
  readonly entries!: Table<StoredEntry, number>
  readonly kept!: Table<KeptEntry, string>
  readonly files!: Table<KeptFile, string>
  readonly settings!: Table<SettingRow, SettingKey>

  constructor(name = 'castwright') {
    // Kept here must mean kept: the write is on disk before the screen says so.
    super(name, { chromeTransactionDurability: 'strict' })
    this.version(1).stores({
      entries: 'index, &id',
      kept: 'id, counter, state',
      files: 'sha256, state',
      settings: 'key',
    })
  }

  /** A setting by its key, or the given start value. */
  async setting<K extends SettingKey>(
    key: K,
    start: Extract<SettingRow, { key: K }>,
  ): Promise<Extract<SettingRow, { key: K }>> {
    const row = await this.settings.get(key)
    return row === undefined ? start : (row as Extract<SettingRow, { key: K }>)
  }
}

export const NO_CURSOR: CursorRow = { key: 'cursor', next: 0, size: 0, at: null }
export const NO_CLOCK: ClockRow = { key: 'clock', offset: null }
export const NO_SESSION: SessionRow = {
  key: 'session',
  person: null,
  yard: null,
  demo: false,
  leaving: false,
}
