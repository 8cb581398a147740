import { type Corners, doubleArea, toReference } from './plate/element.ts'
import type { PlateMesh } from './plate/mesh.ts'
import { cornersOf } from './plate/model.ts'
import { SAMPLED, TERMS } from './plate/reference-triangle.ts'

/** Numbers of one triangle: w_xx, w_xy, w_yy at the middles of its three sides, each from 18 unknowns. */
export const SIDE_WEIGHTS = 9 * 18

/**
 * How w_xx, w_xy and w_yy at the middles of the sides of each triangle follow from its 18 unknowns, 1/mm: the element's own second
 * derivatives, made once a mesh, so that the moments of a new set of supports are sums of products.
 */
export function sideWeights(mesh: PlateMesh): Float64Array {
  const count = mesh.triangles.length / 3
  const out = new Float64Array(count * SIDE_WEIGHTS)
  const map = new Float64Array(TERMS * 18)
  const second = new Float64Array(9 * 18)
  for (let e = 0; e < count; e += 1) {
    const corners = cornersOf(mesh, e)
    toReference(corners, map)
    referenceSecond(second, map)
    toPanel(out, e * SIDE_WEIGHTS, second, corners)
  }
  return out
}

function referenceSecond(out: Float64Array, map: Float64Array): void {
  for (let row = 0; row < 9; row += 1) {
    const from = row * TERMS
    for (let j = 0; j < 18; j += 1) {
      const first = 6 * ((j / 6) | 0)
      let sum = 0
      for (let k = first; k < first + 6; k += 1) sum += SAMPLED[from + k]! * map[k * 18 + j]!
      for (let k = 18; k < TERMS; k += 1) sum += SAMPLED[from + k]! * map[k * 18 + j]!
      out[row * 18 + j] = sum
    }
  }
}

function toPanel(out: Float64Array, offset: number, second: Float64Array, corners: Corners): void {
  const det = doubleArea(corners)
  const [x0, y0, x1, y1, x2, y2] = corners
  const [xX, xY, nX, nY] = [(y2 - y0) / det, -(x2 - x0) / det, -(y1 - y0) / det, (x1 - x0) / det]
  for (let side = 0; side < 3; side += 1) {
    const at = 54 * side
    for (let j = 0; j < 18; j += 1) {
      const [uu, uv, vv] = [second[at + j]!, second[at + 18 + j]!, second[at + 36 + j]!]
      out[offset + at + j] = xX * xX * uu + 2 * xX * nX * uv + nX * nX * vv
      out[offset + at + 18 + j] = xX * xY * uu + (xX * nY + nX * xY) * uv + nX * nY * vv
      out[offset + at + 36 + j] = xY * xY * uu + 2 * xY * nY * uv + nY * nY * vv
    }
  }
}
