import type { Highs } from 'highs'
import { type Column, modelData, type Row } from '../../numeric/highs.ts'
import { greedyFill } from './greedy.ts'
import {
  type CutAnswer,
  type CutProblem,
  type CutUse,
  costOf,
  type Pattern,
  withoutSurplus,
} from './problem.ts'

const OPTIMAL = 7
const INFEASIBLE = 8

export interface Whole {
  /** Null where none was found within the time. */
  readonly answer: CutAnswer | null
  /** The solver proved that no plan of these patterns is cheaper (than the answer, or than `below`). */
  readonly proven: boolean
}

/**
 * Best plan of whole bars over the given patterns. `step` is what costs differ by at least; with `below`, only plans at least one step
 * cheaper than it are looked for.
 */
export function wholeBars({
  highs,
  problem,
  patterns,
  step,
  below,
  seconds,
}: {
  readonly highs: Highs
  readonly problem: CutProblem
  readonly patterns: readonly Pattern[]
  readonly step: number
  readonly below: number | null
  readonly seconds: number
}): Whole {
  if (!(seconds > 0)) return { answer: null, proven: false }
  const started = performance.now()
  // In steps, so that the solver sees small whole costs.
  const inSteps = (column: Column): Column => ({ ...column, cost: column.cost / step })
  const shorts = shortColumns(problem).map(inSteps)
  const columns = [...shorts, ...patterns.map((pattern) => inSteps(patternColumn(problem, pattern)))]
  const rows = masterRows(problem)
  if (below !== null) {
    const place = rows.length
    rows.push({ lower: 0, upper: below / step - 0.5 })
    for (const [index, column] of columns.entries()) {
      columns[index] = { ...column, rows: [...column.rows, place], values: [...column.values, column.cost] }
    }
  }
  const model = highs.createModel(modelData(rows, columns, true))
  try {
    model.options.set({
      output_flag: false,
      time_limit: seconds,
      mip_rel_gap: 0,
      mip_abs_gap: 0.9,
      random_seed: 1,
    })
    model.run()
    const status = model.getModelStatus()
    if (status === INFEASIBLE) return { answer: null, proven: true }
    const values = model.getSolution().colValue
    if (values.length === 0) return { answer: null, proven: false }
    const uses = patterns.flatMap((pattern, index): CutUse[] => {
      const times = Math.round(values[shorts.length + index] ?? 0)
      return times > 0 ? [{ ...pattern, times }] : []
    })
    const answer = completed(problem, uses, started + seconds * 1000)
    return { answer, proven: status === OPTIMAL }
  } finally {
    model.dispose()
  }
}

/**
 * A plan from bars that may cut too much or too little: surplus comes off, what is missing is filled in. Null where it takes more bars
 * of a kind than there are.
 */
export function completed(
  problem: CutProblem,
  uses: readonly CutUse[],
  until = Number.POSITIVE_INFINITY,
): CutAnswer | null {
  const used = problem.bins.map((_, bin) =>
    uses.reduce((sum, use) => sum + (use.bin === bin ? use.times : 0), 0),
  )
  if (problem.bins.some((bin, index) => (used[index] ?? 0) > bin.limit)) return null
  const made = problem.demand.map((_, size) =>
    uses.reduce((sum, use) => sum + use.times * (use.counts[size] ?? 0), 0),
  )
  const left = problem.demand.map((count, size) => Math.max(0, count - (made[size] ?? 0)))
  const rest = greedyFill(problem, left, used, until)
  const whole = withoutSurplus(problem, [...uses, ...rest.uses])
  return { uses: whole, short: rest.short, cost: costOf(problem, whole, rest.short) }
}

function patternColumn(problem: CutProblem, pattern: Pattern): Column {
  const rows: number[] = []
  const values: number[] = []
  for (const [size, count] of pattern.counts.entries()) {
    if (count === 0) continue
    rows.push(size)
    values.push(count)
  }
  const bin = problem.bins[pattern.bin]
  if (bin === undefined) throw new Error(`no bar kind ${pattern.bin} in the problem`)
  const limited = Number.isFinite(bin.limit)
  return {
    cost: bin.cost,
    upper: limited ? bin.limit : Number.POSITIVE_INFINITY,
    rows: limited ? [...rows, limitRow(problem, pattern.bin)] : rows,
    values: limited ? [...values, 1] : values,
  }
}

/** Rows of the master: pieces of each size, then bars of each limited kind. */
function masterRows(problem: CutProblem): Row[] {
  return [
    ...problem.demand.map((count) => ({ lower: count, upper: Number.POSITIVE_INFINITY })),
    ...problem.bins
      .filter((bin) => Number.isFinite(bin.limit))
      .map((bin) => ({ lower: 0, upper: bin.limit })),
  ]
}

/** Columns that stand for pieces that are not supplied. */
function shortColumns(problem: CutProblem): Column[] {
  const { shortCost } = problem
  if (shortCost === null) return []
  return problem.demand.map((count, size) => ({ cost: shortCost, upper: count, rows: [size], values: [1] }))
}

function limitRow(problem: CutProblem, bin: number): number {
  const before = problem.bins.slice(0, bin).filter((each) => Number.isFinite(each.limit)).length
  return problem.sizes.length + before
}
