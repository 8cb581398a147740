import { codeFamily } from '@castwright/engine/codes'
import type { LiftCondition } from '@castwright/engine/lift'
import { type Drawing, parseDrawing } from '@castwright/engine/panel'
import { type Plan, plan } from '@castwright/engine/plan'
import { emptyPanelFacts } from '@castwright/engine/steps'
import type { Check, Step } from '@castwright/engine/working'
import { parseYard } from '@castwright/engine/yard'
import { describe, expect, it } from 'vitest'
import { liftCard } from './lift-card.ts'
import { stageField } from './lift-field.ts'
import { leastAtLift, loadText, strengthText } from './lift-tables.ts'
import { governing, liftWorking, ofInsert } from './lift-working.ts'
import type { SheetInput } from './sheet.ts'

function rectangle(x: number, y: number, width: number, height: number): [number, number][] {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ]
}

const YARD = parseYard({
  format: 'castwright.yard/1',
  name: 'Test yard',
  code: 'eu',
  timezone: 'UTC',
  beds: [{ mark: 'B1', length: 20_000, width: 5000, face: 'oiled steel' }],
  mixes: [{ mark: 'M40', strength: 40, scatter: 0.08, curve: { form: 'ec2', mean28: 48, s: 0.2 } }],
  insertKinds: [
    { mark: 'F1', kind: 'face', rated: 50, ratedStrength: 15, leastStrength: 10 },
    { mark: 'E1', kind: 'edge', rated: 70, ratedStrength: 15, leastStrength: 10 },
  ],
  rigging: [
    { mark: 'R4', legs: 4, length: 4000, equalised: true, rated: 8000 },
    { mark: 'R2', legs: 2, length: 4000, rated: 12_000 },
    { mark: 'R12', legs: 12, length: 9000, equalised: true, rated: 40_000 },
  ],
})

function drawn(change: object): Drawing {
  return parseDrawing({
    format: 'castwright.drawing/1',
    mark: 'P6',
    revision: 'A',
    outline: rectangle(0, 0, 6000, 3000),
    thickness: 150,
    concrete: { strength: 40, density: 2500 },
    rigging: 'R4',
    inserts: rectangle(1243, 621, 3514, 1758).map((at, i) => ({
      mark: 'ABCD'[i],
      at,
      kind: 'face',
      type: 'F1',
    })),
    lifting: { strength: 15, load: 25.5, reference: 'LD-3', by: 'Orla Finn' },
    ...change,
  })
}

const FLAT = drawn({})
const TURNED = drawn({
  mark: 'E7',
  rigging: 'R2',
  openings: [{ mark: 'D1', outline: rectangle(900, 0, 1000, 2100) }],
  inserts: [
    { mark: 'A', at: [1500, 3000], kind: 'edge', type: 'E1' },
    { mark: 'B', at: [4700, 3000], kind: 'edge', type: 'E1' },
  ],
})
const TWELVE = drawn({
  mark: 'PANEL-WITH-A-MARK-AS-LONG-AS-IT-MAY-BE40',
  outline: rectangle(0, 0, 12_000, 3600),
  rigging: 'R12',
  inserts: [1000, 3000, 5000, 7000, 9000, 11_000].flatMap((x, i) =>
    [600, 3000].map((y, j) => ({
      mark: `INSERT-${i}${j}-OF-LONG-MARK`,
      at: [x, y],
      kind: 'face',
      type: 'F1',
    })),
  ),
})

function sheetInput(drawing: Drawing, cast: string | null = null): SheetInput {
  return {
    plan: plan({ drawing, yard: YARD, family: codeFamily('eu') }),
    drawing,
    facts: {
      ...emptyPanelFacts({ job: 'J1', mark: drawing.mark }),
      drawing,
      revision: 'A',
      cast: cast === null ? null : { entry: 'e1', at: cast, bed: 'B1', mix: 'M40' },
    },
    yard: { yard: YARD, gear: {}, limits: {} },
    yardName: 'Test yard',
    timezone: 'UTC',
    size: 'a4',
    made: '2026-05-12T09:00:00.000Z',
    address: 'https://yard.example',
  }
}

function pages(bytes: Uint8Array): number {
  return (
    Buffer.from(bytes)
      .toString('latin1')
      .match(/\/Type \/Page\b/g) ?? []
  ).length
}

