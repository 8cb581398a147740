import { distance, type Point, type Ring } from '../panel/point.ts'

/** How a length changes as each x and y of the corners does. */
export function lengthRow(ring: Ring, a: number, b: number): number[] {
  const [p, q] = [ring[a] as Point, ring[b] as Point]
  const length = distance(p, q)
  const row = new Array<number>(2 * ring.length).fill(0)
  const [ux, uy] = length > 0 ? [(q[0] - p[0]) / length, (q[1] - p[1]) / length] : [0, 0]
  row[2 * a] = -ux
  row[2 * a + 1] = -uy
  row[2 * b] = ux
  row[2 * b + 1] = uy
  return row
}

/** The moves of the whole that change no length, each of size 1: across, up, turned about the middle. */
export function placeRows(ring: Ring): [number[], number[], number[]] {
  const n = ring.length
  const mid: Point = [ring.reduce((sum, [x]) => sum + x, 0) / n, ring.reduce((sum, [, y]) => sum + y, 0) / n]
  const turn = ring.flatMap(([x, y]) => [mid[1] - y, x - mid[0]])
  const size = Math.hypot(...turn)
  const even = 1 / Math.sqrt(n)
  return [
    ring.flatMap(() => [even, 0]),
    ring.flatMap(() => [0, even]),
    turn.map((value) => (size > 0 ? value / size : 0)),
  ]
}

/** Adds r rᵀ to a square kept row by row. */
export function addRow(square: Float64Array, row: readonly number[]): void {
  const size = row.length
  for (let i = 0; i < size; i += 1) {
    const value = row[i] as number
    if (value === 0) continue
    for (let j = 0; j < size; j += 1)
      square[i * size + j] = (square[i * size + j] as number) + value * (row[j] as number)
  }
}

/** rᵀ Q r */
export function through(square: Float64Array, row: readonly number[]): number {
  const size = row.length
  let sum = 0
  for (let i = 0; i < size; i += 1) {
    const value = row[i] as number
    if (value === 0) continue
    for (let j = 0; j < size; j += 1)
      if (row[j] !== 0) sum += value * (square[i * size + j] as number) * (row[j] as number)
  }
  return sum
}
