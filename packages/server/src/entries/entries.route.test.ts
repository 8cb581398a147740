import { type Entry, fold, type StoredEntry, verifyHead } from '@castwright/record'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import {
  drawingOf,
  ENGINEER,
  FLOOR,
  LEAD,
  PIN,
  type TestVisitor,
  type TestYard,
  testYard,
  VIEWER,
  YARD,
} from '../testing.ts'

let yard: TestYard
let lead: TestVisitor
let floor: TestVisitor
beforeEach(async () => {
  yard = await testYard()
  lead = await yard.enter(LEAD)
  floor = await yard.enter(FLOOR)
})
afterEach(() => yard.end())

const W1 = { kind: 'panel', id: 'J1/W1' } as const

function drawing(visitor: TestVisitor, mark = 'W1', revision = 'A'): Entry {
  return visitor.entry({
    kind: 'drawing',
    subject: { kind: 'panel', id: `J1/${mark}` },
    revision,
    value: drawingOf(mark) as never,
  })
}

function seen(
  visitor: TestVisitor,
  check: string,
  verdict: 'pass' | 'fail' = 'pass',
  step = 'set' as const,
): Entry {
  return visitor.entry({ kind: 'value', subject: W1, step, check, value: true, verdict, revision: 'A' })
}

function request(visitor: TestVisitor, person = LEAD, revision = 'A'): Entry {
  return visitor.entry({ kind: 'request', subject: W1, step: 'set', value: null, revision }, person)
}

interface Result {
  id: string
  status: string
  index?: number
  reason?: string
  issues?: { path: string }[]
  missing?: string[]
  opened?: boolean
}

async function send(visitor: TestVisitor, ...entries: readonly unknown[]): Promise<Result[]> {
  const { status, body } = await visitor.send(...entries)
  expect(status).toBe(200)
  return body.results as unknown as Result[]
}

async function all(): Promise<StoredEntry[]> {
  return (await lead.get('/api/entries?limit=5000')).body.entries as unknown as StoredEntry[]
}

