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
    fronts.push({ nodes: plan.nodes, eliminated: plan.eliminated, lower, diagonal })
  }
  return { fronts, perNode, unknowns: system.x.length * perNode, fill }
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
    for (let v = 0; v < 3; v += 1) {
      const node = triangles[3 * e + v]!
      for (let d = 0; d < perNode; d += 1) {
        rows[v * perNode + d] = held[node * perNode + d] ? -1 : place[node]! + d
      }
    }
    const from = e * width * width
    for (let i = 0; i < width; i += 1) {
      const row = rows[i]!
      if (row < 0) continue
      for (let j = 0; j < width; j += 1) {
        const column = rows[j]!
        if (column >= 0 && column <= row) front[row * size + column]! += matrices[from + i * width + j]!
      }
    }
  }
  for (let i = 0; i < plan.eliminated; i += 1) {
    for (let d = 0; d < perNode; d += 1) {
      const row = i * perNode + d
      if (held[plan.nodes[i]! * perNode + d]) front[row * size + row] = 1
    }
  }
}

function addUpdate(
  front: Float64Array,
  size: number,
  nodes: Int32Array,
  update: Float64Array,
  place: Int32Array,
  perNode: number,
): void {
  const width = nodes.length * perNode
  for (let a = 0; a < nodes.length; a += 1) {
    const rowPlace = place[nodes[a]!]!
    for (let b = 0; b <= a; b += 1) {
      const columnPlace = place[nodes[b]!]!
      for (let i = 0; i < perNode; i += 1) {
        const from = (a * perNode + i) * width + b * perNode
        const row = rowPlace + i
        const last = a === b ? i + 1 : perNode
        if (rowPlace >= columnPlace) {
          const to = row * size + columnPlace
          for (let j = 0; j < last; j += 1) front[to + j]! += update[from + j]!
        } else {
          for (let j = 0; j < last; j += 1) front[(columnPlace + j) * size + row]! += update[from + j]!
        }
      }
    }
  }
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
    for (let i = j + 1; i < size; i += 1) {
      const at = i * pivots
      let sum = front[i * size + j]!
      for (let p = 0; p < j; p += 1) sum -= scaled[at + p]! * lower[row + p]!
      scaled[at + j] = sum
      lower[at + j] = sum / pivot
    }
  }
  const rest = size - pivots
  const update = new Float64Array(rest * rest)
  for (let i = 0; i < rest; i += 2) {
    const a0 = (pivots + i) * pivots
    const a1 = i + 1 < rest ? a0 + pivots : a0
    for (let j = 0; j <= i + 1 && j < rest; j += 2) {
      const b0 = (pivots + j) * pivots
      const b1 = j + 1 < rest ? b0 + pivots : b0
      let [s00, s01, s10, s11] = [0, 0, 0, 0]
      for (let p = 0; p < pivots; p += 1) {
        const [l0, l1, t0, t1] = [lower[a0 + p]!, lower[a1 + p]!, scaled[b0 + p]!, scaled[b1 + p]!]
        s00 += l0 * t0
        s01 += l0 * t1
        s10 += l1 * t0
        s11 += l1 * t1
      }
      const from = (pivots + i) * size + pivots + j
      const to = i * rest + j
      update[to] = front[from]! - s00
      if (j + 1 < rest) update[to + 1] = front[from + 1]! - s01
      if (i + 1 < rest) {
        update[to + rest] = front[from + size]! - s10
        if (j + 1 < rest) update[to + rest + 1] = front[from + size + 1]! - s11
      }
    }
  }
  return { lower, diagonal, update }
}

/** A pivot this small beside what it was before elimination means that nothing resists there. */
const PIVOT_FLOOR = 1e-13

/** Solves for one right-hand side, in place. */
export function solveFactor({ fronts, perNode }: Factor, b: Float64Array): Float64Array {
  for (const { nodes, eliminated, lower } of fronts) {
    const pivots = eliminated * perNode
    const work = new Float64Array(pivots)
    for (let i = 0; i < nodes.length * perNode; i += 1) {
      const at = nodes[(i / perNode) | 0]! * perNode + (i % perNode)
      const last = Math.min(i, pivots)
      let sum = b[at]!
      for (let p = 0; p < last; p += 1) sum -= lower[i * pivots + p]! * work[p]!
      if (i < pivots) work[i] = sum
      b[at] = sum
    }
  }
  for (let f = fronts.length - 1; f >= 0; f -= 1) {
    const { nodes, eliminated, lower, diagonal } = fronts[f]!
    const pivots = eliminated * perNode
    const work = new Float64Array(pivots)
    for (let p = 0; p < pivots; p += 1) {
      work[p] = b[nodes[(p / perNode) | 0]! * perNode + (p % perNode)]! / diagonal[p]!
    }
    for (let i = nodes.length * perNode - 1; i >= 0; i -= 1) {
      const at = nodes[(i / perNode) | 0]! * perNode + (i % perNode)
      const value = i < pivots ? work[i]! : b[at]!
      const last = Math.min(i, pivots)
      for (let p = 0; p < last; p += 1) work[p]! -= lower[i * pivots + p]! * value
      if (i < pivots) b[at] = value
    }
  }
  return b
}
