import { eliminate, triangle } from './front-elimination.ts'
import { type FrontPlan, planFronts } from './front-plan.ts'

export { NotPositiveError } from './front-elimination.ts'

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

function addElements(
  front: Float64Array,
  size: number,
  plan: FrontPlan,
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
