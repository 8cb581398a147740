import {
  type AnyEntry,
  type Attachment,
  createFold,
  type Entry,
  type Fold,
  type Person,
  type StoredEntry,
  type YardState,
} from '@castwright/record'
import { liveQuery } from 'dexie'
import { type Api, NoAnswer, Refused, type SessionAnswer } from './api.ts'
import {
  type DeviceDatabase,
  type KeptEntry,
  type KeptFile,
  NO_CLOCK,
  NO_CURSOR,
  NO_SESSION,
  type SessionRow,
} from './database.ts'
import { type EntryDraft, keepEntries, keepEntry, takeBack } from './device.ts'
import { keepFile } from './files.ts'
import type { Lock } from './lock.ts'
import { Sync, type SyncState } from './sync.ts'

/** Everything the screens read; a new object whenever something changed. */
export interface RecordSnapshot {
  /** Null while what is on the device is being read. */
  readonly state: YardState | null
  /** Made here, not in the record yet; refused ones included. */
  readonly kept: readonly KeptEntry[]
  /** Files not in the record yet. */
  readonly files: readonly Omit<KeptFile, 'bytes'>[]
  /** Null until the device or the server said who is signed in. */
  readonly session: SessionRow | null
  /** The server was asked who is signed in, or did not answer. */
  readonly asked: boolean
  readonly needsSetup: boolean
  readonly sync: SyncState
  /** Device clock less server clock, ms. */
  readonly clockOffset: number | null
  /** Entries of the record that are on this device. */
  readonly size: number
  /** Entries in the record at last contact. */
  readonly recordSize: number
  /** The record was read at least once on this device. */
  readonly contacted: boolean
}

/** How a signature went. */
export type SignOutcome =
  | { readonly kind: 'opened' }
  /** In the record, and the hold stays shut: what is missing. */
  | { readonly kind: 'shut'; readonly missing: readonly string[] }
  /** No network: signed here, opens when it is in the record. */
  | { readonly kind: 'kept' }
  /** Wrong PIN, not entitled, too many tries: nothing was recorded. */
  | { readonly kind: 'refused'; readonly why: string }

export interface RecordStoreOptions {
  readonly db: DeviceDatabase
  readonly api: Api
  readonly lock: Lock
  readonly now?: () => number
}

/** The record as this device has it: folds what is stored and what is kept, adds to it, and keeps in step with the server. */
export class RecordStore {
  readonly db: DeviceDatabase
  readonly api: Api
  readonly sync: Sync
  readonly #lock: Lock
  readonly #now: () => number
  readonly #listeners = new Set<() => void>()
  #fold: Fold | null = null
  #have = 0
  #foldedKept = new Set<string>()
  #snapshot: RecordSnapshot
  #reading: Promise<void> = Promise.resolve()
  #stopWatching: (() => void) | null = null

  constructor({ db, api, lock, now = Date.now }: RecordStoreOptions) {
    this.db = db
    this.api = api
    this.#lock = lock
    this.#now = now
    this.sync = new Sync({ db, api, lock, now, onState: (sync) => this.#set({ sync }) })
    this.#snapshot = {
      state: null,
      kept: [],
      files: [],
      session: null,
      asked: false,
      needsSetup: false,
      sync: this.sync.state,
      clockOffset: null,
      size: 0,
      recordSize: 0,
      contacted: false,
    }
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener)
    return () => this.#listeners.delete(listener)
  }

  readonly snapshot = (): RecordSnapshot => this.#snapshot

  /** Reads what is here, asks who is signed in, and follows both from now on. */
  async start(): Promise<void> {
    await this.refresh()
    const watched = liveQuery(() =>
      Promise.all([
        this.db.settings.bulkGet(['cursor', 'session', 'clock']),
        this.db.kept.count(),
        this.db.kept.where('state').equals('refused').count(),
        this.db.kept.orderBy('counter').last(),
        this.db.files.where('state').equals('waiting').count(),
      ]),
    ).subscribe({ next: () => void this.refresh() })
    this.#stopWatching = () => watched.unsubscribe()
    void this.askSession().then(() => this.sync.wake())
  }

