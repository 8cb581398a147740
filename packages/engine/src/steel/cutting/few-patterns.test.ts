import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fewPatterns } from './few-patterns.ts'
import { greedyFill } from './greedy.ts'
import { parseCutList } from './list.ts'
import { cutPlan } from './plan.ts'
import type { CutProblem } from './problem.ts'

const list = (patterns?: number) =>
  parseCutList({
    stock: [{ length: 6000 }],
    pieces: [
      { length: 2950, count: 11 },
      { length: 2400, count: 9 },
      { length: 1750, count: 16 },
      { length: 1250, count: 13 },
      { length: 875, count: 20 },
    ],
    ...(patterns === undefined ? {} : { patterns }),
  })

describe('a limit on different ways of cutting', () => {
  it('keeps the limit where that is possible and says when more bars were needed for it', async () => {
    const free = await cutPlan({ list: list(), within: 5 })
    for (const most of [6, 5]) {
      const plan = await cutPlan({ list: list(most), within: 5 })
      expect(plan.ways).toBeLessThanOrEqual(most)
      expect(plan.tooManyWays).toBeUndefined()
      expect(plan.stockLength).toBeGreaterThanOrEqual(free.stockLength)
      expect(plan.proven).toBe(plan.stockLength === free.stockLength)
    }
  })

  it('says so where no plan was found with so few', async () => {
    const plan = await cutPlan({ list: list(1), within: 5 })
    expect(plan.tooManyWays).toBe(true)
    expect(plan.ways).toBeGreaterThan(1)
  })

  it('never changes what is cut: every piece as often as asked, every bar within its length, limits of stock kept', () => {
    const piece = fc.record({
      length: fc.integer({ min: 300, max: 2900 }),
      count: fc.integer({ min: 1, max: 40 }),
    })
    const pieces = fc.uniqueArray(piece, { minLength: 1, maxLength: 9, selector: ({ length }) => length })
    fc.assert(
      fc.property(pieces, fc.integer({ min: 1, max: 9 }), (drawn, most) => {
        const sorted = [...drawn].sort((a, b) => b.length - a.length)
        const problem: CutProblem = {
          sizes: sorted.map(({ length }) => length),
          demand: sorted.map(({ count }) => count),
          bins: [
            { capacity: 6000, cost: 6000, limit: Number.POSITIVE_INFINITY },
            { capacity: 3000, cost: 3000, limit: 4 },
          ],
          shortCost: null,
        }
        const answer = greedyFill(problem)
        const few = fewPatterns({ problem, answer, most, deadline: performance.now() + 300 })
        const made = problem.sizes.map((_, size) =>
          few.uses.reduce((sum, use) => sum + use.times * (use.counts[size] ?? 0), 0),
        )
        expect(made).toEqual(problem.demand)
        for (const { bin, counts } of few.uses) {
          const used = counts.reduce((sum, count, size) => sum + count * (problem.sizes[size] ?? 0), 0)
          expect(used).toBeLessThanOrEqual(problem.bins[bin]?.capacity ?? 0)
        }
        const limited = few.uses.filter(({ bin }) => bin === 1).reduce((sum, { times }) => sum + times, 0)
        expect(limited).toBeLessThanOrEqual(4)
        expect(few.cost).toBe(
          few.uses.reduce((sum, { bin, times }) => sum + times * (problem.bins[bin]?.cost ?? 0), 0),
        )
      }),
      { numRuns: 60 },
    )
  })

  it('comes to far fewer ways with 200 sizes too, in the time that it has', async () => {
    const pieces = Array.from({ length: 200 }, (_, at) => ({ length: 400 + 27 * at, count: 3 + (at % 17) }))
    const plan = await cutPlan({ list: { stock: [{ length: 12_000 }], patterns: 10, pieces }, within: 1 })
    expect(plan.tooManyWays).toBe(true)
    expect(plan.ways).toBeLessThan(150)
  }, 30_000)
})
