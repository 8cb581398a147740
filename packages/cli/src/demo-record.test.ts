import { createHash } from 'node:crypto'
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { DEMO_CLOCK, DEMO_ZONE, demoHistory, demoPeople, shiftDays } from '@castwright/demo'
import { panelStep } from '@castwright/engine/steps'
import type { Asked } from '@castwright/engine/working'
import { type Entry, fold, makeEntry, newDevice, type Person, type StoredEntry } from '@castwright/record'
import { openStore, type Store } from '@castwright/record/store'
import { createApp, panelCard } from '@castwright/server'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { loadDemo, readDemoClock, refuseDemo, settleDemoFolder } from './demo-record.ts'

let folder = ''
beforeEach(() => {
  folder = join(mkdtempSync(join(tmpdir(), 'castwright-demo-')), 'data')
})
afterEach(() => rmSync(join(folder, '..'), { recursive: true, force: true }))

const settle = (now: string, start: string | null = null) =>
  settleDemoFolder({ folder, start, now, middle: DEMO_CLOCK, timezone: DEMO_ZONE })

describe('clock of the invented job', () => {
  it('stands where the variable says, else at the machine’s time', () => {
    expect(readDemoClock({})).toBeNull()
    expect(readDemoClock({ CASTWRIGHT_CLOCK: '' })).toBeNull()
    expect(readDemoClock({ CASTWRIGHT_CLOCK: DEMO_CLOCK })).toBe(DEMO_CLOCK)
  })

  it.each([
    'yesterday',
    '2026-09-16',
    '2026-09-16T09:40:00',
    '2026-13-16T09:40:00Z',
    '2026-09-16T09:40:00+01:00',
  ])('refuses %s', (text) => {
    expect(() => readDemoClock({ CASTWRIGHT_CLOCK: text })).toThrow(
      /CASTWRIGHT_CLOCK: found .* an instant such as/,
    )
  })
})

describe('folder of the invented job', () => {
  it('settles once by how many days the job is moved: its middle is the yard’s today', async () => {
    // 00:30 in Dublin is still the day before in UTC: the yard's zone decides.
    const { days } = await settle('2026-09-20T23:30:00.000Z')
    expect(days).toBe(5)
    expect((await settle('2026-10-30T12:00:00.000Z')).days).toBe(5)
  })

  it('keeps the job’s own days where the clock is given', async () => {
    expect((await settle(DEMO_CLOCK, DEMO_CLOCK)).days).toBe(0)
    expect((await settle(DEMO_CLOCK, DEMO_CLOCK)).days).toBe(0)
  })

  it('is refused a clock after the job was moved', async () => {
    await settle('2026-10-01T12:00:00.000Z')
    await expect(settle(DEMO_CLOCK, DEMO_CLOCK)).rejects.toThrow(/CASTWRIGHT_CLOCK: .*was moved by 15 days/)
  })

  it('is no other record’s, nor the other way round', async () => {
    mkdirSync(folder)
    writeFileSync(join(folder, 'record.sqlite'), '')
    await expect(settle(DEMO_CLOCK)).rejects.toThrow(/--data: found .*another record/)
    rmSync(folder, { recursive: true })
    expect(() => refuseDemo({ folder })).not.toThrow()
    await settle(DEMO_CLOCK)
    expect(() => refuseDemo({ folder })).toThrow(/--data: found .*holds the invented job/)
  })

  it('is not opened where its mark cannot be read', async () => {
    mkdirSync(folder)
    writeFileSync(join(folder, 'invented-job.json'), '{"days":"many"}')
    await expect(settle(DEMO_CLOCK)).rejects.toThrow(/invented-job\.json/)
  })
})

