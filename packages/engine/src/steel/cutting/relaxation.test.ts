import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { certifiedBound } from './bound.ts'
import { FillingSearch } from './filling.ts'
import { Generation } from './generation.ts'
import { knapsack } from './knapsack.ts'
import { Master } from './master.ts'
import type { CutProblem } from './problem.ts'

const FAR = Number.POSITIVE_INFINITY

function relaxed(problem: CutProblem) {
  const generation = new Generation(problem)
  const free = problem.bins.map((bin) => bin.limit)
  return generation.relax(problem.demand, free, performance.now() + 60_000, () => false)
}

describe('linear program of the cutting plan', () => {
  it('takes the column that costs least for what it supplies', () => {
    const master = new Master([6], [], 100, 1e-9)
    master.add(3, [0], [1])
    const cheap = master.add(4, [0], [2])
    expect(master.solve(FAR)).toBe(true)
    expect(master.times()[cheap]).toBeCloseTo(3, 9)
    expect(master.outcome()).toEqual({ lacking: 0, cost: expect.closeTo(12, 9) })
    expect(master.prices()[0]).toBeCloseTo(2, 9)
  })

  it('a limited kind has a price of its own, and what it cannot supply is lacking', () => {
    const master = new Master([5], [3], 100, 1e-9)
    master.add(2, [0, 1], [1, 1])
    expect(master.solve(FAR)).toBe(true)
    expect(master.outcome()).toEqual({ lacking: expect.closeTo(2, 6), cost: expect.closeTo(206, 6) })
    expect(master.prices()[0]).toBeCloseTo(100, 9)
    expect(master.prices()[1]).toBeCloseTo(-98, 9)
  })
})

describe('best filling of a bar by branch and bound', () => {
  it('property (seed 1990): worth as much as the table of every length finds', () => {
    const item = fc.tuple(
      fc.integer({ min: 1, max: 30 }),
      fc.integer({ min: 0, max: 40 }),
      fc.integer({ min: 0, max: 4 }),
    )
    fc.assert(
      fc.property(
        fc.array(item, { minLength: 1, maxLength: 9 }),
        fc.integer({ min: 1, max: 90 }),
        (items, capacity) => {
          const sizes = items.map(([size]) => size)
          const values = items.map(([, value]) => value)
          const most = items.map(([, , count]) => count)
          const best = knapsack({ sizes, values, most, capacity }).value(capacity)
          const found = new FillingSearch(sizes).search(values, most, capacity, 0, 1e6)
          expect(found.best).toBe(true)
          expect(found.value).toBe(best)
          const length = found.sizes.reduce(
            (sum, size, i) => sum + (sizes[size] ?? 0) * (found.counts[i] ?? 0),
            0,
          )
          const worth = found.sizes.reduce(
            (sum, size, i) => sum + (values[size] ?? 0) * (found.counts[i] ?? 0),
            0,
          )
          expect(length).toBeLessThanOrEqual(capacity)
          expect(worth).toBe(best)
        },
      ),
      { seed: 1990, numRuns: 300 },
    )
  })
})

describe('relaxation by column generation', () => {
  it('property (seed 61): its cost is the bound that its prices certify', () => {
    const sizes = fc.uniqueArray(fc.integer({ min: 12, max: 90 }), { minLength: 1, maxLength: 12 })
    fc.assert(
      fc.property(sizes, fc.integer({ min: 1, max: 9 }), fc.boolean(), (lengths, count, two) => {
        const ordered = [...lengths].sort((a, b) => b - a)
        const bins = [{ capacity: 100, cost: 100, limit: FAR }]
        if (two) bins.push({ capacity: 60, cost: 55, limit: 2 })
        const problem = {
          sizes: ordered,
          demand: ordered.map((_, i) => 1 + ((i * count) % 7)),
          bins,
          shortCost: null,
        }
        const { cost, prices, complete, lacking } = relaxed(problem)
        expect(complete).toBe(true)
        expect(lacking).toBeLessThan(1e-6)
        const { bound } = certifiedBound(problem, prices)
        expect(bound).toBeLessThanOrEqual(cost * (1 + 1e-9))
        expect(bound).toBeGreaterThan(cost * (1 - 1e-5))
      }),
      { seed: 61, numRuns: 150 },
    )
  })
})
