import type { Highs } from 'highs'
import { type Column, modelData, type Row } from '../numeric/highs.ts'
import type { CutProblem, Pattern } from './cut-problem.ts'
import { knapsack } from './knapsack.ts'

/** Solver status codes that are read here. */
const OPTIMAL = 7

export interface Relaxed {
  readonly patterns: readonly Pattern[]
  /** How often each pattern is cut, not whole. */
  readonly times: readonly number[]
  /** Price of one piece of each size. */
  readonly prices: readonly number[]
  /** Pieces of each size that the relaxed plan does not supply. */
  readonly short: readonly number[]
  /** No better pattern exists: the prices are those of the whole relaxation. */
  readonly complete: boolean
}

export function patternColumn(problem: CutProblem, pattern: Pattern): Column {
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
export function masterRows(problem: CutProblem): Row[] {
  return [
    ...problem.demand.map((count) => ({ lower: count, upper: Number.POSITIVE_INFINITY })),
    ...problem.bins
      .filter((bin) => Number.isFinite(bin.limit))
      .map((bin) => ({ lower: 0, upper: bin.limit })),
  ]
}

/** Columns that stand for pieces that are not supplied. */
export function shortColumns(problem: CutProblem): Column[] {
  const { shortCost } = problem
  if (shortCost === null) return []
  return problem.demand.map((count, size) => ({ cost: shortCost, upper: count, rows: [size], values: [1] }))
}

function limitRow(problem: CutProblem, bin: number): number {
  const before = problem.bins.slice(0, bin).filter((each) => Number.isFinite(each.limit)).length
  return problem.sizes.length + before
}

/**
 * The linear relaxation by column generation (Gilmore and Gomory 1961): patterns that would pay at the current prices are added until there is none,
 * or until `deadline` (ms of `performance.now`).
 */
export function relax(
  highs: Highs,
  problem: CutProblem,
  seeds: readonly Pattern[],
  deadline: number,
): Relaxed {
  const { sizes, demand, bins } = problem
  const patterns: Pattern[] = []
  const known = new Set<string>()
  const add = (pattern: Pattern): boolean => {
    const key = `${pattern.bin}:${pattern.counts.join(',')}`
    if (known.has(key)) return false
    known.add(key)
    patterns.push(pattern)
    return true
  }
  for (const seed of [...seeds, ...singles(problem)]) add(seed)
  const shorts = shortColumns(problem)
  const capacity = Math.max(...bins.map((bin) => bin.capacity))
  const model = highs.createModel(
    modelData(
      masterRows(problem),
      [...shorts, ...patterns.map((each) => patternColumn(problem, each))],
      false,
    ),
  )
  try {
    model.options.set({ output_flag: false })
    let complete = false
    let prices: number[] = demand.map(() => 0)
    let values: readonly number[] = []
    let sparedRounds = 0
    for (;;) {
      model.run()
      if (model.getModelStatus() !== OPTIMAL) {
        throw new Error(`linear program of the cutting plan ended with status ${model.getModelStatus()}`)
      }
      const solution = model.getSolution()
      values = Array.from(solution.colValue)
      prices = Array.from(solution.rowDual.subarray(0, sizes.length), (price) => Math.max(0, price))
      if (performance.now() > deadline) break
      const sack = knapsack({ sizes, values: prices, most: demand, capacity })
      let added = 0
      for (const [index, bin] of bins.entries()) {
        const rent = Number.isFinite(bin.limit) ? -(solution.rowDual[limitRow(problem, index)] ?? 0) : 0
        const gain = sack.value(bin.capacity) - bin.cost - rent
        if (gain <= 1e-9 * Math.max(1, bin.cost)) continue
        const pattern = { bin: index, counts: sack.counts(bin.capacity) }
        if (!add(pattern)) continue
        const column = patternColumn(problem, pattern)
        model.addCol(column.cost, 0, column.upper, { indices: [...column.rows], values: [...column.values] })
        added += 1
      }
      if (added === 0) {
        complete = true
        break
      }
      sparedRounds += 1
      if (sparedRounds > 20_000) break
    }
    return {
      patterns,
      times: patterns.map((_, index) => values[shorts.length + index] ?? 0),
      prices,
      short: shorts.map((_, index) => values[index] ?? 0),
      complete,
    }
  } finally {
    model.dispose()
  }
}

/** One size alone in each kind of bar, so that every size has a pattern. */
function singles({ sizes, demand, bins }: CutProblem): Pattern[] {
  return bins.flatMap((bin, index) =>
    sizes.flatMap((size, at) => {
      const fits = Math.min(Math.floor(bin.capacity / size), demand[at] ?? 0)
      return fits > 0 ? [{ bin: index, counts: sizes.map((_, each) => (each === at ? fits : 0)) }] : []
    }),
  )
}
