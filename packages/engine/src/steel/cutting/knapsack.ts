import { batches, denseKnapsack, MOST_CELLS } from './dense-knapsack.ts'

/** Best values of one bar, for every capacity at once. */
export interface Knapsack {
  /** Largest value of pieces that fit in the capacity. Exact where sizes and values are whole numbers. */
  value(capacity: number): number
  /** How many of each size make that value. */
  counts(capacity: number): number[]
}

export interface KnapsackInput {
  /** Whole numbers above 0. */
  readonly sizes: readonly number[]
  readonly values: readonly number[]
  /** Most of each size. */
  readonly most: readonly number[]
  readonly capacity: number
}

/** Bounded knapsack: over every whole length where such a table is small, else over the lengths that can be reached. */
export function knapsack(input: KnapsackInput): Knapsack {
  const parts = batches(input)
  return parts.length * (input.capacity + 1) <= MOST_CELLS
    ? denseKnapsack(input, parts)
    : sparseKnapsack(input)
}

/**
 * Bounded knapsack over the lengths that can be reached: a list of states, longer only where worth more. A size is added in
 * doubling batches, so that any count up to its most is reached.
 */
export function sparseKnapsack({ sizes, values, most, capacity }: KnapsackInput): Knapsack {
  const length: number[] = [0]
  const worth: number[] = [0]
  const parent: number[] = [-1]
  const size: number[] = [-1]
  const times: number[] = [0]
  let front: number[] = [0]
  const order = sizes.map((_, index) => index).sort((a, b) => (sizes[b] ?? 0) - (sizes[a] ?? 0))
  for (const index of order) {
    const each = sizes[index] ?? 0
    const value = values[index] ?? 0
    if (!(value > 0)) continue
    let left = Math.min(most[index] ?? 0, Math.floor(capacity / each))
    for (let batch = 1; left > 0; batch *= 2) {
      const count = Math.min(batch, left)
      left -= count
      front = extend(front, count * each, count * value, index, count)
    }
  }

  function extend(
    old: readonly number[],
    more: number,
    gain: number,
    index: number,
    count: number,
  ): number[] {
    const next: number[] = []
    let best = -1
    let i = 0
    let j = 0
    while (i < old.length || j < old.length) {
      const stay = i < old.length ? (length[old[i] as number] as number) : Number.POSITIVE_INFINITY
      const base = j < old.length ? (old[j] as number) : -1
      const grown = base >= 0 ? (length[base] as number) + more : Number.POSITIVE_INFINITY
      if (stay <= grown) {
        const state = old[i] as number
        i += 1
        if ((worth[state] as number) > best) {
          best = worth[state] as number
          next.push(state)
        }
        continue
      }
      if (grown > capacity) {
        j = old.length
        continue
      }
      j += 1
      const reached = (worth[base] as number) + gain
      if (reached <= best) continue
      best = reached
      const last = next.at(-1)
      // A state of the same length and less worth gives way.
      if (last !== undefined && length[last] === grown) next.pop()
      next.push(length.length)
      length.push(grown)
      worth.push(reached)
      parent.push(base)
      size.push(index)
      times.push(count)
    }
    return next
  }

  function stateAt(limit: number): number {
    let [low, high] = [0, front.length - 1]
    while (low < high) {
      const middle = (low + high + 1) >> 1
      if ((length[front[middle] as number] as number) <= limit) low = middle
      else high = middle - 1
    }
    return front[low] ?? 0
  }

  return {
    value: (limit) => worth[stateAt(limit)] ?? 0,
    counts: (limit) => {
      const counts = sizes.map(() => 0)
      for (let state = stateAt(limit); (parent[state] ?? -1) >= 0; state = parent[state] as number) {
        const index = size[state] as number
        counts[index] = (counts[index] ?? 0) + (times[state] ?? 0)
      }
      return counts
    },
  }
}
