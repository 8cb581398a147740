import { dissection } from './dissection.ts'

/**
 * LDLᵀ of a symmetric positive definite matrix given as a sum of element matrices, eliminated front by front (multifrontal):
 * only small dense matrices are ever formed.
 *
 * Source: I. S. Duff and J. K. Reid, The multifrontal solution of indefinite sparse symmetric linear equations, ACM Transactions on
 * Mathematical Software 9 (1983) (from memory).
 */
export interface ElementSystem {
  readonly x: Float64Array
  readonly y: Float64Array
  /** Unknowns at each node. */
  readonly perNode: number
  /** Three nodes an element. */
  readonly triangles: Int32Array
  /** Row-major, (3 perNode)² numbers an element. */
  readonly matrices: Float64Array
  /** 1 where an unknown is held at zero. */
  readonly held: Uint8Array
}

interface Front {
  /** Nodes of the front, those eliminated here first. */
  readonly nodes: Int32Array
  readonly eliminated: number
  /** The unknown of each row. */
  readonly rows: Int32Array
  /** Row-major m × k: L below and in the pivots (unit diagonal implied). */
  readonly lower: Float64Array
  readonly diagonal: Float64Array
}

export interface Factor {
  readonly fronts: readonly Front[]
  readonly perNode: number
  readonly unknowns: number
  /** Numbers kept in L. */
  readonly fill: number
}

/** The matrix has no positive pivot: something in it can move without resistance. */
export class NotPositiveError extends Error {
  constructor(node: number, pivot: number) {
    super(`pivot ${pivot} at node ${node}: expected above 0`)
    this.name = 'NotPositiveError'
  }
}

interface Plan {
  readonly nodes: Int32Array
  readonly eliminated: number
  readonly elements: number[]
  readonly children: number[]
}

/** @throws NotPositiveError where the matrix is not positive definite. */
export function factorElements(system: ElementSystem): Factor {
  const plans = planFronts(system)
  const { perNode } = system
  const place = new Int32Array(system.x.length)
  const updates: (Float64Array | null)[] = plans.map(() => null)
  const fronts: Front[] = []
  const largest = plans.reduce((most, { nodes }) => Math.max(most, nodes.length * perNode), 0)
  const room = new Float64Array(largest * largest)
  const products = new Float64Array(largest * largest)
  let fill = 0
  for (const [index, plan] of plans.entries()) {
    const size = plan.nodes.length * perNode
    const front = room.fill(0, 0, size * size)
    for (let i = 0; i < plan.nodes.length; i += 1) place[plan.nodes[i]!] = i * perNode
    addElements(front, size, plan, system, place)
    for (const child of plan.children) {
      const below = plans[child]!
      const update = updates[child]
      if (update) addUpdate(front, size, below.nodes.subarray(below.eliminated), update, place, perNode)
      updates[child] = null
    }
    const pivots = plan.eliminated * perNode
    const { lower, diagonal, update } = eliminate({
      front,
      size,
      pivots,
      nodes: plan.nodes,
      perNode,
      scaled: products,
    })
    updates[index] = update
    fill += lower.length
    fronts.push({
      nodes: plan.nodes,
      eliminated: plan.eliminated,
      rows: rowsOf(plan.nodes, perNode),
      lower,
      diagonal,
    })
  }
  return { fronts, perNode, unknowns: system.x.length * perNode, fill }
}

function rowsOf(nodes: Int32Array, perNode: number): Int32Array {
  const rows = new Int32Array(nodes.length * perNode)
  for (let i = 0; i < rows.length; i += 1) rows[i] = nodes[(i / perNode) | 0]! * perNode + (i % perNode)
  return rows
}

