import { dissection } from './dissection.ts'
import type { ElementSystem } from './element-factor.ts'

/** A front before any number is in it. */
export interface FrontPlan {
  readonly nodes: Int32Array
  readonly eliminated: number
  readonly elements: number[]
  readonly children: number[]
}

/** Fronts in the order of elimination, each with the elements that enter it and the fronts that hand on to it. */
export function planFronts({ x, y, triangles }: Pick<ElementSystem, 'x' | 'y' | 'triangles'>): FrontPlan[] {
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
  const plans: FrontPlan[] = heads.map((head, index) => {
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