describe('lift card and working', () => {
  it('make the same bytes twice', async () => {
    const input = sheetInput(FLAT, '2026-05-11T14:10:00.000Z')
    for (const make of [liftCard, liftWorking]) {
      expect(Buffer.from(await make(input)).equals(Buffer.from(await make(input)))).toBe(true)
    }
  })

  it.each([TURNED, TWELVE].map((drawing) => [drawing.mark, drawing] as const))(
    '%s fits on pages',
    async (_, drawing) => {
      expect(pages(await liftCard(sheetInput(drawing)))).toBeGreaterThanOrEqual(3)
    },
  )

  it('shows the tension of the very stage that the plan holds against its limit', () => {
    const input = sheetInput(FLAT)
    const field = stageField(input, 'release')
    const peak = input.plan.lift.stages.find(({ id }) => id === 'release')?.peak?.stress ?? 0
    // Bands end below the greatest tension, the last at 95 % of it, rounded by less than 5 %.
    expect(field?.bands.at(-1)?.level ?? 0).toBeGreaterThan(0.9 * peak)
    expect(field?.bands.at(-1)?.level ?? 9).toBeLessThanOrEqual(peak)
  })
})

describe('figures of the lift card', () => {
  const condition = (change: Partial<LiftCondition>): LiftCondition => ({
    check: 'lift-peak:release',
    stage: 'release',
    what: 'Tension, leaves the mould',
    strength: 12,
    never: false,
    gaps: [],
    ...change,
  })
  const least = (conditions: LiftCondition[], wanted: number | null = 15): { text: string; from: string } =>
    leastAtLift({
      cure: { wanted: wanted === null ? null : { strength: wanted, from: 'lifting design LD-3' } },
      lift: { conditions },
    } as unknown as Plan)

  it('gives the greatest strength that anything of the first lift asks for, rounded up, and what governs', () => {
    expect(least([condition({})])).toEqual({ text: '15.0 MPa', from: 'Governed by the lifting design LD-3.' })
    expect(least([condition({ strength: 17.21 })])).toEqual({
      text: '17.3 MPa',
      from: 'Governed by: Tension, leaves the mould.',
    })
    expect(least([condition({ strength: 40, stage: 'store' })]).text).toBe('15.0 MPa')
  })

  it('never gives one number alone where something is not known or never holds', () => {
    expect(least([condition({ strength: null })])).toEqual({
      text: '15.0 MPa or more',
      from: 'Governed by the lifting design LD-3. Not known: tension, leaves the mould.',
    })
    expect(least([condition({})], null).text).toBe('12.0 MPa or more')
    expect(least([], null).text).toBe('not known')
    expect(least([condition({ strength: null, never: true })]).text).toBe('none is enough')
  })

  it('rounds loads and strengths up, and says what is not known', () => {
    expect(loadText(17.21)).toBe('17.3')
    expect(loadText(17.2)).toBe('17.2')
    expect(loadText(null)).toBe('not known')
    expect(strengthText({ strength: 12.01, never: false })).toBe('12.1 MPa')
    expect(strengthText({ strength: 0, never: false })).toBe('any')
    expect(strengthText({ strength: null, never: true })).toBe('at no strength')
    expect(strengthText({ strength: null, never: false })).toBe('not known')
  })

  it('works out the stage that is nearest to its limit, or without limits the one with the most', () => {
    const check = (id: string, demand: number | null, ratio: number | null): Check =>
      ({ id, demand, ratio }) as unknown as Check // nothing else is read
    const of = (...checks: Check[]): string | undefined => governing({ checks }, 'lift-peak:')?.id
    expect(of(check('lift-peak:release', 1, 0.5), check('lift-peak:turn', 0.8, 0.9))).toBe('lift-peak:turn')
    expect(of(check('lift-peak:release', 1, null), check('lift-peak:turn', 2, null))).toBe('lift-peak:turn')
    expect(of(check('lift-peak:store', 9, 9), check('lift-peak:release', null, null))).toBe(
      'lift-peak:release',
    )
    expect(of()).toBeUndefined()
  })

  it('leaves out of the working of one insert what belongs to the others', () => {
    const steps = ['W', 'R A', 'R B', 'R counted B', 'h'].map((symbol) => ({ symbol }) as unknown as Step)
    expect(ofInsert(steps, 'A', ['A', 'B']).map(({ symbol }) => symbol)).toEqual(['W', 'R A', 'h'])
  })
})
