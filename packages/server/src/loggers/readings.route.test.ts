import type { StoredEntry } from '@castwright/record'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import {
  type Answer,
  drawingOf,
  FLOOR,
  LEAD,
  START,
  type TestVisitor,
  type TestYard,
  testYard,
  YARD,
} from '../testing.ts'

let yard: TestYard
let lead: TestVisitor
const MIXED = START - 6 * 3_600_000

beforeAll(async () => {
  yard = await testYard()
  lead = await yard.enter(LEAD)
  await lead.post('/api/import', YARD)
})
afterAll(() => yard.end())

let count = 0

/** A panel mixed six hours ago with a logger in it. */
async function poured(mixed: number | null = MIXED): Promise<{ panel: string; id: string; key: string }> {
  const mark = `W${++count}`
  const panel = `J1/${mark}`
  await lead.post('/api/import', { ...drawingOf(mark), job: 'J1', revision: 'A' })
  const value = { at: new Date(mixed ?? 0).toISOString() }
  if (mixed !== null)
    await lead.send(lead.entry({ kind: 'cast', subject: { kind: 'panel', id: panel }, value }))
  const { body } = await lead.post('/api/loggers', { name: `Box ${count}`, panel })
  return { panel, id: body.id as string, key: body.key as string }
}

const at = (hours: number, from = MIXED): string => new Date(from + hours * 3_600_000).toISOString()
const reading = (hours: number, celsius: number | null, channel = 'core', from = MIXED) => ({
  channel,
  at: at(hours, from),
  celsius,
})

/** As a device does: no cookie, no origin. */
function send(key: string | null, readings: unknown, headers: Record<string, string> = {}): Promise<Answer> {
  const authorization = key === null ? '' : `Bearer ${key}`
  return yard.visitor().post('/api/readings', { readings }, { authorization, origin: '', ...headers })
}

const logs = async (panel: string) => (await yard.log.state()).panels.get(panel)?.temperatures ?? []
const newest = async (): Promise<StoredEntry | undefined> =>
  (await yard.store.read({ after: (await yard.store.size()) - 2, limit: 1 }))[0]

