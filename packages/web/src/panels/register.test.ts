import { emptyPanelFacts, type PanelFacts, STEP_IDS } from '@castwright/engine/steps'
import { describe, expect, it } from 'vitest'
import { choicesOf, filterRows, NO_FILTER, registerRows } from './register.ts'

const signed = {
  entry: 'e',
  by: { id: 'a', name: 'Anna', role: 'lead' },
  seen: '2026-04-14T08:00:00.000Z',
  stored: null,
  reason: null,
  revision: 'A',
  rests: [],
} as const

function panel(mark: string, doneSteps: number, more: Partial<PanelFacts> = {}): PanelFacts {
  const empty = emptyPanelFacts({ job: 'J', mark })
  const steps = { ...empty.steps }
  for (const id of STEP_IDS.slice(0, doneSteps)) steps[id] = { ...steps[id], closed: signed, opening: signed }
  return { ...empty, steps, revision: 'A', drawing: {} as PanelFacts['drawing'], ...more }
}

const rows = (panels: readonly PanelFacts[]) => registerRows(panels, () => null)
const standing = (facts: PanelFacts) => rows([facts])[0]?.standing

describe('the register', () => {
  it('counts numbers in marks as numbers', () => {
    const marks = rows([panel('W10', 0), panel('W2', 0), panel('W1', 0)]).map(({ facts }) => facts.mark)
    expect(marks).toEqual(['W1', 'W2', 'W10'])
  })

  it('says where each panel stands', () => {
    expect(standing(panel('W1', 0))).toBe('not begun')
    expect(standing(panel('W1', 2))).toBe('in work')
    expect(standing(panel('W1', 4))).toBe('waits at a hold')
    expect(standing(panel('W1', 8))).toBe('curing')
    expect(standing(panel('W1', 9))).toBe('waits at a hold')
    expect(standing(panel('W1', 14))).toBe('handed over')
    expect(standing(panel('W1', 0, { drawing: null }))).toBe('no drawing')
  })

  it('an open defect outranks every step', () => {
    const defect = {
      ...signed,
      text: 'crack',
      place: null,
      step: null,
      attachments: [],
      disposition: null,
      inspection: null,
      open: true,
    }
    expect(standing(panel('W1', 14, { defects: [defect] }))).toBe('defect open')
    expect(standing(panel('W1', 14, { defects: [{ ...defect, open: false }] }))).toBe('handed over')
  })

  it('finds by every word of the search, in any order and case', () => {
    const all = rows([
      panel('W1', 0, { place: 'rack 2' }),
      panel('W2', 0, { place: 'rack 2' }),
      panel('G1', 0),
    ])
    const found = (search: string) => filterRows(all, { ...NO_FILTER, search }).map(({ facts }) => facts.mark)
    expect(found('RACK w')).toEqual(['W1', 'W2'])
    expect(found('w1')).toEqual(['W1'])
    expect(found('w1 g1')).toEqual([])
    expect(found('  ')).toEqual(['G1', 'W1', 'W2'])
  })

  it('filters by standing, step and place together', () => {
    const all = rows([panel('W1', 4, { place: 'bed 1' }), panel('W2', 4), panel('W3', 8, { place: 'bed 1' })])
    const filter = { ...NO_FILTER, standing: 'waits at a hold', step: 'set', place: 'bed 1' }
    expect(filterRows(all, filter).map(({ facts }) => facts.mark)).toEqual(['W1'])
    expect(choicesOf(all, (row) => row.place)).toEqual(['bed 1'])
  })

  it('reads a thousand panels at once', () => {
    const many = rows(Array.from({ length: 1000 }, (_, index) => panel(`W${index}`, index % 15)))
    expect(many).toHaveLength(1000)
    expect(filterRows(many, { ...NO_FILTER, search: 'w99' })).toHaveLength(11)
  })
})
