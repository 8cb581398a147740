import { type Knapsack, knapsack } from './knapsack.ts'
import { type CutAnswer, type CutProblem, type CutUse, costOf } from './problem.ts'

/**
 * A feasible plan by filling one bar after another as full as it goes, best cost for length first, each filling repeated as
 * often as demand allows. `left` is what is still to be cut of each size. After `until` (ms of `performance.now`) bars are filled longest piece
 * first, which takes no time.
 */
export function greedyFill(
  problem: CutProblem,
  left: readonly number[] = problem.demand,
  used: readonly number[] = problem.bins.map(() => 0),
  until = Number.POSITIVE_INFINITY,
): CutAnswer {
  const { sizes, bins } = problem
  const rest = [...left]
  const free = bins.map((bin, index) => bin.limit - (used[index] ?? 0))
  const uses: CutUse[] = []
  while (rest.some((count) => count > 0)) {
    const open = bins.flatMap((_, index) => ((free[index] ?? 0) > 0 ? [index] : []))
    const capacity = Math.max(0, ...open.map((index) => bins[index]?.capacity ?? 0))
    // Long pieces first: a little more worth than their length.
    const longest = sizes[0] ?? 1
    const values = sizes.map((size) => size * (1 + (0.05 * size) / longest))
    const sack =
      performance.now() > until
        ? longestFirst(sizes, values, rest)
        : knapsack({ sizes, values, most: rest, capacity })
    let best: { readonly bin: number; readonly rate: number } | null = null
    for (const bin of open) {
      const value = sack.value(bins[bin]?.capacity ?? 0)
      if (!(value > 0)) continue
      const rate = (bins[bin]?.cost ?? 0) / value
      if (best === null || rate < best.rate) best = { bin, rate }
    }
    if (best === null) break
    const { bin } = best
    const counts = sack.counts(bins[bin]?.capacity ?? 0)
    const times = counts.reduce(
      (least, count, size) => (count > 0 ? Math.min(least, Math.floor((rest[size] ?? 0) / count)) : least),
      free[bin] ?? 0,
    )
    uses.push({ bin, counts, times })
    free[bin] = (free[bin] ?? 0) - times
    for (const [size, count] of counts.entries()) rest[size] = (rest[size] ?? 0) - count * times
  }
  return { uses, short: rest, cost: costOf(problem, uses, rest) }
}

/** One bar filled with the longest pieces that still fit. */
function longestFirst(
  sizes: readonly number[],
  values: readonly number[],
  most: readonly number[],
): Knapsack {
  const counts = (capacity: number): number[] => {
    let left = capacity
    return sizes.map((size, index) => {
      const count = Math.min(most[index] ?? 0, Math.floor(left / size))
      left -= count * size
      return count
    })
  }
  return {
    counts,
    value: (capacity) =>
      counts(capacity).reduce((sum, count, index) => sum + count * (values[index] ?? 0), 0),
  }
}

/** First fit decreasing over the bars in the order given: the yard hand's way, kept as a second start. */
export function firstFit(problem: CutProblem, order: readonly number[]): CutAnswer {
  const { sizes, demand, bins } = problem
  const bars: { bin: number; room: number; counts: number[] }[] = []
  const free = bins.map((bin) => bin.limit)
  const short = demand.map(() => 0)
  for (const [size, count] of demand.entries()) {
    const length = sizes[size] ?? 0
    for (let piece = 0; piece < count; piece += 1) {
      let bar = bars.find((each) => each.room >= length)
      if (bar === undefined) {
        const bin = order.find((each) => (free[each] ?? 0) > 0 && (bins[each]?.capacity ?? 0) >= length)
        if (bin === undefined) {
          short[size] = count - piece
          break
        }
        free[bin] = (free[bin] ?? 0) - 1
        bar = { bin, room: bins[bin]?.capacity ?? 0, counts: sizes.map(() => 0) }
        bars.push(bar)
      }
      bar.room -= length
      bar.counts[size] = (bar.counts[size] ?? 0) + 1
    }
  }
  const uses = bars.map(({ bin, counts }) => ({ bin, counts, times: 1 }))
  return { uses, short, cost: costOf(problem, uses, short) }
}