describe('readings of a logger', () => {
  it('become one entry a channel of the panel, by the logger, durably', async () => {
    const { panel, id, key } = await poured()
    const { status, body } = await send(key, [
      reading(2, 24.5),
      reading(1, 22),
      { ...reading(1, 18.25, 'face'), at: '2026-03-10T05:00:00+02:00' },
      reading(2, null, 'face'),
    ])
    expect(status).toBe(200)
    expect(body).toMatchObject({ panel, stored: 3, known: 0, empty: 1 })
    expect(body.entries).toMatchObject([
      { channel: 'core', readings: 2 },
      { channel: 'face', readings: 1 },
    ])
    expect(await newest()).toMatchObject({
      kind: 'temperature',
      subject: { kind: 'panel', id: panel },
      step: 'cure',
      revision: 'A',
      unit: '°C',
      person: { id: `logger-${id}`, name: `Logger Box ${count}`, role: 'floor' },
      device: { id: 'record' },
      value: { channel: 'face', mixed: new Date(MIXED).toISOString(), readings: [[1, 18.25]] },
    })
    expect(await logs(panel)).toMatchObject([
      {
        channel: 'core',
        readings: [
          [1, 22],
          [2, 24.5],
        ],
      },
      { channel: 'face', readings: [[1, 18.25]] },
    ])
    expect(await yard.store.check()).toEqual([])
    expect((await lead.get('/api/loggers')).body).toContainEqual(
      expect.objectContaining({ id, last: { at: at(2), panel, channel: 'core', celsius: 24.5 } }),
    )
  })

  it('sent twice are stored once, also both at once, in another order and with more', async () => {
    const { panel, key } = await poured()
    const all = [1, 1.25, 1.5].map((hours) => reading(hours, 20 + hours))
    const [one, two] = await Promise.all([send(key, all), send(key, [...all].reverse())])
    expect([one?.body, two?.body].map((body) => [body?.stored, body?.known])).toEqual([
      [3, 0],
      [0, 3],
    ])
    const size = await yard.store.size()
    expect((await send(key, all)).body).toMatchObject({ stored: 0, known: 3, entries: [] })
    expect(await yard.store.size()).toBe(size)
    const more = await send(key, [...all, reading(1.75, 22), reading(1.75, 22)])
    expect(more.body).toMatchObject({ stored: 1, known: 4 })
    expect(await logs(panel)).toMatchObject([{ entries: { length: 2 }, readings: { length: 4 } }])
  })

  it('are found again to the millisecond at any hour', async () => {
    const { key } = await poured(MIXED + 1)
    const odd = Array.from({ length: 200 }, (_, index) => ({
      channel: 'core',
      at: new Date(MIXED + 1 + index * 61_337).toISOString(),
      celsius: index / 10,
    }))
    expect((await send(key, odd)).body).toMatchObject({ stored: 200 })
    expect((await send(key, odd)).body).toMatchObject({ stored: 0, known: 200 })
  })

  it('are refused row by row, and nothing of the sending is stored', async () => {
    const { panel, key } = await poured()
    await send(key, [reading(1, 21)])
    const size = await yard.store.size()
    const { status, body } = await send(key, [
      reading(2, 22),
      reading(-0.01, 20),
      reading(6 + 2.1 / 60, 20),
      reading(1, 25),
      reading(3, 24),
      reading(3, 25),
    ])
    expect([status, body.type]).toEqual([422, 'urn:castwright:problem:wrong-input'])
    expect(body.issues).toEqual([
      { path: 'readings[1].at', found: at(-0.01), expected: `a time not before mixing at ${at(0)}` },
      {
        path: 'readings[2].at',
        found: at(6 + 2.1 / 60),
        expected: `a time not more than two minutes after ${at(6)}, now by the server`,
      },
      { path: 'readings[3].celsius', found: '25', expected: '21 °C, as sent before for core at that time' },
      { path: 'readings[5].celsius', found: '25', expected: '24 °C, as sent before for core at that time' },
    ])
    expect(await yard.store.size()).toBe(size)
    expect(await logs(panel)).toMatchObject([{ readings: [[1, 21]] }])
    expect((await send(key, [reading(6 + 1.9 / 60, 20), reading(0, 20)])).status).toBe(200)
  })

  it('name a hundred faults at most', async () => {
    const { key } = await poured()
    const { body } = await send(
      key,
      Array.from({ length: 150 }, (_, index) => reading(-1 - index, 20)),
    )
    expect(body.issues).toHaveLength(100)
    expect(body.detail).toBe(
      '150 readings do not fit; nothing of this sending was stored. The first 100 are named.',
    )
  })

  it.each<[string, unknown, string]>([
    ['no list', undefined, 'readings'],
    ['none', [], 'readings'],
    ['too many', Array(5001).fill(reading(1, 20)), 'readings'],
    ['a time without a zone', [{ ...reading(1, 20), at: '2026-03-10T05:00:00' }], 'readings[0].at'],
    ['a time in words', [{ ...reading(1, 20), at: 'at noon' }], 'readings[0].at'],
    ['a temperature in words', [{ ...reading(1, 20), celsius: 'warm' }], 'readings[0].celsius'],
    ['no temperature', [{ channel: 'core', at: at(1) }], 'readings[0].celsius'],
    ['no channel', [{ ...reading(1, 20), channel: ' ' }], 'readings[0].channel'],
    [
      'a channel with a control character',
      [{ ...reading(1, 20), channel: 'a\u0007' }],
      'readings[0].channel',
    ],
    ['a field that nobody knows', [{ ...reading(1, 20), unit: 'F' }], 'readings[0].unit'],
    ['too many channels', Array.from({ length: 65 }, (_, index) => reading(1, 20, `c${index}`)), 'readings'],
  ])('with %s are refused by field', async (_, readings, path) => {
    const { key } = await poured()
    const { status, body } = await send(key, readings)
    expect(status).toBe(422)
    expect((body.issues as { path: string }[])[0]?.path).toBe(path)
  })

  it('wait until the logger has a panel and the panel a pour', async () => {
    const { id, key, panel } = await poured(null)
    const early = await send(key, [reading(1, 20)])
    expect([early.status, early.body.detail]).toEqual([
      409,
      `${panel} has no pour on record: hours from mixing are not known.`,
    ])
    await lead.json('PATCH', `/api/loggers/${id}`, { panel: null })
    const nowhere = await send(key, [reading(1, 20)])
    expect([nowhere.status, nowhere.body.detail]).toEqual([
      409,
      `Logger Box ${count} reads for no panel: move it to one first.`,
    ])
  })

  it('go to the panel that the logger was moved to, from then on; what was sent for the one before stays known', async () => {
    const [first, second] = [await poured(), await poured()]
    const { key, id } = first
    await send(key, [reading(5, 30)])
    await lead.json('PATCH', `/api/loggers/${id}`, { panel: second.panel })
    expect((await send(key, [reading(5, 30)])).body).toMatchObject({
      panel: second.panel,
      stored: 0,
      known: 1,
    })
    const buffered = await send(key, [reading(5.5, 31), reading(6, 32)])
    expect(buffered.status).toBe(422)
    const expected = `a time after ${at(6)}, when the logger left the panel before`
    expect(buffered.body.issues).toEqual([
      { path: 'readings[0].at', found: at(5.5), expected },
      { path: 'readings[1].at', found: at(6), expected },
    ])
    const before = yard.now
    yard.now = START + 600_000
    expect((await send(key, [reading(6.1, 22)])).body).toMatchObject({ panel: second.panel, stored: 1 })
    yard.now = before
    expect(await logs(second.panel)).toMatchObject([{ readings: [[6.1, 22]] }])
    expect(await logs(first.panel)).toMatchObject([{ readings: [[5, 30]] }])
  })

  it('stay known when the time of mixing is corrected', async () => {
    const { panel, key } = await poured()
    await send(key, [reading(1, 21), reading(2, 22)])
    const [pour] = (await yard.store.read({ after: -1, limit: 10_000 })).filter(
      ({ kind, subject }) => kind === 'cast' && subject.id === panel,
    )
    const subject = { kind: 'panel', id: panel } as const
    await lead.send(
      lead.entry({
        kind: 'correction',
        subject,
        about: pour?.id ?? '',
        value: { at: at(0.5) },
        reason: 'docket',
      }),
    )
    expect((await send(key, [reading(1, 21), reading(3, 23)])).body).toMatchObject({ stored: 1, known: 1 })
    expect(await logs(panel)).toMatchObject([
      {
        readings: [
          [0.5, 21],
          [1.5, 22],
          [2.5, 23],
        ],
      },
    ])
  })

  it('keep what no sensor reads apart, once', async () => {
    const { panel, key } = await poured()
    await send(key, [reading(1, 21), reading(1.5, -127), reading(2, 22)])
    expect((await send(key, [reading(1.5, -127)])).body).toMatchObject({ stored: 0, known: 1 })
    expect(await logs(panel)).toMatchObject([{ readings: { length: 2 }, broken: [[1.5, -127]] }])
  })
})

