/**
 * Order of elimination by nested dissection: the nodes are halved along the longer extent of their places; those of one half that
 * touch the other come last. Deterministic; ties go by index.
 *
 * `start`, `next`: neighbours of node i are next[start[i]] … next[start[i + 1] − 1]. Gives the nodes in order of elimination.
 *
 * Source: A. George, Nested dissection of a regular finite element mesh, SIAM Journal on Numerical Analysis 10 (1973) (from memory).
 */
export function dissection({
  x,
  y,
  start,
  next,
}: {
  readonly x: Float64Array
  readonly y: Float64Array
  readonly start: Int32Array
  readonly next: Int32Array
}): Int32Array {
  const order = new Int32Array(x.length)
  const side = new Int8Array(x.length)
  let filled = order.length

  function split(nodes: number[]): void {
    if (nodes.length <= LEAF) {
      place(nodes)
      return
    }
    const along = extent(nodes, x) >= extent(nodes, y) ? x : y
    nodes.sort((a, b) => along[a]! - along[b]! || a - b)
    const half = nodes.length >> 1
    for (let i = 0; i < nodes.length; i += 1) side[nodes[i]!] = i < half ? 1 : 2
    const low = nodes.filter((node) => side[node] === 1 && touches(node, 2))
    const high = nodes.filter((node) => side[node] === 2 && touches(node, 1))
    const separator = low.length <= high.length ? low : high
    for (const node of separator) side[node] = 3
    const left = nodes.filter((node) => side[node] === 1)
    const right = nodes.filter((node) => side[node] === 2)
    for (const node of nodes) side[node] = 0
    place(separator)
    split(right)
    split(left)
  }

  function touches(node: number, other: number): boolean {
    for (let k = start[node]!; k < start[node + 1]!; k += 1) if (side[next[k]!] === other) return true
    return false
  }

  function place(nodes: readonly number[]): void {
    filled -= nodes.length
    order.set(nodes, filled)
  }

  split(Array.from(x, (_, i) => i))
  return order
}

/** Pieces up to this size are eliminated as they stand. */
const LEAF = 6

function extent(nodes: readonly number[], along: Float64Array): number {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const node of nodes) {
    low = Math.min(low, along[node]!)
    high = Math.max(high, along[node]!)
  }
  return high - low
}