function planFronts({ x, y, triangles }: ElementSystem): Plan[] {
  const count = x.length
  const { start, next } = neighbours(triangles, count)
  const order = dissection({ x, y, start, next })
  const rank = new Int32Array(count)
  for (let i = 0; i < count; i += 1) rank[order[i]!] = i

  // Structure of each column and its parent, by rank.
  const structure: number[][] = []
  const parent = new Int32Array(count).fill(-1)
  const children: number[][] = Array.from({ length: count }, () => [])
  const seen = new Int32Array(count).fill(-1)
  for (let j = 0; j < count; j += 1) {
    const below: number[] = []
    seen[j] = j
    const take = (i: number): void => {
      if (i > j && seen[i] !== j) {
        seen[i] = j
        below.push(i)
      }
    }
    const node = order[j]!
    for (let k = start[node]!; k < start[node + 1]!; k += 1) take(rank[next[k]!]!)
    for (const child of children[j]!) for (const i of structure[child]!) take(i)
    below.sort((a, b) => a - b)
    structure.push(below)
    if (below.length > 0) {
      parent[j] = below[0]!
      children[below[0]!]!.push(j)
    }
  }

  // Columns that follow each other with nearly the same structure are eliminated in one front.
  const frontOf = new Int32Array(count)
  const heads: number[] = []
  for (let j = 0; j < count; j += 1) {
    const joins = j > 0 && parent[j - 1] === j && structure[j - 1]!.length + SLACK >= structure[j]!.length + 1
    if (!joins) heads.push(j)
    frontOf[j] = heads.length - 1
  }
  const plans: Plan[] = heads.map((head, index) => {
    const last = (heads[index + 1] ?? count) - 1
    const nodes: number[] = []
    for (let j = head; j <= last; j += 1) nodes.push(order[j]!)
    for (const i of structure[last]!) nodes.push(order[i]!)
    return { nodes: Int32Array.from(nodes), eliminated: last - head + 1, elements: [], children: [] }
  })
  for (let j = 0; j < count; j += 1) {
    const above = parent[j]!
    if (above >= 0 && frontOf[above] !== frontOf[j]) plans[frontOf[above]!]!.children.push(frontOf[j]!)
  }
  for (let e = 0; e < triangles.length / 3; e += 1) {
    const first = Math.min(
      rank[triangles[3 * e]!]!,
      rank[triangles[3 * e + 1]!]!,
      rank[triangles[3 * e + 2]!]!,
    )
    plans[frontOf[first]!]!.elements.push(e)
  }
  return plans
}

/** Rows of zeros that a front may take on so that fewer fronts are made. */
const SLACK = 1

function neighbours(triangles: Int32Array, count: number): { start: Int32Array; next: Int32Array } {
  const sets: Set<number>[] = Array.from({ length: count }, () => new Set())
  for (let e = 0; e < triangles.length; e += 3) {
    for (let i = 0; i < 3; i += 1) {
      for (let j = 0; j < 3; j += 1) if (i !== j) sets[triangles[e + i]!]!.add(triangles[e + j]!)
    }
  }
  const start = new Int32Array(count + 1)
  for (let i = 0; i < count; i += 1) start[i + 1] = start[i]! + sets[i]!.size
  const next = new Int32Array(start[count]!)
  for (let i = 0; i < count; i += 1)
    next.set(
      [...sets[i]!].sort((a, b) => a - b),
      start[i]!,
    )
  return { start, next }
}

function addElements(
  front: Float64Array,
  size: number,
  plan: Plan,
  { perNode, triangles, matrices, held }: ElementSystem,
  place: Int32Array,
): void {
  const width = 3 * perNode
  const rows = new Int32Array(width)
  for (const e of plan.elements) {
    for (let i = 0; i < width; i += 1) {
      const node = triangles[3 * e + ((i / perNode) | 0)]!
      const d = i % perNode
      rows[i] = held[node * perNode + d] ? -1 : place[node]! + d
    }
    addElement(front, size, matrices, e * width * width, rows)
  }
  for (let i = 0; i < plan.eliminated; i += 1) {
    for (let d = 0; d < perNode; d += 1) {
      const row = i * perNode + d
      if (held[plan.nodes[i]! * perNode + d]) front[row * size + row] = 1
    }
  }
}

function addElement(
  front: Float64Array,
  size: number,
  matrices: Float64Array,
  from: number,
  rows: Int32Array,
): void {
  const width = rows.length
  for (let i = 0; i < width; i += 1) {
    const row = rows[i]!
    if (row < 0) continue
    for (let j = 0; j < width; j += 1) {
      const column = rows[j]!
      if (column >= 0 && column <= row) front[row * size + column]! += matrices[from + i * width + j]!
    }
  }
}

/** `update`: lower triangle, row after row. */
function addUpdate(
  front: Float64Array,
  size: number,
  nodes: Int32Array,
  update: Float64Array,
  place: Int32Array,
  perNode: number,
): void {
  for (let a = 0; a < nodes.length; a += 1) {
    const rowPlace = place[nodes[a]!]!
    for (let i = 0; i < perNode; i += 1) {
      const row = rowPlace + i
      let from = triangle(a * perNode + i)
      for (let b = 0; b <= a; b += 1) {
        const columnPlace = place[nodes[b]!]!
        const last = a === b ? i + 1 : perNode
        if (rowPlace >= columnPlace) {
          const to = row * size + columnPlace
          for (let j = 0; j < last; j += 1) front[to + j]! += update[from + j]!
        } else {
          for (let j = 0; j < last; j += 1) front[(columnPlace + j) * size + row]! += update[from + j]!
        }
        from += perNode
      }
    }
  }
}

