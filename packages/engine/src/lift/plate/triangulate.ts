import Delaunator from 'delaunator'

/** Boundary sides as pairs of points, concrete on their left. */
export interface Side {
  readonly a: number
  readonly b: number
}

/** Delaunay triangles over the points, counter-clockwise (slivers along the hull may be flat), with the triangle beyond each side (−1: none). */
export interface Triangles {
  /** Three points a triangle. */
  readonly corners: Int32Array
  /** Triangle across the side from corner k to k + 1 of each triangle: 3 t + k of the other, or −1. */
  readonly across: Int32Array
  /** Half-edge that runs from point a to b, by a · count + b. */
  readonly edge: ReadonlyMap<number, number>
  readonly count: number
}

export function triangulate(x: readonly number[], y: readonly number[]): Triangles {
  const coordinates = new Float64Array(2 * x.length)
  for (let i = 0; i < x.length; i += 1) {
    coordinates[2 * i] = x[i]!
    coordinates[2 * i + 1] = y[i]!
  }
  const made = new Delaunator(coordinates)
  const size = made.triangles.length
  const corners = new Int32Array(size)
  const across = new Int32Array(size)
  // The library's triangles run clockwise where y points up: corner k ↔ 2 − k.
  for (let t = 0; t < size; t += 3) {
    for (let k = 0; k < 3; k += 1) corners[t + k] = made.triangles[t + 2 - k]!
    for (let k = 0; k < 3; k += 1) {
      // Its half-edge j runs from corner j to j + 1; ours from k to k + 1 is its 1 − k (mod 3).
      const other = made.halfedges[t + ((4 - k) % 3)]!
      if (other < 0) across[t + k] = -1
      else {
        const base = other - (other % 3)
        across[t + k] = base + ((4 - (other % 3)) % 3)
      }
    }
  }
  const edge = new Map<number, number>()
  for (let h = 0; h < size; h += 1) {
    edge.set(corners[h]! * x.length + corners[h - (h % 3) + ((h + 1) % 3)]!, h)
  }
  return { corners, across, edge, count: x.length }
}

/** The triangles in the concrete: 1, spread from the left of each side without crossing one. All sides must be edges. */
export function insideOf({ corners, across, edge, count }: Triangles, sides: readonly Side[]): Uint8Array {
  const inside = new Uint8Array(corners.length / 3)
  const wall = new Uint8Array(corners.length)
  const stack: number[] = []
  for (const { a, b } of sides) {
    const left = edge.get(a * count + b)
    const right = edge.get(b * count + a)
    if (right !== undefined) wall[right] = 1
    if (left === undefined) continue
    wall[left] = 1
    stack.push((left / 3) | 0)
  }
  while (stack.length > 0) {
    const t = stack.pop() as number
    if (inside[t]) continue
    inside[t] = 1
    for (let k = 0; k < 3; k += 1) {
      const other = across[3 * t + k]!
      if (!wall[3 * t + k] && other >= 0) stack.push((other / 3) | 0)
    }
  }
  return inside
}
