import {
  type Entry,
  makeEntry,
  newDevice,
  type Person,
  parseEntry,
  type StoredEntry,
} from '@castwright/record'
import type { Api, PushResult } from './api.ts'
import { NoAnswer, Refused } from './api.ts'
import type { Lock } from './lock.ts'

/** For tests: a record in memory that answers as the server does, with a network that can be cut at any point. */
export class FakeServer {
  readonly log: StoredEntry[] = []
  readonly files = new Map<string, number>()
  /** Names of the calls, in order. */
  readonly calls: string[] = []
  person: Person | null = ANNA
  pin = '481516'
  /** Server clock, ms. */
  now = Date.parse('2026-04-14T10:00:00.000Z')
  /** The request does not reach the server. */
  cutBefore: (call: string) => boolean = () => false
  /** The server does its work and the answer is lost. */
  cutAfter: (call: string) => boolean = () => false
  /** Why an entry is refused; null where it is taken. */
  refuse: (entry: Entry) => string | null = () => null
  readonly #device = { state: newDevice('server') }

  readonly api: Api = {
    session: () => this.#call('session', () => this.#session()),
    signIn: (id, pin) =>
      this.#call('signIn', () => {
        if (pin !== this.pin) throw new Refused(401, 'Wrong PIN.')
        this.person = PEOPLE.find((person) => person.id === id) ?? null
        return this.#session()
      }),
    signOut: () =>
      this.#call('signOut', () => {
        this.person = null
      }),
    people: () => this.#call('people', () => PEOPLE.map((person) => ({ ...person, active: true }))),
    addPerson: () => this.#call('addPerson', () => undefined),
    changePerson: () => this.#call('changePerson', () => undefined),
    loggers: () => this.#call('loggers', () => []),
    addLogger: ({ name, panel }) =>
      this.#call('addLogger', () => ({ id: 'l1', name, panel, active: true, last: null })),
    changeLogger: (id) =>
      this.#call('changeLogger', () => ({ id, name: 'Box', panel: null, active: true, last: null })),
    entries: (after, limit) =>
      this.#call('entries', () => {
        this.#signedIn()
        const entries = this.log.slice(after + 1, after + 1 + limit)
        return { entries, size: this.log.length, head: null, now: this.#stamp() }
      }),
    push: (entries) =>
      this.#call('push', () => {
        this.#signedIn()
        return {
          results: entries.map((entry) => this.#take(entry)),
          size: this.log.length,
          now: this.#stamp(),
        }
      }),
    sign: (entry, pin) =>
      this.#call('sign', () => {
        if (pin !== this.pin) throw new Refused(401, 'Wrong PIN.')
        const { index = -1 } = this.#take(entry)
        return { request: index, opened: false, missing: ['Slump: not known'] }
      }),
    putFile: (sha256, bytes) =>
      this.#call('putFile', () => {
        this.files.set(sha256, bytes.size)
      }),
    head: () => this.#call('head', () => ({ size: 0, root: '', time: '', yard: YARD, signature: '' })),
    key: () => this.#call('key', () => ({ publicKey: '', yard: YARD })),
    bring: () => this.#call('bring', () => ({ stored: 0, ids: [] })),
  }

  /** An entry that another device put into the record. */
  addFromElsewhere(check: string, value: number): StoredEntry {
    const made = makeEntry({
      device: this.#device.state,
      person: ANNA,
      yard: YARD,
      now: this.now,
      draft: { kind: 'value', subject: { kind: 'panel', id: 'J/W1' }, step: 'deliver', check, value },
    })
    this.#device.state = made.device
    return this.#store(made.entry)
  }

  async #call<T>(name: string, work: () => T): Promise<T> {
    this.calls.push(name)
    await Promise.resolve()
    if (this.cutBefore(name)) throw new NoAnswer('cut')
    const answer = structuredClone(work())
    if (this.cutAfter(name)) throw new NoAnswer('cut')
    return answer
  }

  #take(sent: Entry): PushResult {
    const entry = parseEntry(structuredClone(sent))
    const known = this.log.find(({ id }) => id === entry.id)
    if (known) return { id: entry.id, status: 'known', index: known.index }
    const reason = entry.person.id === this.person?.id ? this.refuse(entry) : 'Not the person of the session.'
    if (reason !== null) return { id: entry.id, status: 'refused', reason }
    return { id: entry.id, status: 'stored', index: this.#store(entry).index }
  }

  #store(entry: Entry): StoredEntry {
    const stored = { ...entry, stored: this.#stamp(), index: this.log.length }
    this.log.push(stored)
    return stored
  }

  #session() {
    return { person: this.person, yard: YARD, now: this.#stamp(), demo: false, needsSetup: false }
  }

  #signedIn(): void {
    if (this.person === null) throw new Refused(401, 'Nobody is signed in.')
  }

  #stamp(): string {
    return new Date(this.now).toISOString()
  }
}

export const YARD = 'Kettle Lane'
export const ANNA: Person = { id: 'anna', name: 'Anna', role: 'lead' }
export const BEN: Person = { id: 'ben', name: 'Ben', role: 'floor' }
const PEOPLE = [ANNA, BEN]

/** One lock for all tabs of a test, as a browser has one for all tabs of a device. */
export function sharedLock(): Lock {
  const queues = new Map<string, Promise<unknown>>()
  return (name, work) => {
    const run = (queues.get(name) ?? Promise.resolve()).then(work, work)
    queues.set(
      name,
      run.catch(() => {}),
    )
    return run
  }
}
