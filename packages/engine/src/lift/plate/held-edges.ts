import type { Point } from '../../panel/point.ts'
import { distanceToSegment } from '../../panel/polygon.ts'
import type { PlateMesh } from './mesh.ts'

/**
 * A straight line along an edge of the concrete: `simple`: no deflection; `clamped`: nor slope across it; `guided`: no slope across
 * it, free to deflect, as on a line of symmetry.
 */
export interface HeldEdge {
  readonly from: Point
  readonly to: Point
  readonly kind: 'simple' | 'clamped' | 'guided'
}

/** A side belongs to a held edge within this, mm. */
const ON_EDGE = 1e-3

/** Directions and held unknowns at the nodes of held edges, so that nothing between the nodes moves either. */
export function heldEdges(
  mesh: PlateMesh,
  edges: readonly HeldEdge[],
): { turned: Map<number, Float64Array>; held: Uint8Array } {
  const fixed = new Map<number, number[][]>()
  for (const { a, b } of mesh.sides) {
    const ends = [a, b].map((node): Point => [mesh.x[node]!, mesh.y[node]!])
    const edge = edges.find(({ from, to }) =>
      ends.every((end) => distanceToSegment(end, [from, to]) <= ON_EDGE),
    )
    if (edge === undefined) continue
    const length = Math.hypot(ends[1]![0] - ends[0]![0], ends[1]![1] - ends[0]![1])
    const [c, s] = [(ends[1]![0] - ends[0]![0]) / length, (ends[1]![1] - ends[0]![1]) / length]
    const rows: number[][] = []
    if (edge.kind !== 'guided') {
      rows.push([1, 0, 0, 0, 0, 0], [0, c, s, 0, 0, 0], [0, 0, 0, c * c, 2 * c * s, s * s])
    }
    if (edge.kind !== 'simple') {
      rows.push([0, -s, c, 0, 0, 0], [0, 0, 0, -c * s, c * c - s * s, c * s])
    }
    for (const node of [a, b]) fixed.set(node, [...(fixed.get(node) ?? []), ...rows])
  }
  const turned = new Map<number, Float64Array>()
  const held = new Uint8Array(mesh.x.length * 6)
  for (const [node, rows] of fixed) {
    const axes = [0, 1, 2, 3, 4, 5].map((k) => [0, 1, 2, 3, 4, 5].map((i) => (i === k ? 1 : 0)))
    const basis: number[][] = []
    for (const [index, vector] of [...rows, ...axes].entries()) {
      if (index === rows.length) for (let k = 0; k < basis.length; k += 1) held[node * 6 + k] = 1
      const rest = [...vector]
      for (const unit of basis) {
        const along = unit.reduce((sum, value, i) => sum + value * rest[i]!, 0)
        for (let i = 0; i < 6; i += 1) rest[i]! -= along * unit[i]!
      }
      const length = Math.hypot(...rest)
      if (basis.length < 6 && length > 1e-6) basis.push(rest.map((value) => value / length))
    }
    turned.set(node, Float64Array.from(basis.flat()))
  }
  return { turned, held }
}
