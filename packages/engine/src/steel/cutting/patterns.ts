import type { CutBound } from './bound.ts'
import type { CutProblem, Pattern } from './problem.ts'

/**
 * Every full pattern that a plan cheaper than `better` (or as cheap) could hold: its cost less its worth at the proven prices is at most the
 * room between bound and `better`. Null where there are more than `most`, or time runs out.
 */
export function patternsWithin(
  problem: CutProblem,
  proof: CutBound,
  better: number,
  most: number,
  deadline: number,
): Pattern[] | null {
  const { sizes, demand, bins } = problem
  const room = (better - proof.bound) * proof.scale + 1
  const found: Pattern[] = []
  // Best worth of a millimetre among the sizes from here on, for the bound of the search.
  const rate = sizes.map(() => 0)
  for (let i = sizes.length - 1; i >= 0; i -= 1) {
    rate[i] = Math.max((proof.prices[i] ?? 0) / (sizes[i] ?? 1), rate[i + 1] ?? 0)
  }
  const shortest = sizes.at(-1) ?? 1
  let visits = 0
  for (const [index, bin] of bins.entries()) {
    const cost = bin.cost * proof.scale
    // A limited bar also pays its rent: what it is worth over its cost.
    const rent = Number.isFinite(bin.limit) ? Math.max(0, (proof.worth[index] ?? 0) - cost) : 0
    const wanted = cost + rent - room
    const counts = sizes.map(() => 0)
    const search = (size: number, left: number, worth: number): boolean => {
      visits += 1
      if (visits % 4096 === 0 && performance.now() > deadline) return false
      if (size === sizes.length || left < shortest) {
        if (worth < wanted || !isFull(counts, left, sizes, demand)) return true
        found.push({ bin: index, counts: [...counts] })
        return found.length <= most
      }
      if (worth + left * (rate[size] ?? 0) * (1 + 1e-12) < wanted) return true
      const each = sizes[size] as number
      const top = Math.min(demand[size] ?? 0, Math.floor(left / each))
      for (let count = top; count >= 0; count -= 1) {
        counts[size] = count
        if (!search(size + 1, left - count * each, worth + count * (proof.prices[size] ?? 0))) return false
      }
      counts[size] = 0
      return true
    }
    if (!search(0, bin.capacity, 0)) return null
  }
  return found
}

/** No further piece fits: others are contained in full ones. */
function isFull(
  counts: readonly number[],
  left: number,
  sizes: readonly number[],
  demand: readonly number[],
): boolean {
  return sizes.every((size, index) => size > left || (counts[index] ?? 0) >= (demand[index] ?? 0))
}
