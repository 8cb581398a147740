import { describe, expect, it } from 'vitest'
import {
  fiveOrSix,
  type KnownCut,
  nearHalf,
  noWaste,
  severalStocks,
  triplets,
  uniform,
} from './known-optima.ts'
import { type CutPlan, cutPlan } from './plan.ts'

/** Worth of the best bar at the prices of a plan, by a table over every whole length: nothing of the search is used. */
function bestWorth(plan: CutPlan, most: ReadonlyMap<number, number>, stock: number): number {
  const worth = new Float64Array(stock + 1)
  for (const { length, price } of plan.prices) {
    for (let piece = 0; piece < Math.min(most.get(length) ?? 0, Math.floor(stock / length)); piece += 1) {
      for (let at = stock; at >= length; at -= 1) {
        worth[at] = Math.max(worth[at] as number, (worth[at - length] as number) + price)
      }
    }
  }
  return worth[stock] as number
}

/** Pieces exactly as asked, no bar over its length, and the bound true by its prices. Gives the number of bars. */
function expectProven({ list }: KnownCut, plan: CutPlan): number {
  const stock = list.stock[0]?.length ?? 0
  const asked = new Map(list.pieces.map(({ length, count }) => [length, count]))
  const made = new Map<number, number>()
  let bars = 0
  for (const bar of plan.bars) {
    bars += bar.count
    expect(bar.pieces.reduce((sum, { length, count }) => sum + length * count, 0)).toBeLessThanOrEqual(stock)
    for (const { length, count } of bar.pieces) {
      made.set(length, (made.get(length) ?? 0) + count * bar.count)
    }
  }
  expect(made).toEqual(asked)
  expect(bestWorth(plan, asked, stock)).toBeLessThanOrEqual(stock * (1 + 1e-9))
  const worth = plan.prices.reduce((sum, { length, price }) => sum + price * (asked.get(length) ?? 0), 0)
  expect(worth).toBeGreaterThanOrEqual(plan.lowerBound * (1 - 1e-9))
  return bars
}

describe('cuts whose least number of bars is known', () => {
  const planted = [
    triplets(20, 11),
    triplets(40, 12),
    triplets(83, 13),
    noWaste(6000, 40, 400, 25, 14),
    noWaste(12_000, 18, 700, 1, 15),
    nearHalf(40, 16),
    nearHalf(30, 17),
  ]
  it.each(planted.map((known) => [known.name, known.source, known] as const))(
    '%s: the planted plan is found (%s)',
    async (_name, _source, known) => {
      const plan = await cutPlan({ list: known.list, within: 10 })
      expect(expectProven(known, plan)).toBe(known.planted)
      expect(plan.proven).toBe(true)
    },
    20_000,
  )

  const bounded = [
    uniform(120, 21),
    uniform(250, 22),
    uniform(500, 23),
    fiveOrSix(100, 24),
    fiveOrSix(120, 25),
  ]
  it.each(bounded.map((known) => [known.name, known.source, known] as const))(
    '%s: as few bars as the bound allows, the bound checked by hand (%s)',
    async (_name, _source, known) => {
      const stock = known.list.stock[0]?.length ?? 0
      const plan = await cutPlan({ list: known.list, within: 10 })
      expect(expectProven(known, plan)).toBe(Math.ceil(plan.lowerBound / stock - 1e-9))
    },
    20_000,
  )

  it('a year of work from four stock lengths comes within 0.02 % of the bound (computed, second method: prices)', async () => {
    const stock = [6000, 9000, 12_000, 15_000]
    const list = severalStocks({ pieces: 16_000, lengths: 80, stock, from: 400, to: 8000, seed: 9 })
    const plan = await cutPlan({ list, within: 5 })
    expect(plan.stockLength / plan.lowerBound - 1).toBeLessThan(2e-4)
    const asked = new Map(list.pieces.map(({ length, count }) => [length, count]))
    for (const length of stock) {
      expect(bestWorth(plan, asked, length)).toBeLessThanOrEqual(length * (1 + 1e-9))
    }
  }, 30_000)
})
