import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { EXAMPLE_BUNDLE } from '@castwright/engine/steel/incoming'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Entry, StoredEntry } from './entry.ts'
import { DRAWING, ENGINEER, ExampleDevice, FLOOR, LEAD, PANEL, YARD_NAME } from './example-entries.ts'
import type { Passport } from './passport.ts'
import { passportEntries } from './passport-entries.ts'
import { issuePassport } from './store/issue-passport.ts'
import { openStore } from './store/open.ts'
import type { Store } from './store/store.ts'
import { verifyPassport } from './verify-passport.ts'

const NOW = '2026-03-03T06:00:00.000Z'
const BUNDLE = { kind: 'bundle', id: 'B-7' } as const

let folder: string
let store: Store
let text: string
let entries: StoredEntry[]

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'castwright-passport-steel-'))
  store = await openStore({ folder, yard: YARD_NAME })
  const phone = new ExampleDevice('phone')
  const value = EXAMPLE_BUNDLE as unknown as Entry['value']
  const drawing = phone.make(LEAD, { kind: 'drawing', subject: PANEL, revision: 'A', value: DRAWING })
  const came = phone.make(FLOOR, { kind: 'bundle', subject: BUNDLE, value })
  const kept = phone.make(LEAD, {
    kind: 'release',
    subject: BUNDLE,
    about: came.id,
    reason: 'pitted',
    value: { decision: 'quarantine' },
  })
  const accepted = phone.make(ENGINEER, {
    kind: 'release',
    subject: BUNDLE,
    about: came.id,
    reason: 'brushed and weighed',
    value: { decision: 'accept' },
  })
  const cut = phone.make(FLOOR, {
    kind: 'cut',
    subject: { kind: 'bar', id: '12 500E' },
    value: {
      plan: null,
      line: null,
      diameter: 12,
      grade: '500E',
      from: { bundle: 'B-7' },
      stock: 6000,
      bars: 2,
      pieces: [{ length: 2900, count: 2, mark: 'MX1', panel: PANEL.id }],
      offcut: 200,
      kept: false,
    },
  })
  await store.append([drawing, came, kept, accepted, cut], { now: NOW })
  entries = passportEntries(PANEL.id, await store.read({ after: -1, limit: 100 }))
  const bytes = await issuePassport({
    store,
    panel: { job: 'J1', mark: 'W1', revision: 'A' },
    drawing: DRAWING as unknown as Passport['drawing'],
    plan: { engine: '0.1.0', family: 'nz', editions: [], figures: { mass: 6750 } },
    entries,
    now: NOW,
  })
  text = new TextDecoder().decode(bytes)
})
afterAll(async () => {
  await store.close()
  await rm(folder, { recursive: true, force: true })
})

describe('the passport of a panel that holds steel of a bundle', () => {
  it('carries the bundle, every decision about it and the cut, and passes', () => {
    expect(entries.map(({ kind }) => kind)).toEqual(['drawing', 'bundle', 'release', 'release', 'cut'])
    expect(verifyPassport(text, { key: store.publicKey })).toMatchObject({ verdict: 'pass', problems: [] })
  })

  it.each([
    ['the heat on the tag', '"heat":"H 40-22"', '"heat":"H 40-23"', 'bundle'],
    ['a decision', '"decision":"quarantine"', '"decision":"accept"', 'release'],
    ['the reading that it was made on', 'brushed and weighed', 'weighed', 'release'],
    ['the bundle that was cut', '"from":{"bundle":"B-7"}', '"from":{"bundle":"B-8"}', 'cut'],
  ])('fails where %s was changed, and names the entry', (_, from, to, kind) => {
    const changed = text.replace(from, to)
    expect(changed).not.toBe(text)
    const { verdict, problems } = verifyPassport(changed, { key: store.publicKey })
    expect(verdict).toBe('fail')
    expect(problems[0]?.at).toMatch(/^entries\[\d\]/)
    expect(problems[0]?.found).toContain(kind)
  })
})
