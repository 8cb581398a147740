import type { Highs } from 'highs'
import { bestBound, type CutBound } from './cut-bound.ts'
import { relax } from './cut-columns.ts'
import { firstFit, greedyFill } from './cut-greedy.ts'
import { patternsWithin } from './cut-patterns.ts'
import type { CutAnswer, CutProblem, Pattern } from './cut-problem.ts'
import { completed, roundedDown, wholeBars } from './cut-whole.ts'

export interface CutSearch {
  readonly answer: CutAnswer
  readonly proof: CutBound
  readonly proven: boolean
  /** Patterns that the relaxation used, to start another from. */
  readonly patterns: readonly Pattern[]
}

/** More patterns than this are not enumerated for a proof. */
const MOST_PATTERNS = 30_000

/** First fit looks at every open bar for every piece: not for more pieces than this. */
const MOST_FITTED = 5000

/**
 * Least cost of bars that supply every piece. The bound is proven in whole numbers; the plan is the best of a greedy filling, the rounded
 * relaxation, and whole-number programs over the patterns of the relaxation and over all patterns that a better plan could hold.
 *
 * `step`: costs differ by multiples of it. `attainable`: least cost at or above a bound that any plan can have.
 */
export function searchCuts({
  highs,
  problem,
  seeds,
  step,
  attainable,
  deadline,
}: {
  readonly highs: Highs
  readonly problem: CutProblem
  readonly seeds: readonly Pattern[]
  readonly step: number
  readonly attainable: (bound: number) => number
  readonly deadline: number
}): CutSearch {
  const left = () => (deadline - performance.now()) / 1000
  const cheapest = problem.bins.map((_, index) => index)
  cheapest.sort(
    (a, b) =>
      (problem.bins[a]?.cost ?? 0) / (problem.bins[a]?.capacity ?? 1) -
        (problem.bins[b]?.cost ?? 0) / (problem.bins[b]?.capacity ?? 1) || a - b,
  )
  let best = greedyFill(problem, undefined, undefined, performance.now() + left() * 150)
  const pieces = problem.demand.reduce((sum, count) => sum + count, 0)
  if (pieces <= MOST_FITTED) best = better(best, firstFit(problem, cheapest))
  const start = left()
  const relaxed = relax(
    highs,
    problem,
    [...seeds, ...best.uses.map(({ bin, counts }) => ({ bin, counts }))],
    performance.now() + start * 500,
  )
  const proof = bestBound(problem, relaxed.prices)
  const goal = attainable(proof.bound)
  const reached = () => best.cost <= goal
  const { patterns } = relaxed
  if (!reached()) {
    const rounded = roundedDown({
      highs,
      problem,
      patterns,
      times: relaxed.times,
      step,
      seconds: left() * 0.3,
    })
    if (rounded !== null) best = better(best, rounded)
  }
  if (!reached()) {
    const whole = wholeBars({ highs, problem, patterns, step, below: best.cost, seconds: left() * 0.4 })
    if (whole.answer !== null) best = better(best, whole.answer)
  }
  let proven = reached()
  if (!proven && left() > 0) {
    const all = patternsWithin(
      problem,
      proof,
      best.cost - step,
      MOST_PATTERNS,
      performance.now() + left() * 300,
    )
    if (all !== null) {
      const whole = wholeBars({ highs, problem, patterns: all, step, below: best.cost, seconds: left() })
      if (whole.answer !== null) best = better(best, whole.answer)
      proven = whole.proven || reached()
    }
  }
  const trimmed = completed(problem, best.uses, deadline)
  return { answer: trimmed === null ? best : better(best, trimmed), proof, proven, patterns }
}

function better(a: CutAnswer, b: CutAnswer): CutAnswer {
  return b.cost < a.cost ? b : a
}