describe('the key of a logger', () => {
  it('is asked for before the body, and a cookie does not stand for it', async () => {
    const { panel } = await poured()
    for (const key of [null, 'x'.repeat(43), 'short']) {
      const { status, body, headers } = await send(key, 'nonsense')
      expect([status, body.type]).toEqual([401, 'urn:castwright:problem:wrong-key'])
      expect(headers.get('www-authenticate')).toBe('Bearer')
    }
    expect((await lead.post('/api/readings', { readings: [reading(1, 20)] })).status).toBe(401)
    const text = { 'content-type': 'text/plain', origin: '' }
    expect((await lead.ask('POST', '/api/readings', { body: '{', headers: text })).status).toBe(401)
    expect(await logs(panel)).toEqual([])
  })

  it('opens that one address and no other', async () => {
    const { id, key } = await poured()
    const authorization = `Bearer ${key}`
    const visitor = yard.visitor()
    expect((await visitor.get('/api/loggers', { authorization })).status).toBe(401)
    expect((await visitor.get('/api/entries', { authorization })).status).toBe(401)
    const moved = await visitor.json('PATCH', `/api/loggers/${id}`, { panel: null }, { authorization })
    expect(moved.status).toBe(401)
    const foreign = { authorization, origin: 'https://evil.example' }
    expect((await visitor.post('/api/entries', { entries: [] }, foreign)).status).toBe(403)
    // Another site cannot send the header unasked, so its origin says nothing here.
    expect((await send(key, [reading(1, 20)], { origin: 'https://evil.example' })).status).toBe(200)
  })

  it('ends with a new one and with the closing of the logger', async () => {
    const { id, key } = await poured()
    const { body } = await lead.json('PATCH', `/api/loggers/${id}`, { newKey: true })
    expect((await send(key, [reading(1, 20)])).status).toBe(401)
    expect((await send(body.key as string, [reading(1, 20)])).status).toBe(200)
    await lead.json('PATCH', `/api/loggers/${id}`, { active: false })
    const shut = await send(body.key as string, [reading(2, 20)])
    expect([shut.status, shut.body.type]).toEqual([403, 'urn:castwright:problem:closed-logger'])
  })

  it('that is wrong waits after twenty tries; a right one beside it does not', async () => {
    const own = await testYard({ addressOf: () => 'gateway' })
    try {
      const wrong = () =>
        own.visitor().post('/api/readings', {}, { authorization: `Bearer ${'y'.repeat(43)}`, origin: '' })
      const tried = []
      for (let time = 0; time < 21; time += 1) tried.push((await wrong()).status)
      expect(tried).toEqual([...Array(20).fill(401), 429])
      expect(Number((await wrong()).headers.get('retry-after'))).toBe(5)
      const { body } = await (await own.enter(LEAD)).post('/api/loggers', { name: 'Good' })
      const good = { authorization: `Bearer ${body.key}`, origin: '' }
      const { status } = await own.visitor().post('/api/readings', { readings: [reading(1, 20)] }, good)
      expect(status).toBe(409)
      own.now += 6000
      expect((await wrong()).status).toBe(401)
    } finally {
      await own.end()
    }
  })

  it('takes JSON of a megabyte at most', async () => {
    const { key } = await poured()
    const authorization = `Bearer ${key}`
    const visitor = yard.visitor()
    const text = { 'content-type': 'text/plain', authorization, origin: '' }
    expect((await visitor.ask('POST', '/api/readings', { body: '{}', headers: text })).status).toBe(415)
    const json = { 'content-type': 'application/json', authorization, origin: '' }
    const long = ' '.repeat(1024 * 1024 + 1)
    expect((await visitor.ask('POST', '/api/readings', { body: long, headers: json })).status).toBe(413)
    expect((await visitor.ask('POST', '/api/readings', { body: '{', headers: json })).status).toBe(400)
  })

  it('makes no entry that a person could send in the logger’s name', async () => {
    const { id } = await poured()
    const floor = await yard.enter(FLOOR)
    const value = { channel: 'core', readings: [[1, 20]] }
    const subject = { kind: 'panel', id: 'J1/W1' } as const
    const entry = floor.entry(
      { kind: 'temperature', subject, value },
      { id: `logger-${id}`, name: `Logger Box ${count}`, role: 'floor' },
    )
    expect((await floor.send(entry)).body.results).toMatchObject([{ status: 'refused' }])
  })
})
