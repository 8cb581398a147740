/** The matrix has no positive pivot: something in it can move without resistance. */
export class NotPositiveError extends Error {
  readonly node: number
  constructor(node: number, pivot: number) {
    super(`pivot ${pivot} at node ${node}: expected above 0`)
    this.name = 'NotPositiveError'
    this.node = node
  }
}

/** Numbers of a lower triangle before row `i`. */
export function triangle(i: number): number {
  return (i * (i + 1)) / 2
}

export interface Elimination {
  readonly front: Float64Array
  readonly size: number
  readonly pivots: number
  readonly nodes: Int32Array
  readonly perNode: number
  /** Room for L D. */
  readonly scaled: Float64Array
}

/** Eliminates the first `pivots` rows of a dense lower triangle; gives L, D and what is left for the parent. */
export function eliminate({ front, size, pivots, nodes, perNode, scaled }: Elimination): {
  lower: Float64Array
  diagonal: Float64Array
  update: Float64Array
} {
  const lower = new Float64Array(size * pivots)
  const diagonal = new Float64Array(pivots)
  for (let j = 0; j < pivots; j += 1) {
    const row = j * pivots
    let pivot = front[j * size + j]!
    for (let p = 0; p < j; p += 1) pivot -= lower[row + p]! * scaled[row + p]!
    if (!(pivot > PIVOT_FLOOR * Math.abs(front[j * size + j]!)) || !(pivot > 0)) {
      throw new NotPositiveError(nodes[(j / perNode) | 0]!, pivot)
    }
    diagonal[j] = pivot
    lower[row + j] = 1
    scaled[row + j] = pivot
    columnInto({ front, size, pivots, lower, scaled, j, pivot })
  }
  const update = new Float64Array(triangle(size - pivots))
  for (let i = pivots; i < size; i += 4) updateRows({ front, size, pivots, lower, scaled, update, i })
  return { lower, diagonal, update }
}

interface Dense {
  readonly front: Float64Array
  readonly size: number
  readonly pivots: number
  readonly lower: Float64Array
  readonly scaled: Float64Array
}

/** Column j of L below its pivot, four rows at a time. */
function columnInto({
  front,
  size,
  pivots,
  lower,
  scaled,
  j,
  pivot,
}: Dense & { readonly j: number; readonly pivot: number }): void {
  const row = j * pivots
  const by = 1 / pivot
  let i = j + 1
  for (; i + 3 < size; i += 4) {
    const a0 = i * pivots
    const a1 = a0 + pivots
    const a2 = a1 + pivots
    const a3 = a2 + pivots
    const from = i * size + j
    let s0 = front[from]!
    let s1 = front[from + size]!
    let s2 = front[from + 2 * size]!
    let s3 = front[from + 3 * size]!
    for (let p = 0; p < j; p += 1) {
      const l = lower[row + p]!
      s0 -= scaled[a0 + p]! * l
      s1 -= scaled[a1 + p]! * l
      s2 -= scaled[a2 + p]! * l
      s3 -= scaled[a3 + p]! * l
    }
    scaled[a0 + j] = s0
    scaled[a1 + j] = s1
    scaled[a2 + j] = s2
    scaled[a3 + j] = s3
    lower[a0 + j] = s0 * by
    lower[a1 + j] = s1 * by
    lower[a2 + j] = s2 * by
    lower[a3 + j] = s3 * by
  }
  for (; i < size; i += 1) {
    const at = i * pivots
    let sum = front[i * size + j]!
    for (let p = 0; p < j; p += 1) sum -= scaled[at + p]! * lower[row + p]!
    scaled[at + j] = sum
    lower[at + j] = sum * by
  }
}

/** Four rows from `i` of what is left for the parent, two columns at a time; rows past the end are worked but not kept. */
function updateRows({
  front,
  size,
  pivots,
  lower,
  scaled,
  update,
  i,
}: Dense & { readonly update: Float64Array; readonly i: number }): void {
  const kept = Math.min(4, size - i)
  const a0 = i * pivots
  const a1 = kept > 1 ? a0 + pivots : a0
  const a2 = kept > 2 ? a0 + 2 * pivots : a0
  const a3 = kept > 3 ? a0 + 3 * pivots : a0
  for (let j = pivots; j < i + kept; j += 2) {
    const b0 = j * pivots
    const b1 = j + 1 < i + kept ? b0 + pivots : b0
    let s00 = 0
    let s01 = 0
    let s10 = 0
    let s11 = 0
    let s20 = 0
    let s21 = 0
    let s30 = 0
    let s31 = 0
    for (let p = 0; p < pivots; p += 1) {
      const t0 = scaled[b0 + p]!
      const t1 = scaled[b1 + p]!
      const l0 = lower[a0 + p]!
      const l1 = lower[a1 + p]!
      const l2 = lower[a2 + p]!
      const l3 = lower[a3 + p]!
      s00 += l0 * t0
      s01 += l0 * t1
      s10 += l1 * t0
      s11 += l1 * t1
      s20 += l2 * t0
      s21 += l2 * t1
      s30 += l3 * t0
      s31 += l3 * t1
    }
    keep(front, size, pivots, update, i, j, s00, s01)
    if (kept > 1) keep(front, size, pivots, update, i + 1, j, s10, s11)
    if (kept > 2) keep(front, size, pivots, update, i + 2, j, s20, s21)
    if (kept > 3) keep(front, size, pivots, update, i + 3, j, s30, s31)
  }
}

/** Entries j and j + 1 of row i, where they are in the lower triangle. */
function keep(
  front: Float64Array,
  size: number,
  pivots: number,
  update: Float64Array,
  i: number,
  j: number,
  first: number,
  second: number,
): void {
  const to = triangle(i - pivots) + j - pivots
  const from = i * size + j
  if (j <= i) update[to] = front[from]! - first
  if (j < i) update[to + 1] = front[from + 1]! - second
}

/** A pivot this small beside what it was before elimination means that nothing resists there. */
const PIVOT_FLOOR = 1e-13
