import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { InputError } from '../../working/issue.ts'
import { type CutList, parseCutList } from './list.ts'
import { type CutPlan, cutPlan } from './plan.ts'

/** Least new stock, then least rack, by trying every way; null where the counts cannot supply. Small lists only. */
function bruteForce({
  stock,
  offcuts = [],
  kerf = 0,
  pieces,
}: CutList): { stock: number; rack: number } | null {
  const lengths = pieces.flatMap(({ length, count }) => Array.from({ length: count }, () => length))
  lengths.sort((a, b) => b - a)
  const bins = [
    ...stock.map(({ length, count }) => ({ length, left: count ?? lengths.length, rack: false })),
    ...offcuts.map(({ length, count }) => ({ length, left: count, rack: true })),
  ]
  let best: { stock: number; rack: number } | null = null
  const open: number[] = []
  const place = (at: number, used: number, rack: number): void => {
    if (best !== null && (used > best.stock || (used === best.stock && rack >= best.rack))) return
    const length = lengths[at]
    if (length === undefined) {
      best = { stock: used, rack }
      return
    }
    const tried = new Set<number>()
    for (let i = 0; i < open.length; i += 1) {
      const room = open[i] ?? 0
      if (room < length + kerf || tried.has(room)) continue
      tried.add(room)
      open[i] = room - length - kerf
      place(at + 1, used, rack)
      open[i] = room
    }
    for (const bin of bins) {
      if (bin.left === 0 || bin.length < length) continue
      bin.left -= 1
      open.push(bin.length - length)
      place(at + 1, used + (bin.rack ? 0 : bin.length), rack + (bin.rack ? bin.length : 0))
      open.pop()
      bin.left += 1
    }
  }
  place(0, 0, 0)
  return best
}

/** What holds of every plan, whatever it is. */
function expectSound(list: CutList, plan: CutPlan): void {
  const kerf = list.kerf ?? 0
  const made = new Map<number, number>()
  const taken = new Map<string, number>()
  for (const bar of plan.bars) {
    const count = bar.pieces.reduce((sum, piece) => sum + piece.count, 0)
    const used = bar.pieces.reduce((sum, piece) => sum + piece.length * piece.count, 0) + (count - 1) * kerf
    expect(bar.offcut).toBeCloseTo(bar.stock - used, 6)
    expect(bar.offcut).toBeGreaterThanOrEqual(0)
    for (const piece of bar.pieces) {
      made.set(piece.length, (made.get(piece.length) ?? 0) + piece.count * bar.count)
    }
    const key = `${bar.rack === true}:${bar.stock}`
    taken.set(key, (taken.get(key) ?? 0) + bar.count)
  }
  const asked = new Map<number, number>()
  for (const { length, count } of list.pieces) asked.set(length, (asked.get(length) ?? 0) + count)
  expect(made).toEqual(asked)
  const limits = new Map<string, number>()
  for (const { length, count } of list.stock) {
    limits.set(`false:${length}`, (limits.get(`false:${length}`) ?? 0) + (count ?? Number.POSITIVE_INFINITY))
  }
  for (const { length, count } of list.offcuts ?? []) {
    limits.set(`true:${length}`, (limits.get(`true:${length}`) ?? 0) + count)
  }
  for (const [key, count] of taken) expect(count).toBeLessThanOrEqual(limits.get(key) ?? 0)
  expect(plan.lowerBound).toBeLessThanOrEqual(plan.stockLength + 1e-6)
  const net = list.pieces.reduce((sum, { length, count }) => sum + length * count, 0)
  expect(plan.netLength).toBeCloseTo(net, 6)
  expect(JSON.stringify(plan)).not.toMatch(/null/)
}

