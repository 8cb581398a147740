import type { Column, Generation, Relaxation } from './generation.ts'

export interface Fixed {
  readonly column: Column
  readonly times: number
}

/** Ways tried at one node. */
const WAYS = 3

export interface DiveInput {
  readonly generation: Generation
  /** A plan that costs more is of no use. */
  readonly goal: number
  readonly deadline: number
  /** 0 to 1, a new number each call. */
  readonly random: () => number
  /** Nodes in all. */
  readonly nodes: number
  /** Share of chance in the choice of what is fixed: 0 the fullest column first. */
  readonly chance: number
  /** Share of the bars left that is fixed at once. */
  readonly share: number
  /** What may solve a small remainder exactly: null where it found nothing. */
  readonly finish?: (
    left: readonly number[],
    free: readonly number[],
    relaxed: Relaxation,
    goal: number,
  ) => Fixed[] | null
}

/**
 * A plan of whole bars at or under the goal, by fixing columns of the relaxation one after another and generating columns anew for what is
 * left; a branch whose relaxation costs too much is left, and the next choice tried (depth first, few ways at each node). Null where none
 * was found: that proves nothing.
 */
export function dive(input: DiveInput): Fixed[] | null {
  const { generation, goal, deadline, random, chance } = input
  const { problem } = generation
  let nodes = input.nodes
  const slack = 1e-6 * Math.max(...problem.bins.map((bin) => bin.cost))
  const fixed: Fixed[] = []

  const descend = (left: number[], free: number[], spent: number, earlier: Relaxation | null): boolean => {
    nodes -= 1
    if (nodes < 0 || performance.now() > deadline) return false
    if (left.every((count) => count === 0)) return spent <= goal + slack
    const relaxed = generation.relax(left, free, deadline, (_, cost) => cost <= goal - spent - slack, earlier)
    if (relaxed.lacking > 1e-5 || spent + relaxed.cost > goal + slack) return false
    const depth = fixed.length
    const whole = relaxed.used.flatMap(({ column, times }) => {
      const floor = Math.floor(times + 1e-5)
      return floor > 0 ? [{ column, times: floor }] : []
    })
    if (whole.length > 0) {
      const next = [...left]
      const bars = [...free]
      let cost = spent
      for (const each of whole) {
        const times = most(each, next, bars)
        if (times === 0) continue
        take({ column: each.column, times }, next, bars)
        fixed.push({ column: each.column, times })
        cost += times * (problem.bins[each.column.bin]?.cost ?? 0)
      }
      if (fixed.length > depth) {
        if (descend(next, bars, cost, relaxed)) return true
        fixed.length = depth
        return false
      }
    }
    const finished = input.finish?.(left, free, relaxed, goal - spent) ?? null
    if (finished !== null) {
      fixed.push(...finished)
      return true
    }
    const ranked = [...relaxed.used]
      .map(({ column, times }) => ({ column, rank: times * (1 - chance + chance * random()) }))
      .sort((a, b) => b.rank - a.rank)
    const bars = relaxed.used.reduce((sum, { times }) => sum + times, 0)
    for (let way = 0; way < WAYS; way += 1) {
      if (nodes < 0 || performance.now() > deadline) return false
      const next = [...left]
      const open = [...free]
      let cost = spent
      // The first way takes several at once while many bars are left; what goes wrong then is tried one at a time.
      const together = way === 0 ? Math.max(1, Math.floor(bars * input.share)) : 1
      for (const { column } of ranked.slice(way)) {
        if (fixed.length - depth >= together) break
        if (most({ column, times: 1 }, next, open) === 0) continue
        take({ column, times: 1 }, next, open)
        fixed.push({ column, times: 1 })
        cost += problem.bins[column.bin]?.cost ?? 0
      }
      if (fixed.length === depth) return false
      if (descend(next, open, cost, relaxed)) return true
      fixed.length = depth
    }
    return false
  }

  const found = descend(
    [...problem.demand],
    problem.bins.map((bin) => bin.limit),
    0,
    null,
  )
  return found ? fixed : null
}

function most({ column, times }: Fixed, left: readonly number[], free: readonly number[]): number {
  let least = Math.min(times, free[column.bin] ?? 0)
  for (const [i, size] of column.sizes.entries()) {
    least = Math.min(least, Math.floor((left[size] ?? 0) / (column.counts[i] ?? 1)))
  }
  return least
}

function take({ column, times }: Fixed, left: number[], free: number[]): void {
  for (const [i, size] of column.sizes.entries())
    left[size] = Math.max(0, (left[size] ?? 0) - times * (column.counts[i] ?? 0))
  free[column.bin] = (free[column.bin] ?? 0) - times
}
