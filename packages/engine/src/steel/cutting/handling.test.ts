import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseCutList } from './list.ts'
import { cutPlan } from './plan.ts'

describe('offcuts worth keeping', () => {
  const pieces = [{ length: 2500, count: 4 }]

  it.each([
    [{ keep: 1000 }, 'rack', 2000],
    [{ keep: 1000.5 }, 'scrap', 0],
    // A bar of two pieces loses one kerf, and the offcut one more: 6000 - 5000 - 2 · 4 = 992.
    [{ keep: 992, kerf: 4 }, 'rack', 1984],
    [{ keep: 993, kerf: 4 }, 'scrap', 0],
  ])('%j: the offcut goes to %s', async (asked, to, kept) => {
    const plan = await cutPlan({
      list: parseCutList({ stock: [{ length: 6000 }], pieces, ...asked }),
      within: 5,
    })
    expect(plan.bars).toHaveLength(1)
    expect(plan.bars[0]?.offcutTo).toBe(to)
    expect(plan.keptLength).toBe(kept)
  })

  it('says nothing where nothing is left or nothing was asked', async () => {
    const none = parseCutList({ stock: [{ length: 5000 }], keep: 500, pieces })
    expect((await cutPlan({ list: none, within: 5 })).bars[0]).not.toHaveProperty('offcutTo')
    const plain = await cutPlan({ list: parseCutList({ stock: [{ length: 6000 }], pieces }), within: 5 })
    expect(plain.bars[0]).not.toHaveProperty('offcutTo')
    expect(plain).not.toHaveProperty('keptLength')
  })

  it.each([
    [{ keep: 0 }, 'keep'],
    [{ keep: 1.00001 }, 'keep'],
    [{ together: 0 }, 'together'],
    [{ together: 1.5 }, 'together'],
    [{ pieces: [{ length: 1, count: 1, order: -1 }] }, 'pieces[0].order'],
    [{ pieces: [{ length: 1, count: 1, machine: '' }] }, 'pieces[0].machine'],
  ])('refuses %j', (asked, path) => {
    expect(() => parseCutList({ stock: [{ length: 6000 }], pieces, ...asked })).toThrow(path)
  })
})

describe('bars cut at once', () => {
  it.each([
    [
      12,
      5,
      [
        { bars: 5, times: 2 },
        { bars: 2, times: 1 },
      ],
    ],
    [10, 5, [{ bars: 5, times: 2 }]],
    [3, 5, [{ bars: 3, times: 1 }]],
  ])('%i bars, %i at once', async (count, together, batches) => {
    const list = parseCutList({ stock: [{ length: 6000 }], together, pieces: [{ length: 6000, count }] })
    expect((await cutPlan({ list, within: 5 })).bars[0]?.batches).toEqual(batches)
  })
})

describe('pieces sorted out by panel, machine and order', () => {
  it('bars for the earlier panel come first, each piece with its machine', async () => {
    const list = parseCutList({
      stock: [{ length: 6000 }],
      pieces: [
        { length: 6000, count: 1, mark: 'A', panel: 'P2', machine: 'M1', order: 2 },
        { length: 3000, count: 2, mark: 'B', panel: 'P1', machine: 'M2', order: 1 },
        { length: 6000, count: 1, mark: 'C', panel: 'P1', order: 1 },
        { length: 2000, count: 3 },
      ],
    })
    const plan = await cutPlan({ list, within: 5 })
    expect(plan.bars.map(({ pieces }) => pieces[0])).toEqual([
      { length: 6000, count: 1, mark: 'C', panel: 'P1', order: 1 },
      { length: 3000, count: 2, mark: 'B', panel: 'P1', machine: 'M2', order: 1 },
      { length: 6000, count: 1, mark: 'A', panel: 'P2', machine: 'M1', order: 2 },
      { length: 2000, count: 3 },
    ])
  })

  it('property (seed 404): every panel gets each of its pieces, bars in order, no more bars than without panels', async () => {
    const piece = fc.record({
      length: fc.integer({ min: 2, max: 9 }).map((each) => each * 500),
      count: fc.integer({ min: 1, max: 5 }),
      mark: fc.constantFrom('A', 'B'),
      panel: fc.constantFrom('P1', 'P2', 'P3'),
      machine: fc.constantFrom('M1', 'M2'),
      order: fc.integer({ min: 0, max: 3 }),
    })
    const stock = [{ length: 6000 }]
    await fc.assert(
      fc.asyncProperty(fc.array(piece, { minLength: 1, maxLength: 8 }), async (pieces) => {
        const plan = await cutPlan({ list: parseCutList({ stock, pieces }), within: 5 })
        const plain = pieces.map(({ length, count }) => ({ length, count }))
        const bare = await cutPlan({ list: parseCutList({ stock, pieces: plain }), within: 5 })
        expect(plan.stockLength).toBe(bare.stockLength)
        expect(
          totals(plan.bars.flatMap((bar) => bar.pieces.map((each) => ({ ...each, times: bar.count })))),
        ).toEqual(totals(pieces.map((each) => ({ ...each, times: 1 }))))
        const orders = plan.bars.map((bar) => Math.min(...bar.pieces.map(({ order }) => order ?? 9)))
        expect(orders).toEqual([...orders].sort((a, b) => a - b))
      }),
      { seed: 404, numRuns: 30 },
    )
  })
})

function totals(pieces: readonly { readonly count: number; readonly times: number }[]): Map<string, number> {
  const sums = new Map<string, number>()
  for (const { count, times, ...rest } of pieces) {
    const key = JSON.stringify(Object.entries(rest).sort())
    sums.set(key, (sums.get(key) ?? 0) + count * times)
  }
  return new Map([...sums].sort())
}
