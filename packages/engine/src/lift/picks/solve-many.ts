import type { Factor } from '../../numeric/element-factor.ts'

/** Solves for several right-hand sides at once, in place; `b` holds for each unknown one number a case, case by case next to each other. */
export function solveMany({ fronts, perNode }: Factor, b: Float64Array, cases: number): Float64Array {
  let most = 0
  for (const { nodes } of fronts) most = Math.max(most, nodes.length * perNode)
  const work = new Float64Array(most * cases)
  for (const { nodes, eliminated, lower } of fronts) {
    const pivots = eliminated * perNode
    const size = nodes.length * perNode
    gather(work, b, nodes, perNode, cases)
    for (let i = 1; i < size; i += 1)
      subtractRows(work, i * cases, lower, i * pivots, Math.min(i, pivots), cases)
    scatter(work, b, nodes, perNode, cases)
  }
  for (let f = fronts.length - 1; f >= 0; f -= 1) {
    const { nodes, eliminated, lower, diagonal } = fronts[f]!
    const pivots = eliminated * perNode
    gather(work, b, nodes, perNode, cases)
    for (let p = 0; p < pivots; p += 1) {
      const by = 1 / diagonal[p]!
      for (let k = p * cases; k < (p + 1) * cases; k += 1) work[k]! *= by
    }
    for (let p = 0; p < pivots; p += 1) {
      subtractColumns(work, p * cases, {
        lower,
        first: pivots,
        end: nodes.length * perNode,
        pivots,
        p,
        cases,
      })
    }
    for (let p = pivots - 1; p >= 0; p -= 1) {
      subtractColumns(work, p * cases, { lower, first: p + 1, end: pivots, pivots, p, cases })
    }
    scatter(work, b, nodes, perNode, cases)
  }
  return b
}

function gather(
  work: Float64Array,
  b: Float64Array,
  nodes: Int32Array,
  perNode: number,
  cases: number,
): void {
  const width = perNode * cases
  for (let a = 0; a < nodes.length; a += 1) {
    const from = nodes[a]! * width
    const to = a * width
    for (let k = 0; k < width; k += 1) work[to + k] = b[from + k]!
  }
}

function scatter(
  work: Float64Array,
  b: Float64Array,
  nodes: Int32Array,
  perNode: number,
  cases: number,
): void {
  const width = perNode * cases
  for (let a = 0; a < nodes.length; a += 1) {
    const to = nodes[a]! * width
    const from = a * width
    for (let k = 0; k < width; k += 1) b[to + k] = work[from + k]!
  }
}

/** Row `at` of the work less the first `last` rows times L from `from`; four rows at a time, so that it is read and written less often. */
function subtractRows(
  work: Float64Array,
  at: number,
  lower: Float64Array,
  from: number,
  last: number,
  cases: number,
): void {
  let p = 0
  for (; p + 3 < last; p += 4) {
    const [f0, f1, f2, f3] = [
      lower[from + p]!,
      lower[from + p + 1]!,
      lower[from + p + 2]!,
      lower[from + p + 3]!,
    ]
    const r0 = p * cases
    const [r1, r2, r3] = [r0 + cases, r0 + 2 * cases, r0 + 3 * cases]
    for (let k = 0; k < cases; k += 1) {
      work[at + k]! -= f0 * work[r0 + k]! + f1 * work[r1 + k]! + f2 * work[r2 + k]! + f3 * work[r3 + k]!
    }
  }
  for (; p < last; p += 1) {
    const factor = lower[from + p]!
    const row = p * cases
    for (let k = 0; k < cases; k += 1) work[at + k]! -= factor * work[row + k]!
  }
}

interface Columns {
  readonly lower: Float64Array
  readonly first: number
  readonly end: number
  readonly pivots: number
  readonly p: number
  readonly cases: number
}

/** Row `at` of the work less rows `first` … `end` times column p of L. */
function subtractColumns(
  work: Float64Array,
  at: number,
  { lower, first, end, pivots, p, cases }: Columns,
): void {
  let i = first
  for (; i + 3 < end; i += 4) {
    const from = i * pivots + p
    const [f0, f1, f2, f3] = [
      lower[from]!,
      lower[from + pivots]!,
      lower[from + 2 * pivots]!,
      lower[from + 3 * pivots]!,
    ]
    const r0 = i * cases
    const [r1, r2, r3] = [r0 + cases, r0 + 2 * cases, r0 + 3 * cases]
    for (let k = 0; k < cases; k += 1) {
      work[at + k]! -= f0 * work[r0 + k]! + f1 * work[r1 + k]! + f2 * work[r2 + k]! + f3 * work[r3 + k]!
    }
  }
  for (; i < end; i += 1) {
    const factor = lower[i * pivots + p]!
    const row = i * cases
    for (let k = 0; k < cases; k += 1) work[at + k]! -= factor * work[row + k]!
  }
}