/** Numbers of a lower triangle before row `i`. */
function triangle(i: number): number {
  return (i * (i + 1)) / 2
}

interface Elimination {
  readonly front: Float64Array
  readonly size: number
  readonly pivots: number
  readonly nodes: Int32Array
  readonly perNode: number
  /** Room for L D. */
  readonly scaled: Float64Array
}

/** Eliminates the first `pivots` rows of a dense lower triangle; gives L, D and what is left for the parent. */
function eliminate({ front, size, pivots, nodes, perNode, scaled }: Elimination): {
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

/** Solves for one right-hand side, in place. Fronts below which the right-hand side is zero cost nothing on the way up. */
export function solveFactor({ fronts, perNode }: Factor, b: Float64Array): Float64Array {
  let most = 0
  for (const { rows } of fronts) most = Math.max(most, rows.length)
  const work = new Float64Array(most)
  for (const front of fronts) {
    if (anyIn(b, front.rows, front.eliminated * perNode)) forward(front, front.eliminated * perNode, b, work)
  }
  for (let f = fronts.length - 1; f >= 0; f -= 1) {
    backward(fronts[f]!, fronts[f]!.eliminated * perNode, b, work)
  }
  return b
}

function anyIn(b: Float64Array, rows: Int32Array, count: number): boolean {
  for (let i = 0; i < count; i += 1) if (b[rows[i]!] !== 0) return true
  return false
}

function forward({ rows, lower }: Front, pivots: number, b: Float64Array, work: Float64Array): void {
  for (let i = 0; i < pivots; i += 1) {
    let sum = b[rows[i]!]!
    const at = i * pivots
    for (let p = 0; p < i; p += 1) sum -= lower[at + p]! * work[p]!
    work[i] = sum
    b[rows[i]!] = sum
  }
  let i = pivots
  for (; i + 3 < rows.length; i += 4) {
    const a0 = i * pivots
    const a1 = a0 + pivots
    const a2 = a1 + pivots
    const a3 = a2 + pivots
    let s0 = 0
    let s1 = 0
    let s2 = 0
    let s3 = 0
    for (let p = 0; p < pivots; p += 1) {
      const value = work[p]!
      s0 += lower[a0 + p]! * value
      s1 += lower[a1 + p]! * value
      s2 += lower[a2 + p]! * value
      s3 += lower[a3 + p]! * value
    }
    b[rows[i]!]! -= s0
    b[rows[i + 1]!]! -= s1
    b[rows[i + 2]!]! -= s2
    b[rows[i + 3]!]! -= s3
  }
  for (; i < rows.length; i += 1) {
    const at = i * pivots
    let sum = 0
    for (let p = 0; p < pivots; p += 1) sum += lower[at + p]! * work[p]!
    b[rows[i]!]! -= sum
  }
}

function backward(
  { rows, lower, diagonal }: Front,
  pivots: number,
  b: Float64Array,
  work: Float64Array,
): void {
  for (let p = 0; p < pivots; p += 1) work[p] = b[rows[p]!]! / diagonal[p]!
  let i = rows.length - 1
  for (; i - 3 >= pivots; i -= 4) {
    const a0 = i * pivots
    const a1 = a0 - pivots
    const a2 = a1 - pivots
    const a3 = a2 - pivots
    const v0 = b[rows[i]!]!
    const v1 = b[rows[i - 1]!]!
    const v2 = b[rows[i - 2]!]!
    const v3 = b[rows[i - 3]!]!
    for (let p = 0; p < pivots; p += 1) {
      work[p]! -= lower[a0 + p]! * v0 + lower[a1 + p]! * v1 + lower[a2 + p]! * v2 + lower[a3 + p]! * v3
    }
  }
  for (; i >= 0; i -= 1) {
    const value = i < pivots ? work[i]! : b[rows[i]!]!
    const at = i * pivots
    for (let p = Math.min(i, pivots) - 1; p >= 0; p -= 1) work[p]! -= lower[at + p]! * value
  }
  for (let p = 0; p < pivots; p += 1) b[rows[p]!] = work[p]!
}
