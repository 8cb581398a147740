import { invert } from '../../numeric/invert.ts'

/**
 * Linear program of a cutting plan, as column generation needs it: minimise cost · x over x ≥ 0 with `rows` of "at least" (pieces of a
 * size) and of "at most" (bars of a limited kind), columns added while it runs. Revised primal simplex with a dense inverse in typed
 * arrays: a plan has some hundred rows at most, and a pivot then costs microseconds.
 *
 * Nothing that is proven rests on these floating numbers: the bound is certified in whole numbers from the prices (`bestBound`).
 */
export class Master {
  /** Rows that ask for at least `sides[row]`, then rows that allow at most it. */
  readonly rows: number
  readonly #least: number
  readonly #sides: Float64Array
  /** Sides moved by a hair, so that ties (all demands alike) do not stall the pivots. */
  readonly #shifted: Float64Array
  readonly #inverse: Float64Array
  readonly #basis: Int32Array
  readonly #values: Float64Array
  readonly #prices: Float64Array
  readonly #direction: Float64Array
  readonly #filled: Int32Array
  readonly #costs: number[] = []
  readonly #starts: number[] = [0]
  readonly #rowOf: number[] = []
  readonly #entry: number[] = []
  readonly #lacking: number
  readonly #tolerance: number
  #pivots = 0
  #step = 0

