import type { Draft } from '@castwright/record'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { LEAD, type TestVisitor, type TestYard, testYard, YARD } from '../testing.ts'

const PLAN: Draft = {
  kind: 'cut-plan',
  subject: { kind: 'yard', id: 'test-yard' },
  value: {
    diameter: 12,
    grade: '500E',
    kerf: 3,
    keep: 800,
    lines: [
      {
        stock: 6000,
        count: 4,
        rack: false,
        pieces: [{ length: 2500, count: 2, mark: 'MX1', panel: 'J1/W1' }],
        offcut: 997,
      },
      {
        stock: 2600,
        count: 1,
        rack: true,
        pieces: [{ length: 2500, count: 1, mark: 'MX1', panel: 'J1/W1' }],
        offcut: 100,
      },
    ],
  },
}

let yard: TestYard
let lead: TestVisitor

beforeAll(async () => {
  yard = await testYard()
  lead = await yard.enter(LEAD)
  await lead.post('/api/import', YARD)
})
afterAll(() => yard.end())

describe('the cutting sheet of a plan at the shear', () => {
  it('is a PDF of the plan on record, the same bytes twice', async () => {
    const entry = lead.entry(PLAN)
    await lead.send(entry)
    const first = await lead.get(`/api/steel/plans/${entry.id}/sheet`)
    expect(first.status).toBe(200)
    expect(new TextDecoder('latin1').decode(first.bytes.slice(0, 8))).toBe('%PDF-1.7')
    expect((await lead.get(`/api/steel/plans/${entry.id}/sheet`)).bytes).toEqual(first.bytes)
  })

  it('is refused to strangers, for a plan that is not there, and for a name that is none', async () => {
    const nobody = `/api/steel/plans/${'0'.repeat(26)}/sheet`
    expect((await yard.visitor().get(nobody)).status).toBe(401)
    expect((await lead.get(nobody)).status).toBe(404)
    expect((await lead.get('/api/steel/plans/12/sheet')).status).toBe(422)
  })
})
