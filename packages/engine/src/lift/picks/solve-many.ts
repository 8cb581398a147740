import type { Factor } from '../../numeric/element-factor.ts'

/** Right-hand sides that go through the factor together: as many sums as stay in registers beside two rows of L. */
export const TOGETHER = 4

type Front = Factor['fronts'][number]

/** Solves for four right-hand sides at once, in place; `b` holds for each unknown the four numbers next to each other. */
export function solveFour({ fronts, perNode }: Factor, b: Float64Array, work: Float64Array): Float64Array {
  for (const front of fronts) forward(front, front.eliminated * perNode, b, work)
  for (let f = fronts.length - 1; f >= 0; f -= 1) {
    const front = fronts[f]!
    backward(front, front.eliminated * perNode, b, work)
  }
  return b
}

/** Room for the work of `solveFour`. */
export function workFor({ fronts }: Factor): Float64Array {
  let most = 0
  for (const { rows } of fronts) most = Math.max(most, rows.length)
  return new Float64Array(TOGETHER * most)
}

function forward({ rows, lower }: Front, pivots: number, b: Float64Array, work: Float64Array): void {
  for (let i = 0; i < pivots; i += 1) {
    const at = 4 * rows[i]!
    const from = i * pivots
    let a0 = b[at]!
    let a1 = b[at + 1]!
    let a2 = b[at + 2]!
    let a3 = b[at + 3]!
    for (let p = 0, k = 0; p < i; p += 1, k += 4) {
      const l = lower[from + p]!
      a0 -= l * work[k]!
      a1 -= l * work[k + 1]!
      a2 -= l * work[k + 2]!
      a3 -= l * work[k + 3]!
    }
    work[4 * i] = b[at] = a0
    work[4 * i + 1] = b[at + 1] = a1
    work[4 * i + 2] = b[at + 2] = a2
    work[4 * i + 3] = b[at + 3] = a3
  }
  let i = pivots
  for (; i + 1 < rows.length; i += 2) {
    const from = i * pivots
    const next = from + pivots
    let [a0, a1, a2, a3, c0, c1, c2, c3] = [0, 0, 0, 0, 0, 0, 0, 0]
    for (let p = 0, k = 0; p < pivots; p += 1, k += 4) {
      const l = lower[from + p]!
      const m = lower[next + p]!
      const w0 = work[k]!
      const w1 = work[k + 1]!
      const w2 = work[k + 2]!
      const w3 = work[k + 3]!
      a0 += l * w0
      a1 += l * w1
      a2 += l * w2
      a3 += l * w3
      c0 += m * w0
      c1 += m * w1
      c2 += m * w2
      c3 += m * w3
    }
    takeOff(b, 4 * rows[i]!, a0, a1, a2, a3)
    takeOff(b, 4 * rows[i + 1]!, c0, c1, c2, c3)
  }
  for (; i < rows.length; i += 1) {
    const from = i * pivots
    let [a0, a1, a2, a3] = [0, 0, 0, 0]
    for (let p = 0, k = 0; p < pivots; p += 1, k += 4) {
      const l = lower[from + p]!
      a0 += l * work[k]!
      a1 += l * work[k + 1]!
      a2 += l * work[k + 2]!
      a3 += l * work[k + 3]!
    }
    takeOff(b, 4 * rows[i]!, a0, a1, a2, a3)
  }
}

function takeOff(b: Float64Array, at: number, a0: number, a1: number, a2: number, a3: number): void {
  b[at]! -= a0
  b[at + 1]! -= a1
  b[at + 2]! -= a2
  b[at + 3]! -= a3
}

function backward(
  { rows, lower, diagonal }: Front,
  pivots: number,
  b: Float64Array,
  work: Float64Array,
): void {
  for (let i = 0; i < rows.length; i += 1) {
    const at = 4 * rows[i]!
    const by = i < pivots ? 1 / diagonal[i]! : 1
    work[4 * i] = b[at]! * by
    work[4 * i + 1] = b[at + 1]! * by
    work[4 * i + 2] = b[at + 2]! * by
    work[4 * i + 3] = b[at + 3]! * by
  }
  // Two columns of L at a time: from the rows below both, then the one between them.
  let p = pivots - 1
  if (pivots % 2 === 1) {
    column(lower, pivots, rows.length, p, work)
    p -= 1
  }
  for (; p >= 1; p -= 2) columns(lower, pivots, rows.length, p - 1, work)
  for (let i = 0; i < pivots; i += 1) {
    const at = 4 * rows[i]!
    b[at] = work[4 * i]!
    b[at + 1] = work[4 * i + 1]!
    b[at + 2] = work[4 * i + 2]!
    b[at + 3] = work[4 * i + 3]!
  }
}

/** Row p of the work less the rows after it times column p of L. */
function column(lower: Float64Array, pivots: number, size: number, p: number, work: Float64Array): void {
  let [a0, a1, a2, a3] = [0, 0, 0, 0]
  for (let i = p + 1, at = (p + 1) * pivots + p, k = 4 * (p + 1); i < size; i += 1, at += pivots, k += 4) {
    const l = lower[at]!
    a0 += l * work[k]!
    a1 += l * work[k + 1]!
    a2 += l * work[k + 2]!
    a3 += l * work[k + 3]!
  }
  takeOff(work, 4 * p, a0, a1, a2, a3)
}

/** Rows p and p + 1 of the work less the rows after them times columns p and p + 1 of L. */
function columns(lower: Float64Array, pivots: number, size: number, p: number, work: Float64Array): void {
  let [a0, a1, a2, a3, c0, c1, c2, c3] = [0, 0, 0, 0, 0, 0, 0, 0]
  for (let i = p + 2, at = (p + 2) * pivots + p, k = 4 * (p + 2); i < size; i += 1, at += pivots, k += 4) {
    const l = lower[at]!
    const m = lower[at + 1]!
    const w0 = work[k]!
    const w1 = work[k + 1]!
    const w2 = work[k + 2]!
    const w3 = work[k + 3]!
    a0 += l * w0
    a1 += l * w1
    a2 += l * w2
    a3 += l * w3
    c0 += m * w0
    c1 += m * w1
    c2 += m * w2
    c3 += m * w3
  }
  const second = 4 * (p + 1)
  takeOff(work, second, c0, c1, c2, c3)
  const l = lower[(p + 1) * pivots + p]!
  takeOff(
    work,
    4 * p,
    a0 + l * work[second]!,
    a1 + l * work[second + 1]!,
    a2 + l * work[second + 2]!,
    a3 + l * work[second + 3]!,
  )
}
