import type { Ring } from '../panel/point.ts'
import { bounds } from '../panel/polygon.ts'
import { cross, dot, middleOf, minus, normalOf, type Point3, span, unit } from './frame.ts'

type Four = readonly [Point3, Point3, Point3, Point3]

/** Heights of four corners, in order, above their mean plane, mm. Null where they span no area. */
export function cornerHeights(corners: Four): readonly [number, number, number, number] | null {
  const normal = normalOf(corners)
  if (normal === null) return null
  const middle = middleOf(corners)
  const [a, b, c, d] = corners.map((corner) => dot(minus(corner, middle), normal))
  return [a ?? 0, b ?? 0, c ?? 0, d ?? 0]
}

/** Distance of the fourth corner from the plane of the other three, for corners of a rectangle in order. */
export function warpOf([a, b, c, d]: readonly [number, number, number, number]): number {
  return Math.abs(a - b + c - d)
}

/**
 * Warp of an outline of any shape: the twist of the surface `a + b x + c y + d x y` of least squares through its
 * corners, as the difference it makes over the corners of the box, mm. Null where the corners do not fix it.
 */
export function twistOf(corners: readonly Point3[], outline: Ring): number | null {
  const normal = normalOf(corners)
  if (normal === null || corners.length < 4) return null
  const middle = middleOf(corners)
  const box = bounds(outline)
  const [width, height] = [box.right - box.left, box.top - box.bottom]
  const rows = outline.map(([x, y], index) => {
    const [u, v] = [(x - box.left) / width - 0.5, (y - box.bottom) / height - 0.5]
    return { basis: [1, u, v, u * v], z: dot(minus(corners[index] as Point3, middle), normal) }
  })
  const solved = leastSquares(rows)
  return solved === null ? null : Math.abs(solved[3] ?? 0)
}

export interface BowReading {
  /** mm out of the surface that the corners span: + towards the face that was up in the mould. */
  readonly offset: number
  /** Length of the edge it was read on, mm; for a point inside the face the shorter side. */
  readonly over: number
}

/**
 * How far a further point on the face stands out of the surface that four corners span: at the middle of an edge the
 * distance from its chord. Null for a point that is not on the panel.
 */
export function bowOf(corners: Four, point: Point3): BowReading | null {
  const heights = cornerHeights(corners)
  const normal = normalOf(corners)
  if (heights === null || normal === null) return null
  const middle = middleOf(corners)
  const [a, b, c, d] = corners
  const along = unit(minus(middleOf([b, c]), middleOf([a, d])))
  const across = cross(normal, along)
  const length = (span(a, b) + span(d, c)) / 2
  const width = (span(b, c) + span(a, d)) / 2
  const from = minus(point, middle)
  const u = dot(from, along) / length + 0.5
  const v = dot(from, across) / width + 0.5
  const outside = 0.02
  if (u < -outside || u > 1 + outside || v < -outside || v > 1 + outside) return null
  const [za, zb, zc, zd] = heights
  const surface = za * (1 - u) * (1 - v) + zb * u * (1 - v) + zc * u * v + zd * (1 - u) * v
  const near = 0.05
  const over = v < near || v > 1 - near ? length : u < near || u > 1 - near ? width : Math.min(length, width)
  return { offset: dot(from, normal) - surface, over }
}

/** Normal equations of a few unknowns, Gauss with pivoting. Null where they are singular. */
function leastSquares(rows: readonly { basis: readonly number[]; z: number }[]): number[] | null {
  const size = rows[0]?.basis.length ?? 0
  const table = Array.from({ length: size }, (_, i) =>
    Array.from({ length: size + 1 }, (_, j) =>
      rows.reduce((sum, { basis, z }) => sum + (basis[i] ?? 0) * (j < size ? (basis[j] ?? 0) : z), 0),
    ),
  )
  for (let column = 0; column < size; column += 1) {
    let best = column
    for (let row = column + 1; row < size; row += 1)
      if (Math.abs(table[row]?.[column] ?? 0) > Math.abs(table[best]?.[column] ?? 0)) best = row
    const pivot = table[best] as number[]
    if (!(Math.abs(pivot[column] ?? 0) > 1e-9)) return null
    table[best] = table[column] as number[]
    table[column] = pivot
    for (const row of table) {
      if (row === pivot) continue
      const share = (row[column] ?? 0) / (pivot[column] ?? 1)
      for (let i = column; i <= size; i += 1) row[i] = (row[i] ?? 0) - share * (pivot[i] ?? 0)
    }
  }
  return table.map((row, i) => (row[size] ?? 0) / (row[i] ?? 1))
}
