import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type Answer, LEAD, START, type TestVisitor, type TestYard, testYard, YARD } from '../testing.ts'

let yard: TestYard
let lead: TestVisitor
let id = ''
let key = ''

beforeAll(async () => {
  yard = await testYard()
  lead = await yard.enter(LEAD)
  await lead.post('/api/import', YARD)
  const { body } = await lead.post('/api/loggers', { name: 'Mast' })
  id = body.id as string
  key = body.key as string
})
afterAll(() => yard.end())

const at = (hours: number): string => new Date(START - 12 * 3_600_000 + hours * 3_600_000).toISOString()

/** As a station does: no cookie, no origin. */
function send(readings: unknown, bearer = key): Promise<Answer> {
  return yard.visitor().post('/api/weather', { readings }, { authorization: `Bearer ${bearer}`, origin: '' })
}

describe('weather of a station', () => {
  it('becomes one entry of the yard, by the logger, as logged', async () => {
    const { status, body } = await send([
      { at: at(1), air: 9.5, humidity: 80, wind: 12 },
      { at: at(0), air: 10, sun: 0 },
      { at: at(2), air: null },
    ])
    expect(status).toBe(200)
    expect(body).toMatchObject({ stored: 2, known: 0, empty: 1 })
    const [entry] = (await yard.store.read({ after: (await yard.store.size()) - 2, limit: 1 })) ?? []
    expect(entry).toMatchObject({
      id: body.entry,
      kind: 'weather',
      subject: { kind: 'yard', id: yard.store.yard },
      person: { id: `logger-${id}`, name: 'Logger Mast' },
      value: {
        readings: [
          { at: at(0), air: 10, humidity: null, wind: null, sun: 0 },
          { at: at(1), air: 9.5, humidity: 80, wind: 12 },
        ],
      },
    })
    const { weather, forecast } = await yard.log.state()
    expect(weather.map((reading) => reading.air)).toEqual([10, 9.5])
    expect(forecast).toEqual([])
  })

  it('sent twice is stored once', async () => {
    const size = await yard.store.size()
    const again = await send([{ at: at(1), air: 9.5, humidity: 80, wind: 12 }])
    expect(again.body).toEqual({ stored: 0, known: 1, empty: 0, entry: null })
    expect(await yard.store.size()).toBe(size)
  })

  it('that cannot be, or not at that time, is refused as a whole, each reading named', async () => {
    const size = await yard.store.size()
    const paths = async (readings: unknown): Promise<unknown> => {
      const { status, body } = await send(readings)
      expect(status).toBe(422)
      return (body.issues as { path: string }[]).map(({ path }) => path)
    }
    expect(await paths([{ at: at(3), air: 112 }])).toEqual(['readings[0].air'])
    expect(await paths([{ at: at(3), air: 9, humidity: 140 }])).toEqual(['readings[0].humidity'])
    expect(
      await paths([
        { at: at(3), air: 9 },
        { at: at(1), air: 4 },
        { at: at(40), air: 4 },
        { at: at(-1000), air: 4 },
      ]),
    ).toEqual(['readings[1]', 'readings[2].at', 'readings[3].at'])
    expect(await paths([{ at: 'yesterday', air: 9 }])).toEqual(['readings[0].at'])
    expect(await yard.store.size()).toBe(size)
  })

  it('needs the key: neither a session nor another key opens it, and a closed logger’s does not', async () => {
    expect((await send([{ at: at(3), air: 9 }], 'x'.repeat(43))).status).toBe(401)
    expect((await lead.post('/api/weather', { readings: [{ at: at(3), air: 9 }] })).status).toBe(401)
    await lead.ask('PATCH', `/api/loggers/${id}`, {
      body: JSON.stringify({ active: false }),
      headers: { 'content-type': 'application/json' },
    })
    expect((await send([{ at: at(3), air: 9 }])).status).toBe(403)
  })
})
