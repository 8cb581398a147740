import { FillingSearch } from './filling.ts'
import { knapsack } from './knapsack.ts'
import { Master } from './master.ts'
import type { CutProblem } from './problem.ts'

/** How one bar is cut, kept short: only the sizes that are in it. */
export interface Column {
  readonly bin: number
  readonly sizes: readonly number[]
  readonly counts: readonly number[]
}

/** Columns that were ever generated, each once. */
export class ColumnPool {
  readonly columns: Column[] = []
  readonly #known = new Set<string>()

  add(column: Column): boolean {
    const key = `${column.bin}:${column.sizes.map((size, i) => `${size}*${column.counts[i]}`).join(' ')}`
    if (this.#known.has(key)) return false
    this.#known.add(key)
    this.columns.push(column)
    return true
  }
}

export interface Relaxation {
  /** Columns used and how often, not whole. */
  readonly used: readonly { readonly column: Column; readonly times: number }[]
  /** Price of one piece of each size of the whole problem; 0 where nothing is left of it. */
  readonly prices: readonly number[]
  /** Price of one more bar of each limited kind, 0 or more. */
  readonly rents: readonly number[]
  readonly cost: number
  /** Pieces that bars cannot supply. */
  readonly lacking: number
  /** No column that would pay is missing. */
  readonly complete: boolean
}

/** Steps of a first, short look for a column that pays; then of a long one; what neither decides goes to the exact table. */
const SHORT_LOOK = 4000
const LONG_LOOK = 300_000

/** Share of the running mean of prices that stays at each round. */
const KEPT = 0.7

/** Columns of one bar kind that are taken in at once. */
const AT_ONCE = 12

/** The linear relaxation of what is left of a problem, by column generation over a pool that all relaxations of the problem share. */
export class Generation {
  readonly problem: CutProblem
  readonly pool = new ColumnPool()
  readonly lacking: number
  readonly #search: FillingSearch
  readonly #most: Float64Array
  readonly #tolerance: number
  #undecided = 0

  constructor(problem: CutProblem) {
    this.problem = problem
    this.#search = new FillingSearch(problem.sizes)
    this.#most = new Float64Array(problem.sizes.length)
    const dearest = Math.max(...problem.bins.map((bin) => bin.cost))
    this.lacking = problem.shortCost ?? dearest * 4
    this.#tolerance = 1e-9 * dearest
  }

  /**
   * @param left pieces of each size that are still asked
   * @param free bars of each kind that are still there
   * @param earlier relaxation of which this is a part, to start from
   * @param enough asked every few rounds with prices and cost: true ends the search for columns
   */
  relax(
    left: readonly number[],
    free: readonly number[],
    deadline: number,
    enough: (prices: Float64Array, cost: number, rounds: number) => boolean,
    earlier: Relaxation | null = null,
  ): Relaxation {
    const { bins } = this.problem
    const open = left.flatMap((count, size) => (count > 0 ? [size] : []))
    const rowOf = new Map(open.map((size, row) => [size, row]))
    const limited = bins.flatMap((bin, index) =>
      Number.isFinite(bin.limit) && (free[index] as number) > 0 ? [index] : [],
    )
    const binRow = new Map(limited.map((index, row) => [index, open.length + row]))
    const master = new Master(
      open.map((size) => left[size] as number),
      limited.map((index) => free[index] as number),
      this.lacking,
      this.#tolerance,
    )
    const columns: Column[] = []
    const put = (column: Column): void => {
      const rows: number[] = []
      for (const size of column.sizes) rows.push(rowOf.get(size) as number)
      const entries = [...column.counts]
      const row = binRow.get(column.bin)
      if (row !== undefined) {
        rows.push(row)
        entries.push(1)
      }
      columns.push(column)
      master.add((bins[column.bin] as { cost: number }).cost, rows, entries)
    }
    for (const column of this.pool.columns) if (this.#fits(column, left, free)) put(column)
    if (earlier !== null) {
      const place = new Map(columns.map((column, index) => [column, index]))
      master.start(earlier.used.flatMap(({ column }) => place.get(column) ?? []))
    }
    const prices = new Float64Array(left.length)
    const mean = new Float64Array(left.length)
    let complete = false
    let rounds = 0
    let rents: number[] = bins.map(() => 0)
    for (;;) {
      const settled = master.solve(deadline)
      const found = master.prices()
      prices.fill(0)
      for (const [row, size] of open.entries()) prices[size] = Math.max(0, found[row] as number)
      rents = bins.map((_, index) => Math.max(0, -(found[binRow.get(index) ?? -1] ?? 0)))
      if (!settled || performance.now() > deadline) break
      if (enough(prices, master.outcome().cost, rounds)) break
      rounds += 1
      // Prices swing from round to round: bars that pay at their running mean too are the better ones (Wentges 1997).
      for (let size = 0; size < left.length; size += 1) {
        mean[size] =
          rounds === 1
            ? (prices[size] as number)
            : KEPT * (mean[size] as number) + (1 - KEPT) * (prices[size] as number)
      }
      const steady =
        rounds === 1
          ? []
          : this.#paying(mean, rents, left, free, true).filter((column) => this.#pays(column, prices, rents))
      const fresh = steady.length > 0 ? steady : this.#paying(prices, rents, left, free, false)
      if (fresh.length === 0) {
        complete = true
        break
      }
      for (const column of fresh) {
        this.pool.add(column)
        put(column)
      }
    }
    const times = master.times()
    const { cost, lacking } = master.outcome()
    const used = columns.flatMap((column, index) => {
      const each = times[index] as number
      return each > 1e-7 ? [{ column, times: each }] : []
    })
    return { used, prices: [...prices], rents, cost, lacking, complete }
  }

  #fits(column: Column, left: readonly number[], free: readonly number[]): boolean {
    if ((free[column.bin] as number) <= 0) return false
    for (let i = 0; i < column.sizes.length; i += 1) {
      if ((column.counts[i] as number) > (left[column.sizes[i] as number] as number)) return false
    }
    return true
  }

