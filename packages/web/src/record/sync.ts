import { issueSentence } from '@castwright/engine/working'
import type { StoredEntry } from '@castwright/record'
import { type Api, type EntriesAnswer, NoAnswer, type PushResult, Refused } from './api.ts'
import { type DeviceDatabase, type KeptEntry, NO_CLOCK, NO_CURSOR, NO_SESSION } from './database.ts'
import type { Lock } from './lock.ts'

export interface SyncState {
  /** Null until the server was asked once. */
  readonly online: boolean | null
  readonly doing: 'nothing' | 'reading' | 'sending'
  /** Why nothing moves: `sign-in` is wanted, or this device holds another record than the server. */
  readonly halt: 'sign-in' | 'other-record' | null
  /** The last fault in words. */
  readonly fault: string | null
  /** When the record last answered, by this device's clock. */
  readonly at: string | null
}

export interface SyncOptions {
  readonly db: DeviceDatabase
  readonly api: Api
  readonly lock: Lock
  /** The device's clock, ms. */
  readonly now: () => number
  readonly onState?: (state: SyncState) => void
  /** Runs work later; gives a way to call it off. */
  readonly later?: (work: () => void, ms: number) => () => void
  /** 0 to 1: spreads the tries of many devices. */
  readonly chance?: () => number
}

const READ_BATCH = 1000
const SEND_BATCH = 200
/** ms: how long until the next try, doubled at each failure up to a minute, and a quiet look every five minutes. */
const FIRST_WAIT = 1000
const LONGEST_WAIT = 60_000
const QUIET_WAIT = 300_000

/**
 * Carries entries between this device and the record. An entry leaves the device's own list only when it was read back from
 * the record; sending twice is harmless, so a broken connection needs no care.
 */
export class Sync {
  readonly #options: Required<SyncOptions>
  #state: SyncState = { online: null, doing: 'nothing', halt: null, fault: null, at: null }
  #failures = 0
  #callOff: (() => void) | null = null
  #running: Promise<void> | null = null
  #again = false
  #stopped = false

  constructor(options: SyncOptions) {
    this.#options = { onState: () => {}, later: laterByTimer, chance: Math.random, ...options }
  }

  get state(): SyncState {
    return this.#state
  }

