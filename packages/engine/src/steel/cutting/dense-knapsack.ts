import type { Knapsack, KnapsackInput } from './knapsack.ts'

/** More cells than this (lengths × batches of a size) are not laid out as a table. */
export const MOST_CELLS = 48_000_000

/** Batches of one size, doubling, so that any count up to its most is a sum of some of them. */
export function batches({ sizes, values, most, capacity }: KnapsackInput): { size: number; count: number }[] {
  return sizes.flatMap((each, size) => {
    if (!((values[size] ?? 0) > 0)) return []
    const found: { size: number; count: number }[] = []
    let left = Math.min(most[size] ?? 0, Math.floor(capacity / each))
    for (let count = 1; left > 0; count *= 2) {
      found.push({ size, count: Math.min(count, left) })
      left -= Math.min(count, left)
    }
    return found
  })
}

/** Bounded knapsack over every whole length up to the capacity, one row of choices a batch. */
export function denseKnapsack(input: KnapsackInput, parts = batches(input)): Knapsack {
  const { sizes, values } = input
  const width = input.capacity + 1
  const worth = new Float64Array(width)
  const taken = new Uint8Array(width * parts.length)
  for (const [row, { size, count }] of parts.entries()) {
    const more = count * (sizes[size] as number)
    const gain = count * (values[size] as number)
    const at = row * width
    for (let length = input.capacity; length >= more; length -= 1) {
      const grown = (worth[length - more] as number) + gain
      if (grown > (worth[length] as number)) {
        worth[length] = grown
        taken[at + length] = 1
      }
    }
  }
  return {
    value: (limit) => worth[limit] as number,
    counts: (limit) => {
      const counts = sizes.map(() => 0)
      let length = limit
      for (let row = parts.length - 1; row >= 0; row -= 1) {
        if (taken[row * width + length] === 0) continue
        const { size, count } = parts[row] as { size: number; count: number }
        counts[size] = (counts[size] as number) + count
        length -= count * (sizes[size] as number)
      }
      return counts
    },
  }
}