  /**
   * @param least pieces of each size at least
   * @param most bars of each limited kind at most
   * @param lacking cost of one piece that no column supplies: dearer than any column
   * @param tolerance a column that gains less than this does not pay
   */
  constructor(least: readonly number[], most: readonly number[], lacking: number, tolerance: number) {
    this.#least = least.length
    this.rows = least.length + most.length
    this.#lacking = lacking
    this.#tolerance = tolerance
    this.#sides = Float64Array.from([...least, ...most])
    const scatter = scattered(this.rows)
    this.#shifted = this.#sides.map(
      (side, row) => side + 1e-6 * (1 + (scatter[row] ?? 0)) * Math.max(1, side),
    )
    this.#inverse = new Float64Array(this.rows * this.rows)
    // Basis entries below 0 are the row's own column: a lacking piece, or bars of a limited kind left over.
    this.#basis = Int32Array.from({ length: this.rows }, (_, row) => -1 - row)
    this.#values = Float64Array.from(this.#shifted)
    for (let row = 0; row < this.rows; row += 1) this.#inverse[row * this.rows + row] = 1
    this.#prices = new Float64Array(this.rows)
    this.#direction = new Float64Array(this.rows)
    this.#filled = new Int32Array(this.rows)
  }

  get columns(): number {
    return this.#costs.length
  }

  /** Adds a column; `rows` and `entries` go together. Returns its number. */
  add(cost: number, rows: readonly number[], entries: readonly number[]): number {
    this.#costs.push(cost)
    for (const row of rows) this.#rowOf.push(row)
    for (const entry of entries) this.#entry.push(entry)
    this.#starts.push(this.#rowOf.length)
    return this.#costs.length - 1
  }

  /** Price of each row at the basis that was reached: at least 0 for pieces, at most 0 for limited bars. */
  prices(): Float64Array {
    const { rows } = this
    this.#prices.fill(0)
    for (let row = 0; row < rows; row += 1) {
      const cost = this.#costOf(this.#basis[row] as number)
      if (cost === 0) continue
      const at = row * rows
      for (let k = 0; k < rows; k += 1) {
        this.#prices[k] = (this.#prices[k] as number) + cost * (this.#inverse[at + k] as number)
      }
    }
    return this.#prices
  }

  /** Cost less worth at the prices: below 0 the column pays. */
  reduced(column: number, prices: Float64Array): number {
    let sum = this.#costs[column] as number
    const end = this.#starts[column + 1] as number
    for (let k = this.#starts[column] as number; k < end; k += 1) {
      sum -= (this.#entry[k] as number) * (prices[this.#rowOf[k] as number] as number)
    }
    return sum
  }

  /** Brings columns in before anything is priced: those of an earlier plan, so that the search starts near its end. */
  start(columns: readonly number[]): void {
    for (const column of columns) {
      const leaving = this.#leavingRow(column)
      if (leaving >= 0 && (this.#basis[leaving] as number) < 0) this.#pivot(leaving, column)
    }
  }

  /** Pivots until no column that is there pays. False where it was cut off. */
  solve(deadline: number): boolean {
    const most = 50 * this.rows + 2000
    const count = this.#costs.length
    // Columns, then the rows' own and surplus columns: one place for each in both arrays.
    const places = count + this.rows
    const reduced = new Float64Array(places)
    const weights = new Float64Array(places).fill(1)
    const tolerance = this.#tolerance
    let fresh: boolean = this.#reduceAll(reduced)
    for (let round = 0; round < most; round += 1) {
      if ((round & 31) === 31 && performance.now() > deadline) return false
      let entering = -1
      let best = 0
      for (let place = 0; place < places; place += 1) {
        const each = reduced[place] as number
        if (each >= -tolerance) continue
        const gain = (each * each) / (weights[place] as number)
        if (gain > best) {
          best = gain
          entering = place
        }
      }
      if (entering < 0) {
        if (fresh) return true
        fresh = this.#reduceAll(reduced)
        continue
      }
      const leaving = this.#leavingRow(this.#columnAt(entering, count))
      if (leaving < 0) return true
      this.#reprice(entering, leaving, reduced, weights)
      fresh = false
      this.#pivot(leaving, this.#columnAt(entering, count))
      this.#pivots += 1
      if (this.#pivots % (2 * this.rows + 200) === 0) {
        this.#refactor()
        fresh = this.#reduceAll(reduced)
      }
    }
    return false
  }

  /** The column at a place of the pricing arrays: of the free columns of a row the one that can still come in. */
  #columnAt(place: number, count: number): number {
    if (place < count) return place
    const row = place - count
    return row < this.#least ? SURPLUS - row : -1 - row
  }

  /** Cost less worth of every column at the prices of the basis. */
  #reduceAll(reduced: Float64Array): boolean {
    const prices = this.prices()
    const count = this.#costs.length
    for (let column = 0; column < count; column += 1) reduced[column] = this.reduced(column, prices)
    // A surplus (more pieces than asked) pays where the price went below 0; bars left over where it went above.
    for (let row = 0; row < this.rows; row += 1) {
      reduced[count + row] = row < this.#least ? (prices[row] as number) : -(prices[row] as number)
    }
    for (let row = 0; row < this.rows; row += 1) {
      const place = this.#placeOf(this.#basis[row] as number, count)
      if (place >= 0) reduced[place] = 0
    }
    return true
  }

  #placeOf(column: number, count: number): number {
    if (column >= 0) return column
    if (column <= SURPLUS) return count + SURPLUS - column
    const row = -1 - column
    return row < this.#least ? -1 : count + row
  }

  /** Reduced costs and reference weights (Forrest and Goldfarb 1992) after the entering column takes the leaving row. */
  #reprice(entering: number, leaving: number, reduced: Float64Array, weights: Float64Array): void {
    const { rows } = this
    const count = this.#costs.length
    const at = leaving * rows
    const inverse = this.#inverse
    const by = this.#direction[leaving] as number
    const ratio = (reduced[entering] as number) / by
    const weight = weights[entering] as number
    const rowOf = this.#rowOf
    const entry = this.#entry
    let start = 0
    for (let column = 0; column < count; column += 1) {
      const end = this.#starts[column + 1] as number
      let alpha = 0
      for (let k = start; k < end; k += 1)
        alpha += (entry[k] as number) * (inverse[at + (rowOf[k] as number)] as number)
      start = end
      if (alpha === 0) continue
      reduced[column] = (reduced[column] as number) - ratio * alpha
      const share = alpha / by
      const grown = share * share * weight
      if (grown > (weights[column] as number)) weights[column] = grown
    }
    for (let row = 0; row < rows; row += 1) {
      const alpha = (row < this.#least ? -1 : 1) * (inverse[at + row] as number)
      if (alpha === 0) continue
      const place = count + row
      reduced[place] = (reduced[place] as number) - ratio * alpha
      const share = alpha / by
      const grown = share * share * weight
      if (grown > (weights[place] as number)) weights[place] = grown
    }
    reduced[entering] = 0
    const gone = this.#placeOf(this.#basis[leaving] as number, count)
    if (gone >= 0) {
      reduced[gone] = -ratio
      weights[gone] = Math.max(weight / (by * by), 1)
    }
  }

  /** How often each column is used, with the sides as they were given. Never below 0. */
  times(): Float64Array {
    if (this.#drift() > 1e-7) this.#refactor()
    const found = new Float64Array(this.#costs.length)
    for (let row = 0; row < this.rows; row += 1) {
      const column = this.#basis[row] as number
      if (column >= 0) found[column] = Math.max(0, this.#exact(row))
    }
    return found
  }

  /** Pieces of each size that no column supplies, and cost of the whole. */
  outcome(): { readonly lacking: number; readonly cost: number } {
    let lacking = 0
    let cost = 0
    for (let row = 0; row < this.rows; row += 1) {
      const column = this.#basis[row] as number
      const value = Math.max(0, this.#exact(row))
      if (column < 0 && column > SURPLUS && -1 - column < this.#least) lacking += value
      cost += this.#costOf(column) * value
    }
    return { lacking, cost }
  }

  /** How far the columns of the basis, as used, miss the sides. */
  #drift(): number {
    const { rows } = this
    const missed = Float64Array.from(this.#sides)
    for (let place = 0; place < rows; place += 1) {
      const column = this.#basis[place] as number
      const value = this.#exact(place)
      if (column < 0) {
        const row = column <= SURPLUS ? SURPLUS - column : -1 - column
        missed[row] = (missed[row] as number) - (column <= SURPLUS ? -value : value)
        continue
      }
      const end = this.#starts[column + 1] as number
      for (let at = this.#starts[column] as number; at < end; at += 1) {
        const row = this.#rowOf[at] as number
        missed[row] = (missed[row] as number) - (this.#entry[at] as number) * value
      }
    }
    return missed.reduce((most, each) => Math.max(most, Math.abs(each)), 0)
  }

  #exact(row: number): number {
    let sum = 0
    for (let k = 0; k < this.rows; k += 1) {
      sum += (this.#inverse[row * this.rows + k] as number) * (this.#sides[k] as number)
    }
    return sum
  }

  #costOf(column: number): number {
    if (column >= 0) return this.#costs[column] as number
    return column > SURPLUS && -1 - column < this.#least ? this.#lacking : 0
  }

  /** Row whose column goes out for `column`; −1 where nothing holds it. Leaves `direction` and the step behind. */
  #leavingRow(column: number): number {
    const { rows } = this
    const direction = this.#direction
    this.#turn(column)
    let leaving = -1
    let step = Number.POSITIVE_INFINITY
    for (let row = 0; row < rows; row += 1) {
      const rate = direction[row] as number
      if (rate < 1e-9) continue
      const ratio = Math.max(0, this.#values[row] as number) / rate
      if (ratio < step - 1e-12 || (ratio < step + 1e-12 && rate > (direction[leaving] ?? 0))) {
        step = ratio
        leaving = row
      }
    }
    this.#step = step
    return leaving
  }

  /** `direction` = inverse · column. */
  #turn(column: number): void {
    const { rows } = this
    const direction = this.#direction
    direction.fill(0)
    if (column < 0) {
      const row = column <= SURPLUS ? SURPLUS - column : -1 - column
      const sign = column <= SURPLUS ? -1 : 1
      for (let k = 0; k < rows; k += 1) direction[k] = sign * (this.#inverse[k * rows + row] as number)
      return
    }
    const end = this.#starts[column + 1] as number
    for (let at = this.#starts[column] as number; at < end; at += 1) {
      const row = this.#rowOf[at] as number
      const entry = this.#entry[at] as number
      for (let k = 0; k < rows; k += 1) {
        direction[k] = (direction[k] as number) + entry * (this.#inverse[k * rows + row] as number)
      }
    }
  }

  #pivot(leaving: number, column: number): void {
    const { rows } = this
    const step = this.#step
    const inverse = this.#inverse
    const direction = this.#direction
    const by = direction[leaving] as number
    const at = leaving * rows
    // Most of a row is 0 while few pieces share bars: only the rest is carried over.
    const filled = this.#filled
    let count = 0
    for (let k = 0; k < rows; k += 1) {
      const value = inverse[at + k] as number
      if (value === 0) continue
      inverse[at + k] = value / by
      filled[count] = k
      count += 1
    }
    for (let row = 0; row < rows; row += 1) {
      const rate = direction[row] as number
      if (row === leaving || rate === 0) continue
      this.#values[row] = (this.#values[row] as number) - rate * step
      const to = row * rows
      for (let f = 0; f < count; f += 1) {
        const k = filled[f] as number
        inverse[to + k] = (inverse[to + k] as number) - rate * (inverse[at + k] as number)
      }
    }
    this.#values[leaving] = step
    this.#basis[leaving] = column
  }

  /** The inverse from the columns of the basis again: what rounding gathered over the pivots goes. */
  #refactor(): void {
    const { rows } = this
    const work = new Float64Array(rows * rows)
    for (let place = 0; place < rows; place += 1) {
      const column = this.#basis[place] as number
      if (column < 0) {
        const row = column <= SURPLUS ? SURPLUS - column : -1 - column
        work[row * rows + place] = column <= SURPLUS ? -1 : 1
        continue
      }
      const end = this.#starts[column + 1] as number
      for (let at = this.#starts[column] as number; at < end; at += 1) {
        work[(this.#rowOf[at] as number) * rows + place] = this.#entry[at] as number
      }
    }
    const inverse = invert(work, rows)
    // A basis that cannot be inverted keeps the inverse that the pivots made.
    if (inverse === null) return
    this.#inverse.set(inverse)
    for (let row = 0; row < rows; row += 1) {
      let sum = 0
      for (let k = 0; k < rows; k += 1)
        sum += (inverse[row * rows + k] as number) * (this.#shifted[k] as number)
      this.#values[row] = sum
    }
  }
}

/** Basis entries at or below this are surplus columns: pieces more than asked. */
const SURPLUS = -1_000_000

/** Numbers from 0 to 1, the same in every run. */
function scattered(count: number): Float64Array {
  const found = new Float64Array(count)
  let seed = 20_611
  for (let i = 0; i < count; i += 1) {
    seed = (seed * 48_271) % 2_147_483_647
    found[i] = seed / 2_147_483_647
  }
  return found
}