describe('the invented job in a record', () => {
  let store: Store
  const { entries } = demoHistory()
  const load = async (now: string, days = 0) => {
    const marker = await settle(now, days === 0 ? now : null)
    await loadDemo({ store, folder, marker, entries: shiftDays(entries, days), now })
  }
  beforeEach(async () => {
    mkdirSync(folder)
    // The folder's mark comes first at a real start.
    await settle(DEMO_CLOCK, DEMO_CLOCK)
    store = await openStore({ folder, yard: entries[0]?.yard ?? '', clock: () => Date.parse(DEMO_CLOCK) })
  })
  afterEach(() => store.close())

  it('is whole, in order, each entry stored at its own time, and nothing in it is flagged', async () => {
    await load('2026-09-17T00:00:00.000Z')
    const stored = await wholeLog(store)
    expect(stored.length).toBe(entries.length)
    expect(stored.map(({ id, stored: at }) => `${id} ${at}`)).toEqual(
      entries.map(({ id, stored: at }) => `${id} ${at}`),
    )
    expect(fold(stored).flags.filter(({ kind }) => kind === 'gap' || kind === 'fork')).toEqual([])
    expect(JSON.parse(readFileSync(join(folder, 'invented-job.json'), 'utf8'))).toMatchObject({
      loaded: true,
    })
  })

  it('holds nothing that has not happened yet', async () => {
    const now = '2026-09-14T12:00:00.000Z'
    await load(now)
    const stored = await wholeLog(store)
    expect(stored.length).toBeGreaterThan(100)
    expect(stored.length).toBeLessThan(entries.length)
    expect(stored.every((entry) => entry.stored <= now && entry.seen <= now)).toBe(true)
  })

  it('goes on where a first start was broken off, and is not loaded again later', async () => {
    for (const { stored, ...entry } of entries.slice(0, 700)) void store.append([entry], { now: stored })
    await load('2026-09-17T00:00:00.000Z')
    const size = await store.size()
    expect(size).toBe(entries.length)
    const marker = await settle(DEMO_CLOCK)
    await loadDemo({ store, folder, marker, entries: [], now: DEMO_CLOCK })
    expect(await store.size()).toBe(size)
  })

  it('lets a lead open a hold once all that the engine asks for is recorded, and not before', async () => {
    await load(DEMO_CLOCK)
    const lead = demoPeople().find(({ role }) => role === 'lead') as Person
    const now = (): number => Date.parse(DEMO_CLOCK) + 60_000
    await store.people.add({ ...lead, pinHash: null, active: true })
    await store.people.signIn({
      tokenHash: TOKEN_HASH,
      person: lead.id,
      created: DEMO_CLOCK,
      expires: '2099-01-01T00:00:00.000Z',
    })
    const { app, log } = createApp({ store, clock: now })
    const state = await log.state()
    const panel = [...state.panels.keys()].find((id) => {
      const found = panelCard(state, id, 'set', log.now())
      return 'card' in found && found.card.state === 'open' && found.card.rows.every(waitsOnlyForPeople)
    })
    expect(panel).toBeDefined()
    const subject = { kind: 'panel', id: panel ?? '' } as const
    const revision = state.panels.get(panel ?? '')?.revision ?? ''
    let device = newDevice('tablet')
    const draw = (draft: Parameters<typeof makeEntry>[0]['draft']): Entry => {
      const made = makeEntry({ device, person: lead, yard: store.yard, now: now(), draft })
      device = made.device
      return made.entry
    }
    const send = async (...sent: Entry[]) => {
      const response = await app.request('http://localhost/api/entries', {
        method: 'POST',
        headers: {
          cookie: `castwright_session=${TOKEN}`,
          origin: 'http://localhost',
          'content-type': 'application/json',
        },
        body: JSON.stringify({ entries: sent }),
      })
      expect(response.status).toBe(200)
      return (
        (await response.json()) as { results: { status: string; opened?: boolean; missing?: string[] }[] }
      ).results
    }
    const request = () => draw({ kind: 'request', subject, step: 'set', value: null, revision })

    const [early] = await send(request())
    expect(early).toMatchObject({ status: 'stored', opened: false })
    expect(early?.missing?.length).toBeGreaterThan(0)

    const found = panelCard(state, subject.id, 'set', log.now())
    const rows = 'card' in found ? found.card.rows : []
    const asked = rows.flatMap((row) => (row.verdict === 'pass' || row.asked === null ? [] : [row.asked]))
    const values = asked.map((item) =>
      draw({
        kind: 'value',
        subject,
        step: 'set',
        check: item.id,
        value: goodValue(item),
        verdict: 'pass',
        revision,
      }),
    )
    const results = await send(...values, request())
    expect(results.at(-1)).toMatchObject({ status: 'stored', opened: true, missing: [] })
    const after = (await log.state()).panels.get(subject.id)?.steps.set.opening
    expect(after?.by).toEqual({ id: lead.id, name: lead.name, role: lead.role })
    expect(after?.rests).toEqual(expect.arrayContaining(values.map(({ id }) => id)))
    expect(panelStep('set').hold).toBe(true)
  })
})

const TOKEN = 'A'.repeat(43)
const TOKEN_HASH = createHash('sha256').update(TOKEN).digest('hex')

function waitsOnlyForPeople(row: { readonly verdict: string; readonly asked: Asked | null }): boolean {
  return row.verdict === 'pass' || row.asked !== null
}

function goodValue({ kind, low, high, choices }: Asked): number | boolean | string {
  if (kind === 'tick') return true
  if (kind === 'choice') return choices?.find(({ good }) => good)?.value ?? ''
  if (kind !== 'number') return 'seen'
  if (low != null && high != null) return (low + high) / 2
  return low ?? high ?? 1
}

async function wholeLog(store: Store): Promise<StoredEntry[]> {
  return store.read({ after: -1, limit: 100_000 })
}
