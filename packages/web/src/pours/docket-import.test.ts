import { emptyPanelFacts, type PanelFacts } from '@castwright/engine/steps'
import { parseEntry } from '@castwright/record'
import { describe, expect, test } from 'vitest'
import { importPlan } from './docket-import.ts'

const by = { id: 'p3', name: 'Sam Pell', role: 'floor' } as const
const panel = (job: string, mark: string, change: Partial<PanelFacts> = {}): PanelFacts => ({
  ...emptyPanelFacts({ job, mark }),
  revision: 'A',
  ...change,
})
const held = panel('J1', 'W1', {
  dockets: [
    {
      number: '7001',
      volume: 3,
      batched: '2026-06-01T12:00:20.000Z',
      entry: 'd1',
      entries: ['d1'],
      by,
      seen: '2026-06-01T12:40:00.000Z',
      said: {},
      differs: [],
      decision: null,
    },
  ],
})
const panels = [held, panel('J1', 'W2'), panel('J2', 'W2')]
const row = (at: number, docket: object, where: { panel?: string; job?: string } = {}) => ({
  row: at,
  panel: where.panel ?? null,
  job: where.job ?? null,
  docket: { number: '7002', ...docket },
})
const FRAME = {
  format: 'castwright.entry/1',
  id: '01HZZZZZZZZZZZZZZZZZZZZZZ1',
  yard: 'Y',
  person: by,
  device: { id: 'd', counter: 1, previous: null, clockOffset: 0 },
  seen: '2026-06-01T12:40:00.000Z',
}

describe('a list of dockets against the record', () => {
  test('adds what is new, to the panel that the row names, as entries that the record takes', () => {
    const plan = importPlan({
      rows: [
        row(2, { number: '7001', volume: 3, batched: '2026-06-01T12:00:00.000Z' }, { panel: 'W1' }),
        row(3, { number: '7001', volume: 3, slump: 95 }, { panel: 'W1', job: 'J1' }),
        row(4, { volume: 2 }, { panel: 'W2', job: 'J2' }),
        row(5, { number: '7003' }),
      ],
      panels,
      fallback: 'J1/W2',
    })
    expect(plan.faults).toEqual([])
    expect(plan.known).toBe(1)
    expect(plan.loads.map(({ panel: to, draft }) => [to, draft.value])).toEqual([
      ['J1/W1', { number: '7001', slump: 95 }],
      ['J2/W2', { number: '7002', volume: 2 }],
      ['J1/W2', { number: '7003' }],
    ])
    for (const { draft } of plan.loads) expect(() => parseEntry({ ...FRAME, ...draft })).not.toThrow()
  })

  test('says by row what it cannot take', () => {
    const { faults, loads } = importPlan({
      rows: [
        row(2, { number: '7001', volume: 2.5 }, { panel: 'W1' }),
        row(3, {}, { panel: 'W9' }),
        row(4, {}, { panel: 'W2' }),
        row(5, {}),
      ],
      panels,
      fallback: '',
    })
    expect(loads).toEqual([])
    expect(faults).toEqual([
      { row: 2, text: 'Docket 7001: volume is 3 on record, 2.5 in the list' },
      { row: 3, text: 'No panel W9 in the record' },
      { row: 4, text: 'Panel W2 is in J1 and J2: name the job' },
      { row: 5, text: 'No panel is named: choose one for such rows' },
    ])
  })
})