  /** Bars that would pay at these prices; none only if there is none. */
  #paying(
    prices: Float64Array,
    rents: readonly number[],
    left: readonly number[],
    free: readonly number[],
    short: boolean,
  ): Column[] {
    const { bins } = this.problem
    // Where long looks decided nothing before, the table is the shorter way.
    for (const visits of this.#undecided > 2 ? [SHORT_LOOK] : [SHORT_LOOK, LONG_LOOK]) {
      const found: Column[] = []
      let decided = true
      for (const [index, bin] of bins.entries()) {
        if ((free[index] as number) <= 0) continue
        const over = bin.cost + (rents[index] as number) + 1e-7 * Math.max(1, bin.cost)
        this.#most.set(left)
        for (let more = 0; more < (visits === SHORT_LOOK ? AT_ONCE : 1); more += 1) {
          const filling = this.#search.search(prices, this.#most, bin.capacity, over, visits)
          if (more === 0 && filling.sizes.length === 0 && !filling.best) decided = false
          if (filling.sizes.length === 0) break
          found.push({ bin: index, sizes: filling.sizes, counts: filling.counts })
          // The next one does without what this one takes: columns that stand side by side in a plan.
          for (const [i, size] of filling.sizes.entries()) {
            this.#most[size] = Math.max(
              0,
              (this.#most[size] as number) -
                (filling.counts[i] as number) * Math.max(1, Math.floor((left[size] as number) / 2)),
            )
          }
        }
      }
      if (found.length > 0 || decided || short) return found
    }
    this.#undecided += 1
    return this.#byTable(prices, rents, left, free)
  }

  #pays(column: Column, prices: Float64Array, rents: readonly number[]): boolean {
    const cost = this.problem.bins[column.bin]?.cost ?? 0
    let worth = 0
    for (const [i, size] of column.sizes.entries())
      worth += (column.counts[i] ?? 0) * (prices[size] as number)
    return worth > cost + (rents[column.bin] ?? 0) + 1e-7 * Math.max(1, cost)
  }

  #byTable(
    prices: Float64Array,
    rents: readonly number[],
    left: readonly number[],
    free: readonly number[],
  ): Column[] {
    const { sizes, bins } = this.problem
    const sack = knapsack({
      sizes,
      values: [...prices],
      most: left,
      capacity: Math.max(...bins.map((bin) => bin.capacity)),
    })
    return bins.flatMap((bin, index) => {
      if ((free[index] as number) <= 0) return []
      if (sack.value(bin.capacity) <= bin.cost + (rents[index] as number) + 1e-7 * Math.max(1, bin.cost))
        return []
      const dense = sack.counts(bin.capacity)
      const at = dense.flatMap((count, size) => (count > 0 ? [size] : []))
      return [{ bin: index, sizes: at, counts: at.map((size) => dense[size] as number) }]
    })
  }
}