describe('sending entries', () => {
  it('stores them in order, signs the head and gives them back', async () => {
    const results = await send(lead, drawing(lead), seen(lead, 'cover'))
    expect(results.map(({ status, index }) => [status, index])).toEqual([
      ['stored', 0],
      ['stored', 1],
    ])
    const { body } = await floor.get('/api/entries')
    expect(body.size).toBe(2)
    expect((body.entries as StoredEntry[]).map(({ kind }) => kind)).toEqual(['drawing', 'value'])
    const key = (await yard.visitor().get('/api/key')).body
    expect(verifyHead(body.head as never, key.publicKey as string)).toBe(true)
  })

  it('twice changes nothing', async () => {
    const entries = [drawing(lead), seen(lead, 'cover')]
    await send(lead, ...entries)
    const again = await send(lead, ...entries)
    expect(again.map(({ status, index }) => [status, index])).toEqual([
      ['known', 0],
      ['known', 1],
    ])
    const inOne = seen(lead, 'chairs')
    expect((await send(lead, inOne, inOne)).map(({ status }) => status)).toEqual(['stored', 'known'])
    expect((await all()).length).toBe(3)
  })

  it('with the id of another entry is refused', async () => {
    const entry = drawing(lead)
    await send(lead, entry)
    const [result] = await send(lead, { ...entry, revision: 'B', reason: 'changed' })
    expect(result).toMatchObject({ status: 'refused', reason: expect.stringMatching(/id/) })
  })

  it('refuses each wrong one by itself with its fields', async () => {
    const good = drawing(lead)
    const results = await send(lead, { ...good, colour: 'red' }, 'no entry', good, { ...good, id: 'x' }, null)
    expect(results.map(({ status }) => status)).toEqual([
      'refused',
      'refused',
      'stored',
      'refused',
      'refused',
    ])
    expect(results[0]?.issues).toEqual([expect.objectContaining({ path: 'colour' })])
    expect(results[3]?.issues).toEqual([expect.objectContaining({ path: 'id' })])
  })

  it('refuses a drawing whose concrete falls into pieces', async () => {
    const entry = drawing(lead)
    const cut = [
      {
        mark: 'O',
        outline: [
          [2000, -10],
          [3000, -10],
          [3000, 3010],
          [2000, 3010],
        ],
      },
    ]
    const value = { ...(entry.value as object), openings: cut }
    const [result] = await send(lead, { ...entry, value })
    expect(result?.status).toBe('refused')
    expect(result?.issues?.[0]?.path).toMatch(/openings/)
  })

  it('refuses another person’s, another yard’s and another role’s', async () => {
    const entry = drawing(lead)
    expect((await send(floor, entry))[0]?.reason).toMatch(/Ada Lead.*Cy Floor/)
    expect((await send(lead, { ...entry, yard: 'elsewhere' }))[0]?.reason).toMatch(/elsewhere/)
    expect((await send(lead, { ...entry, person: { ...LEAD, role: 'engineer' } }))[0]?.status).toBe('refused')
    expect((await send(floor, drawing(floor)))[0]?.reason).toMatch(/a floor may not make a drawing/)
    const viewer = await yard.enter(VIEWER)
    expect((await send(viewer, seen(viewer, 'cover')))[0]?.reason).toMatch(/a viewer may not/)
    expect((await all()).length).toBe(0)
  })

  it('refuses an opening, from whomever', async () => {
    await send(lead, drawing(lead))
    const opening = lead.entry({
      kind: 'opening',
      subject: W1,
      step: 'set',
      value: null,
      rests: [],
      revision: 'A',
    })
    expect((await send(lead, opening))[0]?.reason).toMatch(/by the record alone/)
    expect((await all()).length).toBe(1)
  })

  it('refuses a floor’s correction of a lead’s decision, also sent together', async () => {
    await send(lead, drawing(lead))
    const decision = lead.entry({
      kind: 'decision',
      subject: W1,
      step: 'finish',
      check: 'surface',
      value: null,
      reason: 'looked at',
      revision: 'A',
    })
    await send(lead, decision)
    const correction = (about: string) =>
      floor.entry({ kind: 'correction', subject: W1, about, value: null, reason: 'no' })
    expect((await send(floor, correction(decision.id)))[0]).toMatchObject({ status: 'refused' })
    const own = floor.entry({
      kind: 'value',
      subject: W1,
      step: 'set',
      check: 'cover',
      value: true,
      revision: 'A',
    })
    expect((await send(floor, own, correction(own.id))).map(({ status }) => status)).toEqual([
      'stored',
      'stored',
    ])
  })

  it('needs somebody signed in, JSON, a body that fits and not too many', async () => {
    expect((await yard.visitor().send(drawing(lead))).status).toBe(401)
    expect((await lead.post('/api/entries', { entries: [] })).status).toBe(422)
    expect((await lead.post('/api/entries', { entries: [], more: 1 })).body.issues).toContainEqual(
      expect.objectContaining({ path: 'more' }),
    )
    expect((await lead.post('/api/entries', { entries: Array(1001).fill(0) })).status).toBe(422)
    expect(
      (await lead.ask('POST', '/api/entries', { body: '{}', headers: { 'content-type': 'text/plain' } }))
        .status,
    ).toBe(415)
    expect(
      (await lead.ask('POST', '/api/entries', { body: '{', headers: { 'content-type': 'application/json' } }))
        .status,
    ).toBe(400)
    const big = { entries: ['x'.repeat(8 * 1024 * 1024)] }
    expect((await lead.post('/api/entries', big)).status).toBe(413)
  })
})

describe('reading entries', () => {
  it('goes on after an index', async () => {
    await send(lead, drawing(lead, 'W1'), drawing(lead, 'W2'), drawing(lead, 'W3'))
    const { body } = await floor.get('/api/entries?after=0&limit=1')
    expect((body.entries as StoredEntry[]).map(({ index }) => index)).toEqual([1])
    expect(body.size).toBe(3)
    expect((await floor.get('/api/entries?after=2')).body.entries).toEqual([])
  })

  it.each(['after=x', 'after=-2', 'limit=0', 'limit=99999', 'since=1'])('refuses %s', async (query) => {
    expect((await floor.get(`/api/entries?${query}`)).status).toBe(422)
  })

  it('needs somebody signed in', async () => {
    expect((await yard.visitor().get('/api/entries')).status).toBe(401)
  })
})