  /** Something changed here or there: look now. Calls made while it looks lead to one more look. */
  wake(): Promise<void> {
    if (this.#stopped) return Promise.resolve()
    this.#callOff?.()
    this.#callOff = null
    if (this.#running) {
      this.#again = true
      return this.#running
    }
    this.#running = this.#run().finally(() => {
      this.#running = null
    })
    return this.#running
  }

  stop(): void {
    this.#stopped = true
    this.#callOff?.()
    this.#callOff = null
  }

  /** Forgets what was read and reads the record anew. What was made here and not sent stays. */
  async readAgain(): Promise<void> {
    const { db } = this.#options
    await db.transaction('rw', db.entries, db.settings, async () => {
      await db.entries.clear()
      await db.settings.put(NO_CURSOR)
    })
    this.#set({ halt: null, fault: null })
    await this.wake()
  }

  async #run(): Promise<void> {
    do {
      this.#again = false
      await this.#round()
    } while (this.#again && this.#failures === 0 && !this.#stopped)
    if (!this.#stopped) this.#callOff = this.#options.later(() => void this.wake(), this.#wait())
  }

  #wait(): number {
    if (this.#failures === 0) return QUIET_WAIT
    const wait = Math.min(LONGEST_WAIT, FIRST_WAIT * 2 ** (this.#failures - 1))
    return wait * (0.75 + 0.5 * this.#options.chance())
  }

  async #round(): Promise<void> {
    try {
      const { person } = await this.#options.db.setting('session', NO_SESSION)
      if (person === null) {
        this.#set({ doing: 'nothing', halt: null }) // the sign-in comes first
        return
      }
      await this.#pull()
      if (await this.#push()) await this.#pull()
      this.#failures = 0
      this.#set({ online: true, doing: 'nothing', halt: null, fault: null, at: this.#stamp() })
    } catch (error) {
      this.#fail(error)
    }
  }

  #fail(error: unknown): void {
    if (error instanceof OtherRecord) {
      this.#failures = 0
      this.#set({ online: true, doing: 'nothing', halt: 'other-record', fault: error.message })
    } else if (error instanceof Refused && error.status === 401) {
      this.#failures = 0
      this.#set({ online: true, doing: 'nothing', halt: 'sign-in', fault: null })
    } else {
      this.#failures += 1
      const online = !(error instanceof NoAnswer)
      this.#set({ online, doing: 'nothing', fault: error instanceof Error ? error.message : String(error) })
    }
  }

  /** Reads on from where this device stands. What comes back of our own leaves the list of what is kept here. */
  async #pull(): Promise<void> {
    const { db, api } = this.#options
    for (;;) {
      const { next } = await db.setting('cursor', NO_CURSOR)
      if (next > 0 || this.#state.doing !== 'sending') this.#set({ doing: 'reading' })
      const asked = this.#options.now()
      const answer = await api.entries(next - 1, READ_BATCH)
      await this.#compareClocks(asked, answer.now)
      if (answer.size < next) throw new OtherRecord(answer.size, next)
      await this.#store(answer, next)
      if (answer.entries.length < READ_BATCH && next + answer.entries.length >= answer.size) return
      if (answer.entries.length === 0) return
    }
  }

  async #store(answer: EntriesAnswer, next: number): Promise<void> {
    const { db } = this.#options
    const entries = [...answer.entries] as StoredEntry[]
    const gap = entries.findIndex((entry, place) => entry.index !== next + place)
    if (gap >= 0) throw new Error(`The record skipped entry ${next + gap}: found ${entries[gap]?.index}.`)
    await db.transaction('rw', db.entries, db.kept, db.settings, async () => {
      await db.entries.bulkPut(entries)
      await db.kept.bulkDelete(entries.map((entry) => entry.id))
      const before = await db.setting('cursor', NO_CURSOR) // another tab may have read further
      await db.settings.put({
        key: 'cursor',
        next: Math.max(before.next, next + entries.length),
        size: Math.max(before.size, answer.size),
        at: this.#stamp(),
      })
    })
  }

  /** Sends what waits, in the order it was made. True where something was sent. */
  #push(): Promise<boolean> {
    return this.#options.lock('send', async () => {
      await this.#pushFiles()
      const { db } = this.#options
      const { person } = await db.setting('session', NO_SESSION)
      if (person === null) return false
      const tried = new Set<string>()
      for (;;) {
        const waiting = await db.kept.where('state').equals('waiting').sortBy('counter')
        const batch = waiting
          .filter(({ id, entry }) => entry.person.id === person.id && !tried.has(id))
          .slice(0, SEND_BATCH)
        if (batch.length === 0) return tried.size > 0
        this.#set({ doing: 'sending' })
        for (const { id } of batch) tried.add(id)
        await this.#pushBatch(batch)
      }
    })
  }

  async #pushBatch(batch: readonly KeptEntry[]): Promise<void> {
    const { db, api } = this.#options
    try {
      const answer = await api.push(batch.map(({ entry }) => entry))
      for (const result of answer.results) {
        if (result.status === 'refused') await this.#keepRefused(result.id, refusalText(result))
      }
    } catch (error) {
      const told = error instanceof Refused && !error.passing && error.status !== 401
      if (told && batch.length > 1) {
        // The server took none because of one: each alone shows which.
        for (const one of batch) await this.#pushBatch([one])
        return
      }
      if (told) {
        await this.#keepRefused(batch[0]?.id ?? '', error.message)
        return
      }
      const fault = error instanceof Error ? error.message : String(error)
      await db.kept
        .where('id')
        .anyOf(batch.map(({ id }) => id))
        .modify((row, place) => {
          place.value = { ...row, tries: row.tries + 1, fault }
        })
      throw error
    }
  }

  async #keepRefused(id: string, fault: string): Promise<void> {
    await this.#options.db.kept
      .where('id')
      .equals(id)
      .modify((row, place) => {
        place.value = { ...row, state: 'refused', tries: row.tries + 1, fault }
      })
  }

  async #pushFiles(): Promise<void> {
    const { db, api } = this.#options
    for (const file of await db.files.where('state').equals('waiting').toArray()) {
      try {
        await api.putFile(file.sha256, file.bytes, file.type)
        await db.files.update(file.sha256, { state: 'sent', fault: null })
      } catch (error) {
        const fault = error instanceof Error ? error.message : String(error)
        const refused = error instanceof Refused && !error.passing && error.status !== 401
        await db.files.update(file.sha256, {
          state: refused ? 'refused' : 'waiting',
          tries: file.tries + 1,
          fault,
        })
        if (!refused) throw error
      }
    }
  }

  async #compareClocks(asked: number, serverNow: string): Promise<void> {
    const { db, now } = this.#options
    const server = Date.parse(serverNow)
    if (!Number.isFinite(server)) return
    const offset = Math.round((asked + now()) / 2 - server)
    const before = await db.setting('clock', NO_CLOCK)
    if (before.offset === null || Math.abs(before.offset - offset) > 500) {
      await db.settings.put({ key: 'clock', offset })
    }
  }

  #stamp(): string {
    return new Date(this.#options.now()).toISOString()
  }

  #set(change: Partial<SyncState>): void {
    this.#state = { ...this.#state, ...change }
    this.#options.onState(this.#state)
  }
}

/** This device read further than the server's record goes: it is not the same record. */
class OtherRecord extends Error {
  constructor(size: number, next: number) {
    super(
      `This device has read ${next} entries; the record on the server has ${size}. It is not the same record.`,
    )
    this.name = 'OtherRecord'
  }
}

function refusalText({ reason = 'The record refused it.', issues = [], missing = [] }: PushResult): string {
  const fields = issues.map((issue) => `${issueSentence(issue)}.`)
  return [reason, ...missing.map((gap) => `${gap}.`), ...fields].join(' ')
}

function laterByTimer(work: () => void, ms: number): () => void {
  const timer = setTimeout(work, ms)
  return () => clearTimeout(timer)
}
