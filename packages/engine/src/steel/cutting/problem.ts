/**
 * A cutting problem in whole numbers of the smallest unit in use. The kerf is in the sizes and capacities already: a bar of n pieces
 * loses n − 1 kerfs, so each piece and each bar is one kerf longer.
 */
export interface CutProblem {
  /** Different, longest first. */
  readonly sizes: readonly number[]
  /** Pieces of each size. */
  readonly demand: readonly number[]
  readonly bins: readonly CutBin[]
  /** Cost of one piece that is not supplied; null where unlimited stock can supply every piece. */
  readonly shortCost: number | null
}

export interface CutBin {
  readonly capacity: number
  /** Whole number, not below 0. */
  readonly cost: number
  /** Bars of it; Infinity where not limited. */
  readonly limit: number
}

/** How one bar is cut: pieces of each size. */
export interface Pattern {
  readonly bin: number
  readonly counts: readonly number[]
}

export interface CutUse extends Pattern {
  readonly times: number
}

/** Bars cut so that demand is met, as good as found. */
export interface CutAnswer {
  readonly uses: readonly CutUse[]
  /** Pieces of each size that are not supplied. */
  readonly short: readonly number[]
  readonly cost: number
}

export function costOf(problem: CutProblem, uses: readonly CutUse[], short: readonly number[]): number {
  const bars = uses.reduce((sum, use) => sum + use.times * (problem.bins[use.bin]?.cost ?? 0), 0)
  return short.reduce((sum, count) => sum + count * (problem.shortCost ?? 0), bars)
}

/**
 * Takes off what is cut beyond demand, so that pieces come out exactly as asked. Bars left empty go back to stock.
 */
export function withoutSurplus(problem: CutProblem, uses: readonly CutUse[]): CutUse[] {
  let trimmed = uses.filter((use) => use.times > 0).map((use) => ({ ...use, counts: [...use.counts] }))
  for (const [size, wanted] of problem.demand.entries()) {
    let surplus = trimmed.reduce((sum, use) => sum + use.times * (use.counts[size] ?? 0), 0) - wanted
    const next: typeof trimmed = []
    for (const use of trimmed) {
      let times = use.times
      while (surplus > 0 && times > 0 && (use.counts[size] ?? 0) > 0) {
        const each = Math.min(use.counts[size] ?? 0, surplus)
        const bars = Math.min(times, Math.floor(surplus / each))
        const counts = [...use.counts]
        counts[size] = (counts[size] ?? 0) - each
        next.push({ ...use, counts, times: bars })
        times -= bars
        surplus -= bars * each
      }
      if (times > 0) next.push({ ...use, times })
    }
    trimmed = next
  }
  return merged(trimmed.filter((use) => use.counts.some((count) => count > 0)))
}

/** Same patterns counted together. */
function merged(uses: readonly CutUse[]): CutUse[] {
  const byPattern = new Map<string, CutUse>()
  for (const use of uses) {
    const key = `${use.bin}:${use.counts.join(',')}`
    const earlier = byPattern.get(key)
    byPattern.set(key, earlier === undefined ? use : { ...earlier, times: earlier.times + use.times })
  }
  return [...byPattern.values()]
}
