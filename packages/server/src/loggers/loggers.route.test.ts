import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import {
  drawingOf,
  ENGINEER,
  FLOOR,
  LEAD,
  type TestVisitor,
  type TestYard,
  testYard,
  VIEWER,
  YARD,
} from '../testing.ts'

let yard: TestYard
let lead: TestVisitor
let floor: TestVisitor

beforeAll(async () => {
  yard = await testYard()
  lead = await yard.enter(LEAD)
  floor = await yard.enter(FLOOR)
  await lead.post('/api/import', YARD)
  for (const mark of ['W1', 'W2']) await lead.post('/api/import', { ...drawingOf(mark), job: 'J1' })
})
afterAll(() => yard.end())

let count = 0
async function made(more: object = {}): Promise<{ id: string; key: string; name: string }> {
  const { body, status } = await lead.post('/api/loggers', { name: `Logger box ${++count}`, ...more })
  expect(status).toBe(201)
  return body as { id: string; key: string; name: string }
}

const patch = (who: TestVisitor, id: string, body: object) => who.json('PATCH', `/api/loggers/${id}`, body)
const listed = async (id: string) =>
  ((await floor.get('/api/loggers')).body as unknown as { id: string }[]).find((one) => one.id === id)

describe('loggers', () => {
  it('are made by a lead; the key is told once and kept as a hash', async () => {
    const { id, key } = await made({ panel: 'J1/W1' })
    expect(key).toMatch(/^[A-Za-z0-9_-]{43}$/)
    expect(await listed(id)).toMatchObject({ panel: 'J1/W1', active: true, madeBy: LEAD.id, last: null })
    const { body } = await lead.get('/api/loggers')
    const kept = await yard.store.loggers.find(id)
    for (const text of [JSON.stringify(body), JSON.stringify(kept)]) expect(text).not.toContain(key)
    expect(kept?.keyHash).toMatch(/^[0-9a-f]{64}$/)
    expect(JSON.stringify(body)).not.toContain(kept?.keyHash)
  })

  it('are not made by others, nor listed to strangers', async () => {
    for (const person of [FLOOR, ENGINEER, VIEWER]) {
      const { status } = await (await yard.enter(person)).post('/api/loggers', { name: 'Mine' })
      expect(status).toBe(403)
    }
    expect((await yard.visitor().get('/api/loggers')).status).toBe(401)
    expect((await yard.visitor().post('/api/loggers', { name: 'Mine' })).status).toBe(401)
  })

  it('need a name of their own without control characters, and a panel that is there', async () => {
    const { name } = await made()
    expect((await lead.post('/api/loggers', { name })).status).toBe(409)
    for (const bad of ['', '  ', 'a\u0000b', '\ud800', 'x'.repeat(81)]) {
      expect((await lead.post('/api/loggers', { name: bad })).status).toBe(422)
    }
    const { status, body } = await lead.post('/api/loggers', { name: 'Elsewhere', panel: 'J1/W9' })
    expect([status, body.issues]).toEqual([
      422,
      [{ path: 'panel', found: '"J1/W9"', expected: 'a panel in the record, as job/mark' }],
    ])
  })

  it('are moved by whoever works on the floor', async () => {
    const { id } = await made()
    expect((await patch(floor, id, { panel: 'J1/W2' })).body).toMatchObject({ panel: 'J1/W2' })
    expect((await patch(await yard.enter(ENGINEER), id, { panel: null })).body).toMatchObject({ panel: null })
    expect((await patch(await yard.enter(VIEWER), id, { panel: 'J1/W2' })).status).toBe(403)
    expect((await patch(floor, id, { panel: 'J1/W9' })).status).toBe(422)
    expect((await patch(floor, 'nobody', { panel: null })).status).toBe(404)
    expect(await listed(id)).toMatchObject({ panel: null })
  })

  it('are closed, opened and given a new key by a lead alone', async () => {
    const { id, key } = await made({ panel: 'J1/W1' })
    for (const change of [{ active: false }, { newKey: true }]) {
      expect((await patch(floor, id, change)).status).toBe(403)
    }
    const { body } = await patch(lead, id, { newKey: true })
    expect(body.key).toMatch(/^[A-Za-z0-9_-]{43}$/)
    expect(body.key).not.toBe(key)
    expect((await patch(lead, id, { active: false })).body).toMatchObject({ active: false, panel: null })
    expect((await patch(floor, id, { panel: 'J1/W1' })).status).toBe(409)
    expect((await patch(lead, id, { active: true })).body).toMatchObject({ active: true, panel: null })
    expect((await patch(lead, id, { panel: 'J1/W1' })).body.key).toBeUndefined()
  })
})
