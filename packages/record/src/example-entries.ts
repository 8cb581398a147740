import { type DeviceState, type Draft, makeEntry, newDevice } from './device.ts'
import type { Entry, Person, StoredEntry } from './entry.ts'
import { panelSubject } from './entry.ts'

/** A small invented yard for the tests of this package: people, devices and a clock that only moves when told. */
export const LEAD: Person = { id: 'p-lead', name: 'Rua Hale', role: 'lead' }
export const ENGINEER: Person = { id: 'p-eng', name: 'Ines Vale', role: 'engineer' }
export const FLOOR: Person = { id: 'p-floor', name: 'Tom Reed', role: 'floor' }
export const VIEWER: Person = { id: 'p-view', name: 'Ann Cole', role: 'viewer' }
export const YARD_NAME = 'example'
export const PANEL = panelSubject('J1', 'W1')
export const START = Date.parse('2026-03-02T05:00:00.000Z')

export const DRAWING = {
  format: 'castwright.drawing/1',
  mark: 'W1',
  job: 'J1',
  revision: 'A',
  outline: [
    [0, 0],
    [6000, 0],
    [6000, 3000],
    [0, 3000],
  ],
  thickness: 150,
  concrete: { strength: 40 },
  lifting: { strength: 15, load: 25, reference: 'LD-3', by: 'designer' },
}

export const YARD_FILE = {
  format: 'castwright.yard/1',
  name: 'Example yard',
  code: 'eu',
  timezone: 'Europe/Dublin',
}

/** A device in the hand of whoever is named; every entry moves its own clock on by a second. */
export class ExampleDevice {
  state: DeviceState
  #now: number
  #count = 0

  constructor(id: string, now = START) {
    this.state = newDevice(id)
    this.#now = now
  }

  at(now: number): this {
    this.#now = now
    return this
  }

  make(person: Person, draft: Draft): Entry {
    this.#now += 1000
    this.#count++
    const made = makeEntry({
      device: this.state,
      person,
      yard: YARD_NAME,
      now: this.#now,
      draft,
      nextId: () => exampleId(this.state.id, this.#count),
    })
    this.state = made.device
    return made.entry
  }

  value(check: string, value: Entry['value'], more: Partial<Draft> = {}, person = FLOOR): Entry {
    return this.make(person, {
      kind: 'value',
      subject: PANEL,
      step: 'set',
      check,
      value,
      verdict: 'pass',
      ...more,
    })
  }
}

/** A ULID that is the same in every run: the device's name and a count. */
export function exampleId(device: string, count: number): string {
  const letters = [...device]
    .map((letter) => '0123456789ABCDEFGHJKMNPQRSTVWXYZ'[letter.charCodeAt(0) % 32])
    .join('')
  return `0${letters.padEnd(15, '0').slice(0, 15)}${String(count).padStart(10, '0')}`
}

export function stored(entries: readonly Entry[], from = 0): StoredEntry[] {
  return entries.map((entry, index) => ({ ...entry, stored: entry.seen, index: from + index }))
}
