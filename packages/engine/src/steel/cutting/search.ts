import type { Highs } from 'highs'
import { bestBound, type CutBound } from './bound.ts'
import { dive, type Fixed } from './dive.ts'
import { type Column, Generation } from './generation.ts'
import { firstFit, greedyFill } from './greedy.ts'
import { patternsWithin } from './patterns.ts'
import { type CutAnswer, type CutProblem, costOf } from './problem.ts'
import { completed, wholeBars } from './whole.ts'

export interface CutSearch {
  readonly answer: CutAnswer
  readonly proof: CutBound
  readonly proven: boolean
}

/** More patterns than this are not enumerated for a proof. */
const MOST_PATTERNS = 30_000

/** First fit looks at every open bar for every piece: not for more pieces than this. */
const MOST_FITTED = 5000

/** Rounds of column generation between two looks at the certified bound. */
const BETWEEN_BOUNDS = 12

export interface SearchInput {
  /** Loaded only where a whole-number program is needed. */
  readonly highs: () => Promise<Highs>
  readonly problem: CutProblem
  /** Costs differ by multiples of it. */
  readonly step: number
  /** Least cost at or above a bound that any plan can have. */
  readonly attainable: (bound: number) => number
  /** Of `performance.now`. */
  readonly deadline: number
  /** Told of each better plan; false ends the search with what there is. */
  readonly better?: (answer: CutAnswer, bound: number) => boolean
}

/**
 * Least cost of bars that supply every piece: a greedy start, the relaxation by column generation, then dives that fix columns and generate anew for
 * what is left, first at the least cost that the bound allows, then at the next. The bound is proven in whole numbers. Where dives fail
 * at a cost, all patterns that so cheap a plan could hold are enumerated, if they are few, and a whole-number program settles it.
 */
export async function searchCuts(input: SearchInput): Promise<CutSearch> {
  const { problem, step, attainable, deadline } = input
  const left = (): number => (deadline - performance.now()) / 1000
  let best = greedyStart(problem, performance.now() + left() * 150)
  let stopped = false
  let proof = bestBound(problem, [])
  const offer = (answer: CutAnswer): void => {
    if (answer.cost >= best.cost) return
    best = answer
    stopped ||= input.better?.(best, proof.bound) === false
  }
  const generation = new Generation(problem)
  for (const use of best.uses) generation.pool.add(columnOf(use.bin, use.counts))
  const root = generation.relax(
    problem.demand,
    problem.bins.map((bin) => bin.limit),
    performance.now() + left() * 600,
    (prices, cost, rounds) => {
      if (rounds % BETWEEN_BOUNDS !== BETWEEN_BOUNDS - 1) return false
      const found = bestBound(problem, [...prices])
      if (found.bound > proof.bound) proof = found
      return attainable(proof.bound) >= attainable(cost - step * 1e-7) || best.cost <= attainable(proof.bound)
    },
  )
  const last = bestBound(problem, root.prices)
  if (last.bound > proof.bound) proof = last
  stopped ||= input.better?.(best, proof.bound) === false
  let goal = attainable(proof.bound)
  let settledBelow = goal
  const random = sequence(1961)
  const reached = (): boolean => best.cost <= settledBelow
  for (let round = 0; !reached() && !stopped && left() > 0; round += 1) {
    // Cheaper goals first; those that dives do not reach wait while the next dearer one is tried.
    while (goal < best.cost && left() > 0 && !stopped) {
      const fixed = dive({
        generation,
        goal,
        deadline,
        random,
        nodes: 120 + 80 * round,
        chance: round === 0 ? 0 : 0.5,
        share: round === 0 ? 0.08 : 0.04 / round,
      })
      if (fixed !== null) offer(answerOf(problem, fixed, deadline))
      else goal = Math.min(best.cost, attainable(goal + Math.max(step, (best.cost - goal) / 5)))
    }
    if (reached() || stopped) break
    if (round === 0) {
      const settled = await enumerated(input, proof, best, left)
      if (settled.answer !== null) offer(settled.answer)
      if (settled.proven) settledBelow = best.cost
    }
    goal = settledBelow
  }
  const trimmed = completed(problem, best.uses, deadline)
  if (trimmed !== null) offer(trimmed)
  return { answer: best, proof, proven: reached() }
}

/** The certified bound on new stock alone. */
export function stockBoundOf(problem: CutProblem, deadline: number): CutBound {
  const generation = new Generation(problem)
  const free = problem.bins.map((bin) => bin.limit)
  return bestBound(problem, generation.relax(problem.demand, free, deadline, () => false).prices)
}

function greedyStart(problem: CutProblem, until: number): CutAnswer {
  const { bins, demand } = problem
  const rate = (bin: number): number => (bins[bin]?.cost ?? 0) / (bins[bin]?.capacity ?? 1)
  const cheapest = bins.map((_, index) => index).sort((a, b) => rate(a) - rate(b) || a - b)
  const greedy = greedyFill(problem, undefined, undefined, until)
  if (demand.reduce((sum, count) => sum + count, 0) > MOST_FITTED) return greedy
  const fitted = firstFit(problem, cheapest)
  return fitted.cost < greedy.cost ? fitted : greedy
}

/** What a whole-number program finds over all patterns that a cheaper plan could hold. */
async function enumerated(
  { highs, problem, step, deadline }: SearchInput,
  proof: CutBound,
  best: CutAnswer,
  left: () => number,
): Promise<{ readonly answer: CutAnswer | null; readonly proven: boolean }> {
  const until = performance.now() + left() * 200
  const patterns = patternsWithin(problem, proof, best.cost - step, MOST_PATTERNS, until)
  if (patterns === null) return { answer: null, proven: false }
  // A browser may refuse the solver: then nothing is proven, and the plan stands as found.
  const solver = await highs().catch(() => null)
  if (solver === null) return { answer: null, proven: false }
  return wholeBars({
    highs: solver,
    problem,
    patterns,
    step,
    below: best.cost,
    seconds: Math.min(left(), (deadline - performance.now()) / 2000),
  })
}

function answerOf(problem: CutProblem, fixed: readonly Fixed[], deadline: number): CutAnswer {
  const uses = fixed.map(({ column, times }) => ({
    bin: column.bin,
    counts: denseCounts(column, problem.sizes.length),
    times,
  }))
  return (
    completed(problem, uses, deadline) ?? {
      uses,
      short: problem.demand.map(() => 0),
      cost: costOf(problem, uses, []),
    }
  )
}

function denseCounts(column: Column, sizes: number): number[] {
  const counts = Array.from({ length: sizes }, () => 0)
  for (const [i, size] of column.sizes.entries()) counts[size] = column.counts[i] ?? 0
  return counts
}

function columnOf(bin: number, counts: readonly number[]): Column {
  const sizes = counts.flatMap((count, size) => (count > 0 ? [size] : []))
  return { bin, sizes, counts: sizes.map((size) => counts[size] as number) }
}

/** Numbers from 0 to 1, the same in every run (Lehmer 1951). */
function sequence(start: number): () => number {
  let seed = start
  return () => {
    seed = (seed * 48_271) % 2_147_483_647
    return seed / 2_147_483_647
  }
}
