import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { DRAWING_FORMAT, type Drawing } from '@castwright/engine/panel'
import { panelStep, stepIsDone } from '@castwright/engine/steps'
import { YARD_FORMAT } from '@castwright/engine/yard'
import {
  type DeviceState,
  type Draft,
  type Entry,
  makeEntry,
  newDevice,
  type Person,
} from '@castwright/record'
import { openStore, type Store } from '@castwright/record/store'
import type { z } from '@hono/zod-openapi'
import { type AppInput, type CastwrightApp, createApp } from './app.ts'
import type { CardMaker } from './entries/cards.ts'
import { hashPin } from './people/pin.ts'
import { SESSION_COOKIE, startSession } from './people/sessions.service.ts'

/** The app in process, on a store of its own in a new folder, with a clock that stands until it is moved. */
export interface TestYard extends CastwrightApp {
  readonly store: Store
  readonly folder: string
  readonly defects: unknown[]
  now: number
  /** Signs a person in and gives their device. */
  readonly enter: (person: Person) => Promise<TestVisitor>
  readonly visitor: () => TestVisitor
  readonly end: () => Promise<void>
}

export interface Answer {
  readonly status: number
  readonly headers: Headers
  /** Held against the form in the document before the test sees it. */
  readonly body: Record<string, unknown>
  readonly bytes: Uint8Array
}

export const PIN = '48151623'
export const HOST = 'http://localhost'

export const LEAD: Person = { id: 'lead-1', name: 'Ada Lead', role: 'lead' }
export const OTHER_LEAD: Person = { id: 'lead-2', name: 'Olu Lead', role: 'lead' }
export const ENGINEER: Person = { id: 'engineer-1', name: 'Bo Engineer', role: 'engineer' }
export const FLOOR: Person = { id: 'floor-1', name: 'Cy Floor', role: 'floor' }
export const VIEWER: Person = { id: 'viewer-1', name: 'Di Viewer', role: 'viewer' }
const EVERYONE = [LEAD, OTHER_LEAD, ENGINEER, FLOOR, VIEWER]

export const START = Date.parse('2026-03-10T08:00:00.000Z')

let hashed: Promise<string> | undefined

export async function testYard(more: Partial<AppInput> = {}): Promise<TestYard> {
  const folder = mkdtempSync(join(tmpdir(), 'castwright-server-'))
  const held = { now: START }
  const clock = (): number => held.now
  const store = await openStore({ folder, clock, yard: 'test-yard' })
  hashed ??= hashPin(PIN)
  for (const person of EVERYONE) {
    await store.people.add({ ...person, pinHash: await hashed, active: true })
  }
  const defects: unknown[] = []
  const made = createApp({
    store,
    clock,
    makeCard: simpleCard,
    report: (error) => defects.push(error),
    ...more,
  })
  const yard: TestYard = {
    ...made,
    store,
    folder,
    defects,
    get now() {
      return held.now
    },
    set now(value) {
      held.now = value
    },
    visitor: () => new TestVisitor(yard),
    async enter(person) {
      const visitor = new TestVisitor(yard, person)
      // Past the PIN, which has its own tests and takes its time.
      visitor.cookie = `${SESSION_COOKIE}=${await startSession({ people: store.people, clock }, person.id)}`
      return visitor
    },
    async end() {
      made.notices.closeAll()
      await made.log.idle()
      await store.close()
      rmSync(folder, { recursive: true, force: true })
    },
  }
  return yard
}

/** Somebody with a browser: keeps the cookie, sends the origin, and makes entries as a device does. */
export class TestVisitor {
  cookie = ''
  device: DeviceState

  constructor(
    private readonly yard: TestYard,
    readonly person: Person = LEAD,
  ) {
    this.device = newDevice(`device-of-${person.id}-${Math.random().toString(36).slice(2, 8)}`)
  }

  get(path: string, headers: Record<string, string> = {}): Promise<Answer> {
    return this.ask('GET', path, { headers })
  }

  post(path: string, body: unknown, headers: Record<string, string> = {}): Promise<Answer> {
    return this.json('POST', path, body, headers)
  }

  json(method: string, path: string, body: unknown, headers: Record<string, string> = {}): Promise<Answer> {
    return this.ask(method, path, {
      body: JSON.stringify(body),
      headers: { 'content-type': 'application/json', ...headers },
    })
  }