describe('cutting plan', () => {
  it('property (seed 1961): as good as trying every way, pieces exactly as asked', async () => {
    const length = fc.integer({ min: 2, max: 12 })
    const list = fc.record({
      stock: fc.array(fc.record({ length: fc.integer({ min: 8, max: 16 }) }), { minLength: 1, maxLength: 2 }),
      offcuts: fc.array(
        fc.record({ length: fc.integer({ min: 3, max: 12 }), count: fc.integer({ min: 1, max: 2 }) }),
        { maxLength: 2 },
      ),
      kerf: fc.constantFrom(0, 0.3, 1),
      pieces: fc.array(fc.record({ length, count: fc.integer({ min: 1, max: 2 }) }), {
        minLength: 1,
        maxLength: 4,
      }),
    })
    await fc.assert(
      fc.asyncProperty(list, async (value) => {
        const longest = Math.max(...value.stock.map((bar) => bar.length))
        fc.pre(value.pieces.every((piece) => piece.length <= longest))
        const parsed = parseCutList(value)
        const plan = await cutPlan({ list: parsed, within: 10 })
        expectSound(parsed, plan)
        expect(plan.proven).toBe(true)
        const best = bruteForce(parsed)
        expect([plan.stockLength, plan.rackLength]).toEqual([best?.stock, best?.rack])
      }),
      { seed: 1961, numRuns: 50 },
    )
  })

  it('property (seed 77): limited counts: the plan, or the refusal, as trying every way finds it', async () => {
    const list = fc.record({
      stock: fc.array(
        fc.record({ length: fc.integer({ min: 8, max: 16 }), count: fc.integer({ min: 1, max: 2 }) }),
        { minLength: 1, maxLength: 2 },
      ),
      pieces: fc.array(
        fc.record({ length: fc.integer({ min: 3, max: 8 }), count: fc.integer({ min: 1, max: 2 }) }),
        { minLength: 1, maxLength: 3 },
      ),
    })
    await fc.assert(
      fc.asyncProperty(list, async (value) => {
        const parsed = parseCutList(value)
        const best = bruteForce(parsed)
        if (best === null) {
          await expect(cutPlan({ list: parsed, within: 10 })).rejects.toThrow(InputError)
          return
        }
        const plan = await cutPlan({ list: parsed, within: 10 })
        expectSound(parsed, plan)
        expect(plan.stockLength).toBe(best.stock)
      }),
      { seed: 77, numRuns: 50 },
    )
  })

  it('the prices prove the bound without a solver: no full bar holds more worth than its length', async () => {
    const list = parseCutList({
      stock: [{ length: 100 }],
      pieces: [
        { length: 45, count: 97 },
        { length: 36, count: 610 },
        { length: 31, count: 395 },
        { length: 14, count: 211 },
      ],
    })
    const { prices, lowerBound } = await cutPlan({ list, within: 10 })
    const worthOf = (left: number, from: number): number =>
      prices.slice(from).reduce((best, { length, price }, index) => {
        return length <= left ? Math.max(best, price + worthOf(left - length, from + index)) : best
      }, 0)
    expect(worthOf(100, 0)).toBeLessThanOrEqual(100)
    const worth = prices.reduce(
      (sum, { length, price }) =>
        sum + price * (list.pieces.find((piece) => piece.length === length)?.count ?? 0),
      0,
    )
    expect(worth).toBeGreaterThanOrEqual(lowerBound - 1e-6)
    expect(lowerBound).toBeCloseTo(45_225, 3)
  })

  it('two hundred panels’ worth of bars stay within a percent of the bound and within the time', async () => {
    let seed = 5
    const next = (): number => {
      seed = (seed * 48_271) % 2_147_483_647
      return seed / 2_147_483_647
    }
    const list = parseCutList({
      stock: [{ length: 12_000 }],
      kerf: 2,
      pieces: Array.from({ length: 40 }, () => ({
        length: 400 + Math.round(next() * 5200),
        count: 1 + Math.floor(next() * 60),
      })),
    })
    const plan = await cutPlan({ list, within: 3 })
    expectSound(list, plan)
    expect(plan.stockLength / plan.lowerBound).toBeLessThan(1.01)
    expect(plan.seconds).toBeLessThan(6)
  })

  it('with next to no time there is still a sound plan and a true bound, not called proven without proof', async () => {
    const list = parseCutList({
      stock: [{ length: 12_000 }],
      kerf: 3,
      pieces: Array.from({ length: 60 }, (_, i) => ({
        length: 700 + ((i * 797) % 4300),
        count: 1 + (i % 7),
      })),
    })
    const plan = await cutPlan({ list, within: 0.001 })
    expectSound(list, plan)
    const net = list.pieces.reduce((sum, { length, count }) => sum + (length + 3) * count, 0)
    expect(plan.lowerBound).toBeGreaterThan((net / 12_003) * 12_000 * (1 - 1e-6))
  })

  it('lengths with decimals are cut exactly', async () => {
    const list = parseCutList({ stock: [{ length: 0.3 }], pieces: [{ length: 0.1, count: 3 }] })
    expect(await cutPlan({ list, within: 5 })).toMatchObject({ stockLength: 0.3, bars: [{ offcut: 0 }] })
  })

  it.each([
    [{ stock: [], pieces: [{ length: 1, count: 1 }] }, 'stock'],
    [{ stock: [{ length: 6000 }], pieces: [{ length: 6001, count: 1 }] }, 'pieces[0].length'],
    [{ stock: [{ length: 6000 }], pieces: [{ length: 1.00001, count: 1 }] }, 'pieces[0].length'],
    [{ stock: [{ length: 6000 }], kerf: 0.123456, pieces: [{ length: 1, count: 1 }] }, 'kerf'],
    [{ stock: [{ length: 6000, count: 0 }], pieces: [{ length: 1, count: 1 }] }, 'stock[0].count'],
    [{ stock: [{ length: 6000 }], pieces: [{ length: 1, count: 1, name: 'A' }] }, 'pieces[0].name'],
  ])('refuses %j', (value, path) => {
    expect(() => parseCutList(value)).toThrow(path)
  })

  it('counts that cannot supply the pieces: names the piece and the length short', async () => {
    const list = parseCutList({
      stock: [{ length: 6000, count: 2 }],
      pieces: [
        { length: 3500, count: 3, mark: 'B7' },
        { length: 1000, count: 1 },
      ],
    })
    await expect(cutPlan({ list, within: 5 })).rejects.toThrow(/pieces\[0\] \(B7\).*3500 short/)
  })
})