  stop(): void {
    this.#stopWatching?.()
    this.sync.stop()
  }

  /** Brings the snapshot in step with the device's database. Calls queue up, so that none reads past another. */
  refresh(): Promise<void> {
    // A read that failed says so to whoever asked for it and does not stop the next one.
    this.#reading = this.#reading.catch(() => {}).then(() => this.#read())
    return this.#reading
  }

  async #read(): Promise<void> {
    const db = this.db
    const [cursor, session, clock, kept, files] = await db.transaction(
      'r',
      db.settings,
      db.kept,
      db.files,
      async () =>
        [
          await db.setting('cursor', NO_CURSOR),
          await db.setting('session', NO_SESSION),
          await db.setting('clock', NO_CLOCK),
          await db.kept.orderBy('counter').toArray(),
          await db.files.where('state').notEqual('sent').toArray(),
        ] as const,
    )
    const waiting = kept.filter(({ state }) => state === 'waiting')
    let fold = this.#fold
    const gone = [...this.#foldedKept].filter((id) => !waiting.some((row) => row.id === id))
    const read = await db.entries.where('index').between(this.#have, cursor.next, true, false).toArray()
    const arrived = new Set(read.map(({ id }) => id))
    if (fold === null || cursor.next < this.#have || gone.some((id) => !arrived.has(id))) {
      // Something left without coming into the record: taken back, refused, or another record. Fold from the start.
      fold = createFold()
      const all: AnyEntry[] =
        this.#have === 0 ? read : await db.entries.where('index').below(cursor.next).toArray()
      fold.add(all)
    } else {
      fold.add(read)
    }
    fold.add(waiting.map(({ entry }) => entry))
    this.#fold = fold
    this.#have = cursor.next
    this.#foldedKept = new Set(waiting.map(({ id }) => id))
    this.#set({
      state: fold.state(),
      kept,
      files: files.map(({ bytes: _, ...rest }) => rest),
      session,
      clockOffset: clock.offset,
      size: cursor.next,
      recordSize: cursor.size,
      contacted: cursor.at !== null,
    })
  }

  /** Keeps an entry here; it goes to the record as soon as there is a network. */
  async add(draft: EntryDraft): Promise<Entry> {
    const { person, yard } = this.#signedIn()
    const entry = await keepEntry(this.db, { draft, person, yard, now: this.#now() })
    await this.refresh()
    void this.sync.wake()
    return entry
  }

  /** Keeps several entries here, all or none. */
  async addAll(drafts: readonly EntryDraft[]): Promise<Entry[]> {
    const { person, yard } = this.#signedIn()
    const entries = await keepEntries(this.db, { drafts, person, yard, now: this.#now() })
    await this.refresh()
    void this.sync.wake()
    return entries
  }

  /** Keeps a photo or file here for an entry to name. */
  async addFile(file: Blob, name: string): Promise<Attachment> {
    const attachment = await keepFile(this.db, file, name)
    await this.refresh()
    return attachment
  }

  /** Bytes of a file: from this device, or from the record where there is a network. Null where neither has it. */
  async file(sha256: string): Promise<Blob | null> {
    const here = await this.db.files.get(sha256)
    if (here) return here.bytes
    try {
      const response = await fetch(`/api/files/${sha256}`)
      return response.ok ? await response.blob() : null
    } catch {
      return null
    }
  }

  /**
   * A person signs with their own PIN; they need not be the one signed in. The PIN goes to the server and nowhere else.
   * What was measured before goes first, so that the record judges with it.
   */
  async sign(draft: EntryDraft, person: Person, pin: string): Promise<SignOutcome> {
    const { yard } = this.#signedIn()
    await this.sync.wake()
    return this.#lock('sign', async () => {
      const entry = await keepEntry(this.db, { draft, person, yard, now: this.#now() })
      try {
        const answer = await this.api.sign(entry, pin)
        await this.sync.wake()
        await this.refresh()
        return answer.opened ? { kind: 'opened' } : { kind: 'shut', missing: answer.missing }
      } catch (error) {
        if (error instanceof NoAnswer || (error instanceof Refused && error.status >= 500)) {
          await this.refresh()
          return { kind: 'kept' }
        }
        await takeBack(this.db, entry)
        await this.refresh()
        return { kind: 'refused', why: error instanceof Error ? error.message : String(error) }
      }
    })
  }

  async signIn(person: string, pin: string): Promise<void> {
    await this.#keepSession(await this.api.signIn(person, pin))
    void this.sync.wake()
  }

  /** Signs out on the server where it answers, and here in any case. What is kept here stays. */
  async signOut(): Promise<void> {
    const before = await this.db.setting('session', NO_SESSION)
    await this.db.settings.put({ ...before, person: null, leaving: true })
    await this.refresh()
    await this.#tellLeaving()
  }

  /** Asks the server who is signed in. Without an answer, whoever was signed in here stays. */
  async askSession(): Promise<void> {
    try {
      if (await this.#tellLeaving()) await this.#keepSession(await this.api.session())
    } catch (error) {
      if (!(error instanceof NoAnswer) && !(error instanceof Refused)) throw error
      await this.refresh()
    } finally {
      this.#set({ asked: true })
    }
  }

  /** Puts entries read from a file among those kept here. How many were not here yet. */
  async takeIn(entries: readonly Entry[], files: readonly KeptFile[]): Promise<number> {
    const db = this.db
    const taken = await db.transaction('rw', db.entries, db.kept, db.files, async () => {
      let count = 0
      for (const entry of entries) {
        const here = (await db.kept.get(entry.id)) ?? (await db.entries.where('id').equals(entry.id).first())
        if (here !== undefined) continue
        const keptAt = new Date(this.#now()).toISOString()
        await db.kept.add({
          id: entry.id,
          entry,
          counter: entry.device.counter,
          state: 'waiting',
          tries: 0,
          fault: null,
          keptAt,
        })
        count += 1
      }
      for (const file of files) if ((await db.files.get(file.sha256)) === undefined) await db.files.add(file)
      return count
    })
    await this.refresh()
    void this.sync.wake()
    return taken
  }

  /** The last entries of the record, newest first. */
  lastEntries(count: number): Promise<StoredEntry[]> {
    return this.db.entries.orderBy('index').reverse().limit(count).toArray()
  }

  /** Ends the session on the server where a sign-out did not reach it. False while it still does not answer. */
  async #tellLeaving(): Promise<boolean> {
    const before = await this.db.setting('session', NO_SESSION)
    if (!before.leaving) return true
    try {
      await this.api.signOut()
    } catch (error) {
      if (error instanceof NoAnswer || error instanceof Refused) return false
      throw error
    }
    await this.db.settings.put({ ...before, leaving: false })
    return true
  }

  async #keepSession(answer: SessionAnswer): Promise<void> {
    const before = await this.db.setting('session', NO_SESSION)
    const person = answer.person && {
      id: answer.person.id,
      name: answer.person.name,
      role: answer.person.role,
    }
    await this.db.settings.put({
      key: 'session',
      person,
      yard: answer.yard ?? before.yard,
      demo: answer.demo,
      leaving: false,
    })
    this.#set({ needsSetup: answer.needsSetup })
    await this.refresh()
  }

  #signedIn(): { readonly person: Person; readonly yard: string } {
    const { session } = this.#snapshot
    if (!session?.person) throw new Error('Nobody is signed in on this device.')
    if (session.yard === null)
      throw new Error('There is no yard yet: bring in its file, or name it on the Yard page.')
    return { person: session.person, yard: session.yard }
  }

  #set(change: Partial<RecordSnapshot>): void {
    this.#snapshot = { ...this.#snapshot, ...change }
    for (const listener of this.#listeners) listener()
  }
}
