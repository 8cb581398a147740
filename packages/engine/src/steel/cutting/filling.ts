/** One bar filled with pieces: which sizes, and how many of each. */
export interface Filling {
  readonly sizes: readonly number[]
  readonly counts: readonly number[]
}

export interface BestFilling extends Filling {
  readonly value: number
  /** The search ended by itself: no filling is worth more. */
  readonly best: boolean
}

/**
 * The bar worth most, by branch and bound over sizes in order of worth a millimetre (Martello and Toth 1990, ch. 3), `most` of a size at
 * most. A search that needs more than `visits` steps ends with the best bar so far. Built once for a set of sizes, asked for many prices: all
 * scratch is kept.
 */
export class FillingSearch {
  readonly #sizes: Float64Array
  readonly #order: Int32Array
  readonly #size: Float64Array
  readonly #value: Float64Array
  readonly #most: Int32Array
  readonly #taken: Int32Array
  readonly #bestTaken: Int32Array
  readonly #shortest: Float64Array

  constructor(sizes: readonly number[]) {
    this.#sizes = Float64Array.from(sizes)
    const count = sizes.length
    this.#order = new Int32Array(count)
    this.#size = new Float64Array(count)
    this.#value = new Float64Array(count)
    this.#most = new Int32Array(count)
    this.#taken = new Int32Array(count)
    this.#bestTaken = new Int32Array(count)
    this.#shortest = new Float64Array(count + 1)
  }

  /** @param over worth that a filling must exceed to be of use; if none does the value is `over` and nothing is taken */
  search(
    values: ArrayLike<number>,
    most: ArrayLike<number>,
    capacity: number,
    over: number,
    visits: number,
  ): BestFilling {
    const count = this.#arrange(values, most, capacity)
    const size = this.#size
    const value = this.#value
    const limit = this.#most
    const taken = this.#taken
    const shortest = this.#shortest
    let best = over
    let found = false
    let left = capacity
    let worth = 0
    let at = 0
    let steps = 0
    for (;;) {
      // Down: as many as fit of each size in turn, as long as the bound allows.
      for (; at < count; at += 1) {
        if (left < (shortest[at] as number)) {
          taken.fill(0, at, count)
          break
        }
        if (worth + (left * (value[at] as number)) / (size[at] as number) <= best) break
        const n = Math.min(limit[at] as number, Math.floor(left / (size[at] as number)))
        taken[at] = n
        left -= n * (size[at] as number)
        worth += n * (value[at] as number)
      }
      if (at === count || left < (shortest[at] as number)) {
        if (worth > best) {
          best = worth
          found = true
          this.#bestTaken.set(taken.subarray(0, count))
          for (let k = at; k < count; k += 1) this.#bestTaken[k] = 0
        }
      }
      steps += 1
      if (steps > visits) return this.#answer(best, found, count, false)
      // Up: one less of the last size taken, as long as what could follow is worth it.
      let back = at - 1
      for (; back >= 0; back -= 1) {
        const n = taken[back] as number
        if (n === 0) continue
        left += size[back] as number
        worth -= value[back] as number
        taken[back] = n - 1
        const next = back + 1
        if (next < count && worth + (left * (value[next] as number)) / (size[next] as number) > best) break
        // None of fewer helps either: all of them go.
        left += (n - 1) * (size[back] as number)
        worth -= (n - 1) * (value[back] as number)
        taken[back] = 0
      }
      if (back < 0) return this.#answer(best, found, count, true)
      at = back + 1
    }
  }

  #arrange(values: ArrayLike<number>, most: ArrayLike<number>, capacity: number): number {
    const order: number[] = []
    for (let i = 0; i < this.#sizes.length; i += 1) {
      if ((values[i] as number) > 0 && (most[i] as number) > 0 && (this.#sizes[i] as number) <= capacity)
        order.push(i)
    }
    const sizes = this.#sizes
    order.sort((a, b) => {
      const first = (values[a] as number) / (sizes[a] as number)
      const second = (values[b] as number) / (sizes[b] as number)
      return second - first || (sizes[b] as number) - (sizes[a] as number)
    })
    const count = order.length
    this.#shortest[count] = Number.POSITIVE_INFINITY
    for (let k = count - 1; k >= 0; k -= 1) {
      const i = order[k] as number
      this.#order[k] = i
      this.#size[k] = sizes[i] as number
      this.#value[k] = values[i] as number
      this.#most[k] = most[i] as number
      this.#shortest[k] = Math.min(this.#shortest[k + 1] as number, sizes[i] as number)
    }
    return count
  }

  #answer(value: number, found: boolean, count: number, best: boolean): BestFilling {
    const sizes: number[] = []
    const counts: number[] = []
    if (found) {
      for (let k = 0; k < count; k += 1) {
        if ((this.#bestTaken[k] as number) === 0) continue
        sizes.push(this.#order[k] as number)
        counts.push(this.#bestTaken[k] as number)
      }
    }
    return { sizes, counts, value, best }
  }
}
