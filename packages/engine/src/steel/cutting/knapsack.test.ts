import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { certifiedBound } from './bound.ts'
import { knapsack, sparseKnapsack } from './knapsack.ts'

/** Best worth by trying every count. */
function everyWay(sizes: number[], values: number[], most: number[], capacity: number, at = 0): number {
  const size = sizes[at]
  if (size === undefined) return 0
  let best = 0
  for (let count = 0; count <= (most[at] ?? 0) && count * size <= capacity; count += 1) {
    const rest = everyWay(sizes, values, most, capacity - count * size, at + 1)
    best = Math.max(best, count * (values[at] ?? 0) + rest)
  }
  return best
}

const item = fc.tuple(
  fc.integer({ min: 1, max: 12 }),
  fc.integer({ min: 0, max: 20 }),
  fc.integer({ min: 0, max: 5 }),
)

describe('best filling of a bar', () => {
  it.each([
    ['table of every length', knapsack],
    ['lengths that can be reached', sparseKnapsack],
  ])(
    'property (seed 99), %s: the worth of every capacity is that of trying every way, and the counts make it',
    (_, fill) => {
      fc.assert(
        fc.property(
          fc.array(item, { minLength: 1, maxLength: 5 }),
          fc.integer({ min: 1, max: 40 }),
          (items, capacity) => {
            const sizes = items.map(([size]) => size)
            const values = items.map(([, value]) => value)
            const most = items.map(([, , count]) => count)
            const sack = fill({ sizes, values, most, capacity })
            for (let limit = 0; limit <= capacity; limit += 1) {
              expect(sack.value(limit)).toBe(everyWay(sizes, values, most, limit))
              const counts = sack.counts(limit)
              expect(
                counts.reduce((sum, count, index) => sum + count * (sizes[index] ?? 0), 0),
              ).toBeLessThanOrEqual(limit)
              expect(counts.reduce((sum, count, index) => sum + count * (values[index] ?? 0), 0)).toBe(
                sack.value(limit),
              )
              for (const [index, count] of counts.entries())
                expect(count).toBeLessThanOrEqual(most[index] ?? 0)
            }
          },
        ),
        { seed: 99, numRuns: 100 },
      )
    },
  )
})

describe('certified bound', () => {
  const problem = {
    sizes: [45, 36, 31, 14],
    demand: [97, 610, 395, 211],
    bins: [{ capacity: 100, cost: 100, limit: Number.POSITIVE_INFINITY }],
    shortCost: null,
  }

  it('the textbook prices give 452.25 bars; wild prices still give a true bound', () => {
    expect(certifiedBound(problem, [50, 50, 25, 0]).bound).toBe(45_225)
    for (const prices of [
      [100, 100, 100, 100],
      [1e9, 0, 0, 0],
      [Number.NaN, -5, 31, Number.POSITIVE_INFINITY],
      [0, 0, 0, 0],
    ]) {
      const { bound } = certifiedBound(problem, prices)
      expect(bound).toBeGreaterThanOrEqual(0)
      expect(bound).toBeLessThanOrEqual(45_300)
    }
  })

  it('limited bars take off what they are worth over their cost', () => {
    const free = { capacity: 45, cost: 0, limit: 10 }
    const { bound } = certifiedBound({ ...problem, bins: [...problem.bins, free] }, [50, 50, 25, 0])
    // Each of the ten free bars holds one 45, worth 50.
    expect(bound).toBe(45_225 - 500)
  })
})
