import { describe, expect, it } from 'vitest'
import type { FamilyId } from '../codes/index.ts'
import { askedAtMould } from '../mould/mould-asked.ts'
import { parseDrawing } from '../panel/drawing.ts'
import { panelOf } from '../panel/panel.ts'
import type { Plan } from '../plan.ts'
import type { CardRow } from './card.ts'
import { emptyPanelFacts } from './empty-facts.ts'
import { recorded, withValue, yardFacts } from './example-facts.ts'
import type { PanelFacts, YardFacts } from './facts.ts'
import { mouldRows } from './mould-row.ts'

const drawing = parseDrawing({
  format: 'castwright.drawing/1',
  mark: 'W1',
  outline: [
    [0, 0],
    [4000, 0],
    [4000, 3000],
    [0, 3000],
  ],
  thickness: 150,
  concrete: { strength: 40 },
})
const FOUND: readonly (readonly [id: string, value: number | number[]])[] = [
  ['side:1', 4000],
  ['side:2', 3000],
  ['side:3', 4000],
  ['side:4', 3000],
  ['diagonal:1-3', 5000],
  ['diagonal:2-4', 5000],
  ['form-heights', [150, 150, 151, 150]],
]

/** The mould's own part of the plan: what it asks. */
function planned(family: FamilyId): Plan {
  return { family, toRecord: askedAtMould(panelOf(drawing), [], null) } as unknown as Plan
}

function taped(change: Readonly<Record<string, unknown>> = {}): PanelFacts {
  const empty: PanelFacts = { ...emptyPanelFacts({ job: 'J', mark: 'W1' }), drawing, revision: 'A' }
  return FOUND.reduce(
    (facts, [id, value]) =>
      withValue(facts, 'mould', id, recorded(id in change ? change[id] : value, { entry: `e-${id}` })),
    empty,
  )
}

const rows = (
  step: 'mould' | 'set',
  facts: PanelFacts,
  family: FamilyId = 'eu',
  limits: YardFacts['limits'] = {},
): CardRow[] => mouldRows({ plan: planned(family), facts, yard: yardFacts({ limits }), step })
const said = (list: readonly CardRow[]) => list.map(({ id, verdict }) => `${id} ${verdict}`)

describe('the measured mould on the cards', () => {
  it('is judged in full at its step, and at the hold by what concrete makes permanent', () => {
    expect(said(rows('mould', taped()))).toEqual([
      'mould-readings pass',
      'mould-corners pass',
      'mould-square pass',
      'mould-cast:length pass',
      'mould-cast:width pass',
      'mould-cast:thickness pass',
      'mould-cast:squareness pass',
    ])
    expect(said(rows('set', taped()))).toEqual([
      'mould-readings pass',
      'mould-cast:length pass',
      'mould-cast:width pass',
      'mould-cast:thickness pass',
      'mould-cast:squareness pass',
    ])
  })

  it('rests on every entry that it was computed from', () => {
    const [first] = rows('set', taped())
    expect([...(first?.rests ?? [])].sort()).toEqual(FOUND.map(([id]) => `e-${id}`).sort())
    expect(first?.from).toBe('record')
  })

  it('keeps the hold shut while a length is missing or was taped for an older revision', () => {
    const bare = withValue(taped(), 'mould', 'side:2', undefined)
    expect(rows('set', bare)[0]).toMatchObject({ verdict: 'unknown', unknown: ['Side 2'] })
    // One row says that there is no shape; the heights stand for themselves.
    expect(said(rows('set', bare))).toEqual(['mould-readings unknown', 'mould-cast:thickness pass'])
    const old = withValue(taped(), 'mould', 'side:2', recorded(3000, { revision: 'before' }))
    expect(rows('set', old)[0]?.verdict).toBe('unknown')
    expect(rows('set', taped({ 'side:2': 'three' }))[0]?.verdict).toBe('unknown')
  })

  it('keeps the hold shut where a tape is misread and where the panel would be out', () => {
    const misread = rows('set', taped({ 'diagonal:1-3': 5020 }))
    expect(misread[0]).toMatchObject({ verdict: 'fail' })
    expect(misread[0]?.note).toContain('Corner 1 to corner 3, straight reads 20 mm longer')
    const thick = rows('set', taped({ 'form-heights': [150, 150, 162, 150] }))
    expect(thick.find(({ id }) => id === 'mould-cast:thickness')?.verdict).toBe('fail')
  })

  it('asks nothing of the hold that no rule limits: at its own step it is not known, and decided by name', () => {
    expect(said(rows('set', taped(), 'nz'))).toEqual(['mould-readings pass'])
    expect(said(rows('mould', taped(), 'nz'))).toContain('mould-cast unknown')
  })

  it('still reads the one worst height of an older record', () => {
    const old = withValue(
      withValue(taped(), 'mould', 'form-heights', undefined),
      'mould',
      'form-height',
      recorded(152),
    )
    const row = rows('set', old).find(({ id }) => id === 'mould-cast:thickness')
    expect(row).toMatchObject({ verdict: 'pass', demand: 2 })
  })

  it('is no row where the plan asks for no lengths', () => {
    const plan = { family: 'eu', toRecord: [] } as unknown as Plan
    expect(mouldRows({ plan, facts: taped(), yard: yardFacts(), step: 'set' })).toEqual([])
  })
})
