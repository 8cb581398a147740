import { distance, type Point } from '../../panel/point.ts'
import { edges } from '../../panel/polygon.ts'
import type { Region } from '../../panel/region.ts'

/** A turned frame: u along the rows, v across them; the concrete lies within the given bounds. */
export interface Frame {
  readonly cos: number
  readonly sin: number
  readonly u0: number
  readonly u1: number
  readonly v0: number
  readonly v1: number
}

/** Frame along the longest edge of the outline; `turned` by a quarter more. */
export function frameOf(region: Region, turned: boolean): Frame {
  const outline = region[0]?.outline ?? []
  let [longest, ux, uy] = [0, 1, 0]
  for (const [a, b] of edges(outline)) {
    const length = distance(a, b)
    if (length > longest * (1 + 1e-9)) {
      longest = length
      ux = (b[0] - a[0]) / length
      uy = (b[1] - a[1]) / length
    }
  }
  // Left-pointing edges are read the other way round, so that rows of a plain rectangle run along +x.
  const flip = ux < -1e-12 || (Math.abs(ux) <= 1e-12 && uy < 0) ? -1 : 1
  const [cos, sin] = turned ? [-uy * flip, ux * flip] : [ux * flip, uy * flip]
  let [u0, u1, v0, v1] = [Infinity, -Infinity, Infinity, -Infinity]
  for (const [x, y] of outline) {
    const [u, v] = [x * cos + y * sin, y * cos - x * sin]
    u0 = Math.min(u0, u)
    u1 = Math.max(u1, u)
    v0 = Math.min(v0, v)
    v1 = Math.max(v1, v)
  }
  return { cos, sin, u0, u1, v0, v1 }
}

export function intoFrame({ cos, sin }: Frame, [x, y]: Point): Point {
  return [x * cos + y * sin, y * cos - x * sin]
}

export function fromFrame({ cos, sin }: Frame, [u, v]: Point): Point {
  return [u * cos - v * sin, u * sin + v * cos]
}

/**
 * Triangular rows over the frame's bounds: the count of rows that costs fewest insertions, rows as far apart as the radius allows, first and
 * last row `margin` or more from the edge where that can be. `shifted` starts with the row that stands at the ends.
 */
export function triangularRows(frame: Frame, radius: number, margin: number, shifted: boolean): Point[] {
  const across = frame.v1 - frame.v0
  const along = frame.u1 - frame.u0
  const plan = bestRows(across, along, radius, margin)
  const points: Point[] = []
  const perRow = Math.max(1, Math.ceil(along / plan.spacing - 1e-9))
  const step = along / perRow
  for (let row = 0; row < plan.rows; row += 1) {
    const v = plan.rows === 1 ? (frame.v0 + frame.v1) / 2 : frame.v0 + plan.edge + row * plan.pitch
    const atEnds = (row % 2 === 1) !== shifted
    const count = atEnds && plan.rows > 1 ? perRow + 1 : perRow
    for (let i = 0; i < count; i += 1)
      points.push(fromFrame(frame, [frame.u0 + (count > perRow ? i : i + 0.5) * step, v]))
  }
  return points
}

interface RowPlan {
  readonly rows: number
  readonly spacing: number
  readonly edge: number
  readonly pitch: number
}

/** A hair inside the exact fit, so that three arcs never meet in one point only. */
const TIGHT = 1 - 2e-4

function bestRows(across: number, along: number, reach: number, margin: number): RowPlan {
  const radius = reach * TIGHT
  const most = Math.ceil(across / radius) + 2
  let best: (RowPlan & { cost: number }) | null = null
  for (let rows = 1; rows <= most; rows += 1) {
    // Half-height of the strip that one row covers: rows of pitch R + h, h from each edge.
    const exact = (across - (rows - 1) * radius) / (rows + 1)
    const half = Math.max(exact, Math.min(margin, across / 2), radius * 0.02)
    if (exact > radius * 0.97 || half > radius * 0.97) continue
    const spacing = 2 * Math.sqrt(radius * radius - half * half)
    const edge = Math.min(half, across / 2)
    const pitch = rows === 1 ? 0 : (across - 2 * edge) / (rows - 1)
    const perRow = Math.max(1, Math.ceil(along / spacing - 1e-9))
    const cost = rows * (perRow + (rows > 1 ? 0.5 : 0))
    if (best === null || cost < best.cost - 1e-9) best = { rows, spacing, edge, pitch, cost }
  }
  return best ?? { rows: most, spacing: radius * 1.4, edge: across / (2 * most), pitch: across / most }
}
