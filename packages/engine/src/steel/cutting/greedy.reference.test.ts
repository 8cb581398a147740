import { describe, expect, it } from 'vitest'
import { firstFit } from './greedy.ts'
import { patternsWithin } from './patterns.ts'
import type { CutProblem } from './problem.ts'

function problemOf(length: number, text: string): CutProblem {
  const items = text.split(' ').map((item) => item.split(':').map(Number))
  return {
    sizes: items.map(([size]) => size ?? 0),
    demand: items.map(([, count]) => count ?? 0),
    bins: [{ capacity: length, cost: length, limit: Number.POSITIVE_INFINITY }],
    shortCost: null,
  }
}

/** Rolls of a paper mill: the published example of the cutting stock problem, 73 rolls at best. */
const ROLLS = problemOf(
  5600,
  '2200:20 2150:18 2140:16 2100:14 2050:12 2000:10 1930:20 1880:18 1820:18 1710:14 1560:12 1520:25 1380:22',
)

describe('first fit, longest first', () => {
  // Computed, second method: first fit written apart in two languages.
  it.each([
    ['rolls of a paper mill', ROLLS, 82],
    ['published model cutstock', problemOf(100, '45:97 36:610 31:395 14:211'), 485],
    ['Fourer, Gay, Kernighan: AMPL', problemOf(110, '75:8 55:10 50:24 45:35 20:48'), 47],
    ['Fieldhouse 1990 family', problemOf(132, '44:2 33:3 12:6'), 3],
    ['bars of 12 m', problemOf(12_000, '5400:14 3775:22 2950:18 2150:30 1350:25'), 28],
    ['bars of 6 m', problemOf(6000, '2950:11 2400:9 1750:16 1250:13 875:20'), 21],
    ['bars of 9 m', problemOf(9000, '4200:7 3300:11 2675:9 1800:16'), 15],
    ['round sizes', problemOf(12_000, '5000:4 4000:6 3000:4'), 5],
  ] as const)('%s', (_, problem, bars) => {
    const { uses, short } = firstFit(problem, [0])
    expect(uses).toHaveLength(bars)
    expect(short.every((count) => count === 0)).toBe(true)
  })
})

describe('the rolls of a paper mill', () => {
  it('73 rolls leave 0.4012 % over', () => {
    const asked = ROLLS.sizes.reduce((sum, size, index) => sum + size * (ROLLS.demand[index] ?? 0), 0)
    expect(asked).toBe(407_160)
    expect((100 * (73 * 5600 - asked)) / (73 * 5600)).toBeCloseTo(0.4012, 4)
  })

  it('the full patterns hold the 308 published ways to cut a roll, and no other', () => {
    const zero = { bound: 0, scale: 1, prices: ROLLS.sizes.map(() => 0), worth: [0] }
    const full = patternsWithin(ROLLS, zero, 1e15, 10_000, Number.POSITIVE_INFINITY)
    const ways = new Set<string>()
    const hold = (counts: readonly number[]): void => {
      const key = counts.join()
      if (ways.has(key)) return
      ways.add(key)
      for (const [index, count] of counts.entries()) {
        if (count > 0) hold(counts.with(index, count - 1))
      }
    }
    for (const { counts } of full ?? []) hold(counts)
    // The roll that is not cut is no way to cut it.
    expect(ways.size - 1).toBe(308)
  })
})
