import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseCutList } from './list.ts'
import { cutPlan } from './plan.ts'
import { restOfCut } from './rest.ts'

const LIST = parseCutList({
  stock: [{ length: 6000, count: 10 }],
  offcuts: [{ length: 2600, count: 1 }],
  kerf: 4,
  keep: 900,
  pieces: [{ length: 2500, count: 9, mark: 'B1' }],
})

describe('the rest of a cut', () => {
  it('what is cut stays cut, a lost piece comes back, kept offcuts lie in the rack', async () => {
    const plan = await cutPlan({ list: LIST, within: 5 })
    const line = plan.bars.findIndex(({ rack }) => rack !== true)
    const rack = plan.bars.findIndex((bar) => bar.rack === true)
    const { list, wrong } = restOfCut({
      list: LIST,
      plan,
      cut: [
        { line, bars: 3 },
        { line: rack, bars: 1 },
      ],
      lost: [{ length: 2500, count: 1, mark: 'B1' }],
    })
    expect(wrong).toEqual([])
    // 3 bars of two and one from the rack: 7 cut, 1 lost, so 9 − 6 are wanted. 6000 − 2 · 2500 − 2 · 4 = 992 is kept.
    expect(list).toEqual({
      stock: [{ length: 6000, count: 7 }],
      offcuts: [{ length: 992, count: 3 }],
      kerf: 4,
      keep: 900,
      pieces: [{ length: 2500, count: 3, mark: 'B1' }],
    })
    expect(parseCutList(list)).toEqual(list)
  })

  it('nothing is left once everything is cut', async () => {
    const plan = await cutPlan({ list: LIST, within: 5 })
    const cut = plan.bars.map(({ count }, line) => ({ line, bars: count }))
    expect(restOfCut({ list: LIST, plan, cut })).toEqual({ list: null, wrong: [] })
  })

  it.each([
    [[{ line: 0, bars: 99 }], [], 'line 1: 99 bars cut'],
    [[{ line: 9, bars: 1 }], [], 'line 10'],
    [[{ line: 0, bars: -1 }], [], 'line 1: -1'],
    [[], [{ length: 2500, count: 1, mark: 'B1' }], '1 × 2500 B1 lost'],
  ])('what cannot have happened is told: %j, lost %j', async (cut, lost, text) => {
    const plan = await cutPlan({ list: LIST, within: 5 })
    const rest = restOfCut({ list: LIST, plan, cut, lost })
    expect(rest.list).toBeNull()
    expect(rest.wrong.join()).toContain(text)
  })

  it('property (seed 231): pieces cut and pieces of the rest are the pieces asked, and the rest takes no more bars than the plan had left', async () => {
    const piece = fc.record({
      length: fc.integer({ min: 2, max: 11 }).map((each) => each * 500),
      count: fc.integer({ min: 1, max: 6 }),
      mark: fc.constantFrom('A', 'B', 'C'),
    })
    const share = fc.integer({ min: 0, max: 3 })
    await fc.assert(
      fc.asyncProperty(fc.array(piece, { minLength: 1, maxLength: 6 }), share, async (pieces, thirds) => {
        const list = parseCutList({ stock: [{ length: 6000 }], pieces })
        const plan = await cutPlan({ list, within: 5 })
        const cut = plan.bars.map(({ count }, line) => ({ line, bars: Math.floor((count * thirds) / 3) }))
        const rest = restOfCut({ list, plan, cut })
        expect(rest.wrong).toEqual([])
        const total = (each: readonly { readonly length: number; readonly count: number }[]): number =>
          each.reduce((sum, { length, count }) => sum + length * count, 0)
        const done = plan.bars.reduce((sum, bar, line) => sum + total(bar.pieces) * (cut[line]?.bars ?? 0), 0)
        expect(done + total(rest.list?.pieces ?? [])).toBe(total(pieces))
        if (rest.list === null) return
        const again = await cutPlan({ list: rest.list, within: 5 })
        const left = plan.bars.reduce(
          (sum, bar, line) => sum + bar.stock * (bar.count - (cut[line]?.bars ?? 0)),
          0,
        )
        expect(again.stockLength).toBeLessThanOrEqual(left)
      }),
      { seed: 231, numRuns: 30 },
    )
  })
})
