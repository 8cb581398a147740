import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { CutFacts, CutPlanFacts } from './fold-steel.ts'
import {
  barLength,
  barsPromised,
  isOpenPlan,
  leftAfterCut,
  piecesTaken,
  restOfPlan,
  takenKey,
} from './shear.ts'
import type { ValueOf } from './values.ts'

type Piece = ValueOf<'cut'>['pieces'][number]

const A: Piece = { length: 2900, count: 2, mark: 'MX1', panel: 'J/W1' }
const MX1 = takenKey({ mark: 'MX1', diameter: 12, grade: '500E', length: 2900 })
const MY1 = takenKey({ mark: 'MY1', diameter: 12, grade: '500E', length: 1200 })
const B: Piece = { length: 1200, count: 1, mark: 'MY1', panel: 'J/W1' }

function cut(bars: number, pieces: Piece[], plan: string | null = 'P', lost: Piece[] = []): CutFacts {
  const by = { id: 'p', name: 'n', role: 'floor' as const }
  return {
    cut: {
      plan,
      line: 1,
      diameter: 12,
      grade: '500E',
      from: { bundle: 'B' },
      stock: 7500,
      bars,
      pieces,
      lost,
      offcut: 0,
      kept: false,
    },
    entry: `c-${bars}`,
    tip: `c-${bars}`,
    by,
    seen: '',
    made: '',
    bundle: 'B',
    through: [],
  }
}

function plan(cuts: CutFacts[], replacedBy: string | null = null): CutPlanFacts {
  const line = (count: number, pieces: Piece[]) => ({ stock: 7500, count, rack: false, pieces, offcut: 0 })
  return {
    entry: 'P',
    plan: { diameter: 12, grade: '500E', kerf: 0, keep: null, lines: [line(3, [A, B]), line(1, [A])] },
    by: { id: 'p', name: 'n', role: 'lead' },
    seen: '',
    replacedBy,
    cut: [0, 0],
    cuts,
  }
}

describe('what a plan at the shear still owes', () => {
  it('is everything before the first cut and nothing after the last', () => {
    expect(restOfPlan(plan([]))).toEqual([
      { ...A, count: 8 },
      { ...B, count: 3 },
    ])
    const done = plan([cut(3, [A, B]), cut(1, [A])])
    expect(restOfPlan(done)).toEqual([])
    expect(isOpenPlan(done)).toBe(false)
  })

  it('owes a piece that came out wrong, though its bar is cut', () => {
    const wrong = cut(1, [{ ...A, count: 1 }, B], 'P', [{ ...A, count: 1 }])
    expect(restOfPlan(plan([cut(2, [A, B]), cut(1, [A]), wrong]))).toEqual([{ ...A, count: 1 }])
  })

  it('counts planned pieces once, cut or not, and of a replaced plan only those that were cut', () => {
    const half = [cut(2, [A, B])]
    const taken = (plans: CutPlanFacts[]) => piecesTaken({ plans, cuts: half }).get('J/W1')
    expect(taken([plan(half)])).toEqual(
      new Map([
        [MX1, 8],
        [MY1, 3],
      ]),
    )
    expect(taken([plan(half, 'P2')])).toEqual(
      new Map([
        [MX1, 4],
        [MY1, 2],
      ]),
    )
  })

  it('does not take a mark as cut that was revised to another length, size or grade', () => {
    const taken = piecesTaken({ plans: [plan([])], cuts: [] }).get('J/W1')
    const bar = { diameter: 12, grade: '500E', mark: 'MX1', length: 2900 }
    expect(taken?.get(takenKey(bar))).toBe(8)
    for (const change of [{ length: 3100 }, { diameter: 16 }, { grade: '300E' }]) {
      expect(taken?.get(takenKey({ ...bar, ...change }))).toBeUndefined()
    }
  })

  it('promises the bars of open plans once, and none of a plan that is done or replaced', () => {
    const half = { ...plan([cut(2, [A, B])]), cut: [2, 0] }
    expect(barsPromised([half])).toEqual([
      { diameter: 12, grade: '500E', length: 7500, count: 1, rack: false },
      { diameter: 12, grade: '500E', length: 7500, count: 1, rack: false },
    ])
    expect(barsPromised([half], 'P')).toEqual([])
    expect(barsPromised([{ ...half, replacedBy: 'P2' }])).toEqual([])
  })

  it('leaves an offcut of the whole length that is worth keeping, kerf off', () => {
    expect(leftAfterCut({ kerf: 5.3 }, { offcut: 512.3 })).toBe(507)
    expect(512.3 - 5.3).toBeLessThan(507)
    expect(leftAfterCut({ kerf: 3 }, { offcut: 2 })).toBe(0)
  })

  it('has no length for a bundle of which neither length ordered nor one measured is known', () => {
    const came = { ordered: { diameter: 12, grade: '500E' } }
    const facts = { id: 'B', entry: '', by: plan([]).by, seen: '', decisions: [], cutBars: 0, others: [] }
    expect(barLength({ ...facts, came: { ...came, lengths: [] } })).toBeNull()
    expect(barLength({ ...facts, came: { ...came, lengths: [5990, 6000] } })).toBe(5990)
  })

  it('never owes more than was planned, nor less than planned less made', () => {
    fc.assert(
      fc.property(fc.nat({ max: 6 }), fc.nat({ max: 4 }), (first, second) => {
        const rest = restOfPlan(
          plan([...(first ? [cut(first, [A, B])] : []), ...(second ? [cut(second, [A])] : [])]),
        )
        const owed = rest.reduce((sum, { count }) => sum + count, 0)
        expect(owed).toBe(Math.max(0, 8 - 2 * first - 2 * second) + Math.max(0, 3 - first))
      }),
    )
  })
})
