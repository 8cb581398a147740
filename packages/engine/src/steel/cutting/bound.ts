import { knapsack } from './knapsack.ts'
import type { CutProblem } from './problem.ts'

/** A lower bound that anybody can check: prices of pieces in whole numbers, and what the best bar of each kind is worth in them. */
export interface CutBound {
  /** True lower bound on the cost, rounded down in the last place only. */
  readonly bound: number
  /** Price of one piece of each size, in parts of `scale`. */
  readonly prices: readonly number[]
  /** Worth of the best bar of each kind, in parts of `scale`. */
  readonly worth: readonly number[]
  readonly scale: number
}

/**
 * Turns prices from a linear program (in floating point) into a proof: they are rounded down to whole parts of a power of two, scaled
 * down until no bar of unlimited stock is worth more than it costs, and each bar of limited stock takes off what it is worth over its
 * cost. No plan costs less than prices × demand less that: weak duality, whatever the prices.
 */
export function certifiedBound(problem: CutProblem, dual: readonly number[]): CutBound {
  const { sizes, demand, bins, shortCost } = problem
  const dearest = Math.max(1, ...bins.map((bin) => bin.cost), shortCost ?? 0)
  const scale = scaleOf(problem, dearest)
  let prices = dual.map((price) => {
    const capped = Math.min(price, shortCost ?? dearest)
    return Number.isFinite(capped) && capped > 0 ? Math.floor(capped * scale) : 0
  })
  const capacity = Math.max(0, ...bins.map((bin) => bin.capacity))
  const sackOf = () => knapsack({ sizes, values: prices, most: demand, capacity })
  let sack = sackOf()
  // Worst ratio of worth to cost among unlimited bars, kept as a fraction.
  let [worth, cost] = [1n, 1n]
  for (const bin of bins) {
    if (Number.isFinite(bin.limit)) continue
    const [value, price] = [BigInt(sack.value(bin.capacity)), BigInt(bin.cost) * BigInt(scale)]
    if (value * cost > worth * price) [worth, cost] = [value, price]
  }
  if (worth > cost) {
    prices = prices.map((price) => Number((BigInt(price) * cost) / worth))
    sack = sackOf()
  }
  const values = bins.map((bin) => sack.value(bin.capacity))
  let total = demand.reduce((sum, count, size) => sum + BigInt(count) * BigInt(prices[size] ?? 0), 0n)
  for (const [index, bin] of bins.entries()) {
    if (!Number.isFinite(bin.limit)) continue
    const over = BigInt(values[index] ?? 0) - BigInt(bin.cost) * BigInt(scale)
    if (over > 0n) total -= over * BigInt(bin.limit)
  }
  const whole = total / BigInt(scale)
  const part = Number(total % BigInt(scale)) / scale
  // The last step down: the sum of a large whole and its part may round up.
  const sum = Number(whole) + part
  const bound = total <= 0n ? 0 : part === 0 ? sum : sum * (1 - 2 ** -52)
  return { bound, prices, worth: values, scale }
}

/**
 * The better of two proofs: from the prices given, and from length alone (a piece is worth its share of the cheapest bar), which holds
 * when time ran out before the prices were good.
 */
export function bestBound(problem: CutProblem, dual: readonly number[]): CutBound {
  const rate = Math.min(...problem.bins.map((bin) => bin.cost / bin.capacity).filter((each) => each > 0))
  const byPrice = certifiedBound(problem, dual)
  if (!Number.isFinite(rate)) return byPrice
  const byLength = certifiedBound(
    problem,
    problem.sizes.map((size) => size * rate),
  )
  return byLength.bound > byPrice.bound ? byLength : byPrice
}

/** Largest power of two for which no bar's worth leaves the exact whole numbers of floating point. */
function scaleOf({ sizes, bins }: CutProblem, dearest: number): number {
  const most = Math.max(1, ...bins.map((bin) => bin.capacity)) / Math.min(...sizes)
  return 2 ** Math.max(0, Math.min(30, Math.floor(50 - Math.log2(dearest * Math.max(1, most)))))
}