  async ask(
    method: string,
    path: string,
    init: { body?: string | Uint8Array<ArrayBuffer>; headers?: Record<string, string> } = {},
  ): Promise<Answer> {
    const headers = new Headers({ origin: HOST, host: 'localhost', ...init.headers })
    for (const [name, value] of [...headers]) if (value === '') headers.delete(name)
    if (this.cookie !== '') headers.set('cookie', this.cookie)
    const response = await this.yard.app.request(`${HOST}${path}`, {
      method,
      headers,
      ...(init.body === undefined ? {} : { body: init.body }),
    })
    const set = response.headers.get('set-cookie')
    if (set !== null) this.cookie = set.split(';')[0]?.replace(/^castwright_session=$/, '') ?? ''
    const bytes = new Uint8Array(await response.arrayBuffer())
    const type = response.headers.get('content-type') ?? ''
    const body = /json/.test(type) ? JSON.parse(new TextDecoder().decode(bytes)) : {}
    holdToContract(this.yard, { method, path, status: response.status, type, body })
    return { status: response.status, headers: response.headers, body, bytes }
  }

  /** The next entry of this device; `person` where somebody else signs on it. */
  entry(draft: Draft, person: Person = this.person): Entry {
    const made = makeEntry({
      device: this.device,
      person,
      yard: this.yard.store.yard,
      now: this.yard.now,
      draft,
    })
    this.device = made.device
    return made.entry
  }

  send(...entries: readonly unknown[]): Promise<Answer> {
    return this.post('/api/entries', { entries })
  }
}

interface Seen {
  readonly method: string
  readonly path: string
  readonly status: number
  readonly type: string
  readonly body: unknown
}

/** Every answer of a test fits what the document says of its route: status known, content type known, form kept. */
function holdToContract({ app }: TestYard, seen: Seen): void {
  const path = seen.path.split('?')[0] ?? ''
  if (!path.startsWith('/api/') || path === '/api/openapi.json') return
  const route = app.openAPIRegistry.definitions
    .flatMap((definition) => (definition.type === 'route' ? [definition.route] : []))
    .find((one) => one.method.toUpperCase() === seen.method && fits(path, one.path))
  if (route === undefined) {
    if (![404, 405].includes(seen.status)) throw new Error(`${seen.method} ${path} is in no document`)
    return
  }
  const answer = route.responses[seen.status]
  if (answer === undefined || !('content' in answer)) {
    throw new Error(`${seen.method} ${path} gave ${seen.status}, which the document does not list`)
  }
  const type = seen.type.split(';')[0]?.trim() ?? ''
  const content = answer.content?.[type]
  const form = content !== undefined && 'schema' in content ? content.schema : undefined
  if (form === undefined) throw new Error(`${seen.method} ${path} gave ${type}, not in the document`)
  if (!/json/.test(type)) return
  const result = (form as z.ZodType).safeParse(seen.body)
  if (!result.success) {
    throw new Error(`${seen.method} ${path} ${seen.status} does not fit its form: ${result.error.message}`)
  }
}

function fits(path: string, pattern: string): boolean {
  return new RegExp(`^${pattern.replace(/\{[^}]+\}/g, '[^/]+')}$`).test(path)
}

/** What each step of the simple card below asks for. */
const ASKED: Readonly<Record<string, readonly string[]>> = { set: ['cover', 'chairs'], finish: ['surface'] }

/** A card that is ready when its few asked values are on record and pass: stands in for plan and card of the engine. */
export const simpleCard: CardMaker = (state, panel, step) => {
  const facts = state.panels.get(panel)
  if (facts === undefined || facts.drawing === null) return { missing: `a drawing of ${panel} in the record` }
  const values = facts.steps[step].values
  const asked = ASKED[step] ?? []
  const missing = asked.filter((id) => values[id]?.verdict !== 'pass').map((id) => `${id}: not known`)
  const done = stepIsDone(step, facts)
  return {
    facts,
    plan: { editions: ['Test code 1'] } as never,
    card: {
      step,
      state: done ? 'done' : 'open',
      rows: [],
      verdict: missing.length === 0 ? 'pass' : 'unknown',
      ready: !done && missing.length === 0,
      answer: '',
      missing,
      entitled: panelStep(step).hold ? ['lead'] : ['floor', 'lead', 'engineer'],
      rests: asked.flatMap((id) => values[id]?.entry ?? []),
      carried: [],
    },
  }
}

export function drawingOf(mark: string, more: Partial<Drawing> = {}): Drawing {
  return {
    format: DRAWING_FORMAT,
    mark,
    outline: [
      [0, 0],
      [6000, 0],
      [6000, 3000],
      [0, 3000],
    ],
    thickness: 150,
    concrete: { strength: 40 },
    ...more,
  }
}

export const YARD = { format: YARD_FORMAT, name: 'Mill End', code: 'eu', timezone: 'Europe/Dublin' } as const
