import { codeFamily } from '@castwright/engine/codes'
import { parseDrawing } from '@castwright/engine/panel'
import { plan } from '@castwright/engine/plan'
import { emptyPanelFacts } from '@castwright/engine/steps'
import { describe, expect, it } from 'vitest'
import { makeSheet, SHEET_NAMES } from './make-sheet.ts'
import { deliveredRows, differenceRows } from './passport-sheet.ts'
import type { SheetInput } from './sheet.ts'

const drawing = parseDrawing({
  format: 'castwright.drawing/1',
  mark: 'W-7 Łódź',
  revision: 'B',
  outline: [
    [0, 0],
    [6000, 0],
    [6000, 3000],
    [0, 3000],
  ],
  thickness: 160,
  openings: [
    {
      mark: 'D1',
      outline: [
        [900, 0],
        [1900, 0],
        [1900, 2100],
        [900, 2100],
      ],
    },
  ],
  concrete: { strength: 40 },
  steel: [{ layer: 'mould', direction: 'x', diameter: 10, grade: 'B500B', spacing: 200 }],
})

/** The least that a sheet may meet: no yard, no record, half of the drawing. */
const bare: SheetInput = {
  plan: plan({ drawing, yard: null, family: codeFamily('eu') }),
  drawing,
  facts: { ...emptyPanelFacts({ job: 'J 1/2', mark: drawing.mark }), drawing, revision: 'B' },
  yard: { yard: null, gear: {}, limits: {} },
  yardName: 'Test yard',
  timezone: 'UTC',
  size: 'a4',
  made: '2026-05-12T09:00:00.000Z',
  address: 'https://yard.example',
}

describe('every sheet', () => {
  it.each(SHEET_NAMES)(
    '%s is a tagged PDF, the same when made again, also where nearly nothing is known',
    async (name) => {
      const [first, second] = [await makeSheet(name, bare), await makeSheet(name, bare)]
      const text = Buffer.from(first).toString('latin1')
      expect(text.startsWith('%PDF-')).toBe(true)
      expect(text).toContain('/StructTreeRoot')
      expect(Buffer.from(first).equals(Buffer.from(second))).toBe(true)
    },
  )

  it('prints each load in the passport, with what did not pass and who decided', async () => {
    const by = { id: 'l', name: 'Nora Quill', role: 'lead' } as const
    const about = { entry: 'd', entries: ['d'], by, seen: bare.made, said: {}, differs: [] }
    const back = {
      entry: 'x',
      by,
      seen: bare.made,
      stored: bare.made,
      reason: 'runs off the chute',
      revision: 'B',
    }
    const dockets = [
      {
        ...about,
        number: '7001',
        arrived: '2026-05-12T07:30:00.000Z',
        mix: 'K40',
        volume: 3,
        slump: 190,
        decision: { ...back, decision: 'send-back' },
      },
      { ...about, number: '7002', volume: 3, discharged: '2026-05-12T08:30:00.000Z', decision: null },
    ] as const
    const input = { ...bare, facts: { ...bare.facts, dockets } }
    const [first, second] = deliveredRows(input)
    expect(first).toEqual([
      '7001',
      'K40',
      '3',
      'not known',
      '190',
      '',
      'Sent back, Nora Quill: runs off the chute',
    ])
    expect(second?.[3]).toContain('08:30')
    expect(second?.[5]).toContain('slump not known')
    expect(deliveredRows(bare)).toEqual([])
    const [full, none] = [await makeSheet('passport', input), await makeSheet('passport', bare)]
    expect(full.length).toBeGreaterThan(none.length)
  })

  it('prints each signed difference in the passport: for what, by whom, why', async () => {
    const by = { id: 'e', name: 'Ada Roe', role: 'engineer' } as const
    const signed = { entry: 'x', by, seen: bare.made, stored: bare.made, reason: 'bars carry', revision: 'B' }
    const fails = { verdict: 'fail', demand: 2.44, limit: 1.9, unit: 'MPa', missing: [] } as const
    const unknown = {
      verdict: 'unknown',
      demand: null,
      limit: null,
      unit: 'kN',
      missing: ['uneven legs'],
    } as const
    const differences = {
      'lift-peak:release': { ...signed, ...fails, reference: 'LD-3' },
      'now:lift-insert:hang': { ...signed, ...unknown, reference: 'LD-3' },
    }
    const { strip } = bare.facts.steps
    const facts = { ...bare.facts, steps: { ...bare.facts.steps, strip: { ...strip, differences } } }
    const rows = differenceRows({ ...bare, facts })
    expect(rows.map(([, what, design, who, reason]) => [what, design, who, reason])).toEqual([
      [
        'fails: 2.44 MPa, limit 1.9 MPa',
        'LD-3',
        'Ada Roe, engineer, 12 May 2026, 09:00, revision B',
        'bars carry',
      ],
      ['not known: uneven legs', 'LD-3', 'Ada Roe, engineer, 12 May 2026, 09:00, revision B', 'bars carry'],
    ])
    const [with2, without] = [
      await makeSheet('passport', { ...bare, facts }),
      await makeSheet('passport', bare),
    ]
    expect(with2.length).toBeGreaterThan(without.length)
    expect(differenceRows(bare)).toEqual([])
  })

  it('fits letter paper too', async () => {
    const text = Buffer.from(await makeSheet('pour-card', { ...bare, size: 'letter' })).toString('latin1')
    expect(text).toMatch(/\/MediaBox \[0 0 612 792\]/)
  })
})