describe('closing a step', () => {
  const close = (visitor: TestVisitor, revision = 'A'): Entry =>
    visitor.entry({ kind: 'close', subject: W1, step: 'finish', value: null, revision })

  it('is refused with what is missing, and taken when its card is ready', async () => {
    await send(lead, drawing(lead))
    const early = close(floor)
    expect((await send(floor, early))[0]).toMatchObject({
      status: 'refused',
      missing: ['surface: not known'],
    })
    const value = floor.entry({
      kind: 'value',
      subject: W1,
      step: 'finish',
      check: 'surface',
      value: true,
      verdict: 'pass',
      revision: 'A',
    })
    const good = close(floor)
    // Both in one sending: the close is held against what came before it.
    expect((await send(floor, value, good)).map(({ status }) => status)).toEqual(['stored', 'stored'])
    expect((await send(floor, good))[0]?.status).toBe('known')
  })

  it('is refused for a revision that is not in force, and for a panel without a drawing', async () => {
    expect((await send(floor, close(floor)))[0]?.missing).toEqual(['a drawing of J1/W1 in the record'])
    await send(lead, drawing(lead, 'W1', 'B'))
    expect((await send(floor, close(floor)))[0]?.missing).toEqual(['signed for revision A; B is in force'])
  })
})

describe('signing for a hold', () => {
  const sign = (visitor: TestVisitor, entry: unknown, pin = PIN) => visitor.post('/api/sign', { entry, pin })

  it('keeps the request and does not open while something is missing', async () => {
    await send(lead, drawing(lead), seen(lead, 'cover'), seen(lead, 'chairs', 'fail'))
    const { status, body } = await sign(floor, request(floor))
    expect(status).toBe(200)
    expect(body).toEqual({ request: 3, opened: false, missing: ['chairs: not known'] })
    expect((await all()).map(({ kind }) => kind)).toEqual(['drawing', 'value', 'value', 'request'])
  })

  it('opens when every condition is met, and lists what it rests on', async () => {
    const [drawn, cover, chairs] = [drawing(lead), seen(lead, 'cover'), seen(lead, 'chairs')]
    await send(lead, drawn, cover, chairs)
    // The lead signs on the floor's tablet.
    const asked = request(floor)
    const { body } = await sign(floor, asked)
    expect(body).toMatchObject({ request: 3, opened: true, missing: [] })
    const opening = body.opening as unknown as StoredEntry
    expect(opening).toMatchObject({
      kind: 'opening',
      step: 'set',
      revision: 'A',
      edition: 'Test code 1',
      about: asked.id,
      person: LEAD,
      index: 4,
    })
    expect(new Set(opening.rests)).toEqual(new Set([cover.id, chairs.id, asked.id]))
    const state = fold(await all())
    expect(state.panels.get('J1/W1')?.steps.set.opening?.entry).toBe(opening.id)
    expect(state.flags).toEqual([])
  })

  it('twice opens once', async () => {
    await send(lead, drawing(lead), seen(lead, 'cover'), seen(lead, 'chairs'))
    const asked = request(floor)
    const [one, two] = await Promise.all([sign(floor, asked), sign(floor, asked)])
    expect(one.body.opening).toEqual(two.body.opening)
    expect((await all()).filter(({ kind }) => kind === 'opening').length).toBe(1)
  })

  it('does not open on facts that change in the same moment', async () => {
    await send(lead, drawing(lead), seen(lead, 'cover'), seen(lead, 'chairs'))
    yard.now += 1000
    const [failed, signed] = await Promise.all([
      send(floor, seen(floor, 'cover', 'fail')),
      sign(lead, request(lead)),
    ])
    expect(failed[0]?.status).toBe('stored')
    const entries = await all()
    const opening = entries.find(({ kind }) => kind === 'opening')
    const fail = entries.find(({ verdict }) => verdict === 'fail')
    // Either the fail came first and kept it shut, or it came after and is a defect now.
    if (signed.body.opened) expect((opening?.index ?? 0) < (fail?.index ?? 0)).toBe(true)
    else expect(opening).toBeUndefined()
  })

  it('needs the right PIN of the one who signs, with the same limit on tries', async () => {
    await send(lead, drawing(lead))
    const asked = request(floor)
    for (let i = 0; i < 5; i++) expect((await sign(floor, asked, '00000000')).status).toBe(401)
    expect((await sign(floor, asked)).status).toBe(429)
    expect((await all()).length).toBe(1)
    yard.now += 5000
    expect((await sign(floor, asked)).status).toBe(200)
  })

  it('is for those entitled, with their own name and role', async () => {
    await send(lead, drawing(lead))
    expect((await sign(floor, request(floor, FLOOR))).status).toBe(403)
    expect((await sign(floor, request(floor, ENGINEER))).status).toBe(403)
    expect((await sign(floor, request(floor, { ...FLOOR, role: 'lead' }))).status).toBe(409)
    expect((await sign(floor, { ...request(floor), yard: 'elsewhere' })).status).toBe(403)
    expect((await sign(yard.visitor(), request(lead))).status).toBe(401)
    expect((await all()).length).toBe(1)
  })

  it('takes nothing but a request', async () => {
    await send(lead, drawing(lead))
    const { status, body } = await sign(lead, seen(lead, 'cover'))
    expect(status).toBe(422)
    expect(body.issues).toEqual([{ path: 'entry.kind', found: '"value"', expected: '"request"' }])
    expect((await sign(lead, { nothing: 1 })).status).toBe(422)
    expect((await lead.post('/api/sign', { entry: request(lead) })).status).toBe(422)
  })

  it('kept on a device and sent later opens too, when all is met then', async () => {
    const [drawn, asked] = [drawing(lead), request(lead)]
    const [, early] = await send(lead, drawn, asked)
    expect(early).toMatchObject({
      status: 'stored',
      opened: false,
      missing: ['cover: not known', 'chairs: not known'],
    })
    const results = await send(lead, seen(lead, 'cover'), seen(lead, 'chairs'), request(lead))
    expect(results[2]).toMatchObject({ status: 'stored', opened: true, missing: [] })
  })

  it('for an older revision does not open', async () => {
    await send(lead, drawing(lead), seen(lead, 'cover'), seen(lead, 'chairs'))
    yard.now += 1000
    await send(lead, drawing(lead, 'W1', 'B'))
    const { body } = await sign(lead, request(lead))
    expect(body).toMatchObject({ opened: false, missing: ['signed for revision A; B is in force'] })
  })
})

describe('events', () => {
  let streams: TestYard
  beforeAll(async () => {
    streams = await testYard()
  })
  afterAll(() => streams.end())

  it('tell the size at once and whenever the log grows', async () => {
    const visitor = await streams.enter(LEAD)
    const response = await streams.app.request('http://localhost/api/events', {
      headers: { cookie: visitor.cookie },
    })
    expect(response.headers.get('content-type')).toMatch(/^text\/event-stream/)
    const reader = response.body?.pipeThrough(new TextDecoderStream()).getReader()
    expect((await reader?.read())?.value).toBe('event: entries\ndata: {"size":0}\n\n')
    const value = { ...YARD } as never
    await visitor.send(visitor.entry({ kind: 'yard', subject: { kind: 'yard', id: 'test-yard' }, value }))
    expect((await reader?.read())?.value).toBe('event: entries\ndata: {"size":1}\n\n')
    streams.notices.closeAll()
    expect((await reader?.read())?.done).toBe(true)
    expect(streams.notices.count).toBe(0)
  })

  it('need somebody signed in', async () => {
    expect((await streams.visitor().get('/api/events')).status).toBe(401)
  })
})
