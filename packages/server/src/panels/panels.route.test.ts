import { type Draft, verifyPassport } from '@castwright/record'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { panelCard } from '../entries/cards.ts'
import {
  drawingOf,
  ENGINEER,
  LEAD,
  type TestVisitor,
  type TestYard,
  testYard,
  VIEWER,
  YARD,
} from '../testing.ts'

let yard: TestYard
let lead: TestVisitor
const W1 = '/api/panels/J1/W1'

beforeAll(async () => {
  yard = await testYard({ makeCard: panelCard })
  lead = await yard.enter(LEAD)
  const drawing = drawingOf('W1', {
    revision: 'A',
    lifting: { strength: 15, load: 25, reference: 'LD-3', by: 'designer' },
    inserts: [
      { mark: 'A', at: [1200, 600], kind: 'face' },
      { mark: 'B', at: [4800, 600], kind: 'face' },
      { mark: 'C', at: [1200, 2400], kind: 'face' },
      { mark: 'D', at: [4800, 2400], kind: 'face' },
    ],
  })
  await lead.post('/api/import', YARD)
  await lead.post('/api/import', {
    format: 'castwright.job/1',
    mark: 'J1',
    yard: 'Mill End',
    drawings: [drawing, drawingOf('W2', { revision: 'A' })],
  })
})
afterAll(() => yard.end())

describe('passport', () => {
  it('is signed, can be checked without the server, and shows one changed byte', async () => {
    const { status, bytes, headers, body } = await lead.get(`${W1}/passport`)
    expect(status).toBe(200)
    expect(headers.get('content-disposition')).toBe('attachment; filename="J1-W1.passport.json"')
    const key = (await yard.visitor().get('/api/key')).body.publicKey as string
    expect(verifyPassport(bytes, { key })).toMatchObject({ verdict: 'pass', problems: [] })
    expect(verifyPassport(bytes).verdict).toBe('unknown')
    const changed = new TextDecoder().decode(bytes).replace('"thickness":150', '"thickness":151')
    expect(verifyPassport(changed, { key }).verdict).toBe('fail')
    // Its own drawing and the yard's file, not the other panel's.
    expect((body.entries as { kind: string }[]).map(({ kind }) => kind)).toEqual(['yard', 'drawing'])
    expect(body.plan).toMatchObject({ family: 'eu', figures: { mass: 6000 * 3000 * 150 * 1e-9 * 2500 } })
  })

  it('is of a panel that the record knows', async () => {
    expect((await lead.get('/api/panels/J1/W9/passport')).status).toBe(404)
    expect((await lead.get('/api/panels/J9/W1/passport')).status).toBe(404)
    expect((await yard.visitor().get(`${W1}/passport`)).status).toBe(401)
  })

  it('needs something that says the code family', async () => {
    const bare = await testYard({ makeCard: panelCard })
    try {
      const visitor = await bare.enter(LEAD)
      await visitor.post('/api/import', drawingOf('W1', { job: 'J1' }))
      expect((await visitor.get(`${W1}/passport`)).status).toBe(409)
    } finally {
      await bare.end()
    }
  })
})

describe('sheets', () => {
  it.each(['mould-card', 'pour-card', 'steel-schedule', 'lift-card', 'lift-working', 'label', 'passport'])(
    '%s is a PDF',
    async (sheet) => {
      const viewer = await yard.enter(VIEWER)
      const { status, bytes, headers } = await viewer.get(`${W1}/sheets/${sheet}?paper=letter`)
      expect(status).toBe(200)
      expect(headers.get('content-type')).toBe('application/pdf')
      expect(headers.get('content-disposition')).toBe(`inline; filename="J1-W1-${sheet}.pdf"`)
      expect(new TextDecoder().decode(bytes.subarray(0, 5))).toBe('%PDF-')
    },
  )

  it('are refused by a name or paper that is not known', async () => {
    expect((await lead.get(`${W1}/sheets/poster`)).status).toBe(422)
    expect((await lead.get(`${W1}/sheets/label?paper=a0`)).status).toBe(422)
    expect((await lead.get('/api/panels/J1/W9/sheets/label')).status).toBe(404)
    expect((await yard.visitor().get(`${W1}/sheets/label`)).status).toBe(401)
  })
})

describe('a signed difference', () => {
  const draft: Draft = {
    kind: 'difference',
    subject: { kind: 'panel', id: 'J1/W1' },
    step: 'strip',
    check: 'now:lift-peak:release',
    revision: 'A',
    reason: 'the bars as drawn carry it',
    value: { reference: 'LD-3', verdict: 'fail', demand: 2.4, limit: 1.9, unit: 'MPa', missing: [] },
  }

  it('is refused from a lead, taken from an engineer, and printed in a passport that verifies', async () => {
    const [byLead] = ((await lead.send(lead.entry(draft))).body.results ?? []) as { reason?: string }[]
    expect(byLead?.reason).toMatch(/a lead may not make a difference entry/)
    const engineer = await yard.enter(ENGINEER)
    const signed = engineer.entry(draft)
    const [result] = ((await engineer.send(signed)).body.results ?? []) as { status?: string }[]
    expect(result?.status).toBe('stored')
    const { bytes, body } = await lead.get(`${W1}/passport`)
    const key = (await yard.visitor().get('/api/key')).body.publicKey as string
    expect(verifyPassport(bytes, { key })).toMatchObject({ verdict: 'pass', problems: [] })
    expect((body.plan as { figures: { differences: unknown[] } }).figures.differences).toMatchObject([
      {
        check: 'now:lift-peak:release',
        entry: signed.id,
        by: { name: 'Bo Engineer', role: 'engineer' },
        reason: 'the bars as drawn carry it',
        demand: 2.4,
        limit: 1.9,
      },
    ])
    const bent = new TextDecoder().decode(bytes).replace('"limit":1.9', '"limit":2.9')
    expect(verifyPassport(bent, { key }).verdict).toBe('fail')
  })
})

describe('cards by the engine', () => {
  it('keep set shut while what is asked is not on record, and name it', async () => {
    const subject = { kind: 'panel', id: 'J1/W1' } as const
    const entry = lead.entry({ kind: 'request', subject, step: 'set', value: null, revision: 'A' })
    const { body } = await lead.post('/api/sign', { entry, pin: '48151623' })
    expect(body.opened).toBe(false)
    expect((body.missing as string[]).length).toBeGreaterThan(0)
    expect((body.missing as string[]).every((text) => typeof text === 'string' && text !== '')).toBe(true)
  })
})
