import type { Point } from '../../panel/point.ts'
import type { PlateModel } from '../plate/model.ts'
import { type ElementShapes, ROW } from './element-shapes.ts'

/** Second derivatives averaged over the concrete in a disc, as a sum over slopes of the plate: ∫ w_xx dA = ∮ w_x n_x ds. */
export interface DiscRow {
  readonly at: Point
  /** Places on the edge of the disc's concrete and n ds / area there: x, y, nx, ny each. */
  readonly around: Float64Array
  /** Unknowns of the plate that count and their weights in w_xx, w_xy, w_yy: three each. */
  readonly unknowns: Int32Array
  readonly weights: Float64Array
}

/** Gauss on 0 … 1, four points. */
const GAUSS: readonly (readonly [number, number])[] = [
  [0.5 - 0.430568155797026, 0.173927422568727],
  [0.5 - 0.169990521792428, 0.326072577431273],
  [0.5 + 0.169990521792428, 0.326072577431273],
  [0.5 + 0.430568155797026, 0.173927422568727],
]

/** Longest arc of one Gauss rule, radians. */
const ARC = Math.PI / 8

interface EdgePart {
  readonly e: number
  readonly x: number
  readonly y: number
  readonly nx: number
  readonly ny: number
}

/** @throws Error where no concrete lies in the disc. */
export function discRow(model: PlateModel, shapes: ElementShapes, at: Point, radius: number): DiscRow {
  const parts = [...sidesInDisc(model, at, radius), ...arcsInDisc(model, at, radius)]
  const area = parts.reduce((sum, { x, y, nx, ny }) => sum + ((x - at[0]) * nx + (y - at[1]) * ny) / 2, 0)
  if (!(area > 1e-6 * radius * radius)) {
    throw new Error(`disc at [${at[0]}, ${at[1]}]: expected concrete in it`)
  }
  const sums = new Map<number, [number, number, number]>()
  for (const { e, x, y, nx, ny } of parts) {
    const here = shapes.at(e, x, y)
    for (const [i, unknown] of shapes.unknowns(e).entries()) {
      const [dx, dy] = [here[ROW.x + i]!, here[ROW.y + i]!]
      const sum = sums.get(unknown) ?? [0, 0, 0]
      sum[0] += (dx * nx) / area
      sum[1] += (dx * ny + dy * nx) / (2 * area)
      sum[2] += (dy * ny) / area
      sums.set(unknown, sum)
    }
  }
  return {
    at,
    around: Float64Array.from(parts.flatMap(({ x, y, nx, ny }) => [x, y, nx / area, ny / area])),
    unknowns: Int32Array.from(sums.keys()),
    weights: Float64Array.from([...sums.values()].flat()),
  }
}

function sidesInDisc({ mesh, locator }: PlateModel, [cx, cy]: Point, radius: number): EdgePart[] {
  const parts: EdgePart[] = []
  for (const { a, b } of mesh.sides) {
    const range = crossing(mesh.x[a]! - cx, mesh.y[a]! - cy, mesh.x[b]! - cx, mesh.y[b]! - cy, radius)
    if (range === null) continue
    const [from, to] = [Math.max(0, range[0]), Math.min(1, range[1])]
    if (!(to > from)) continue
    const [dx, dy] = [mesh.x[b]! - mesh.x[a]!, mesh.y[b]! - mesh.y[a]!]
    const middle = (from + to) / 2
    const e = locator.find([mesh.x[a]! + middle * dx, mesh.y[a]! + middle * dy])
    if (e < 0) throw new Error(`side of node ${a}: expected a triangle beside it`)
    for (const [g, weight] of GAUSS) {
      const t = from + g * (to - from)
      const part = weight * (to - from)
      parts.push({ e, x: mesh.x[a]! + t * dx, y: mesh.y[a]! + t * dy, nx: dy * part, ny: -dx * part })
    }
  }
  return parts
}

/** Where a line from a to b, from the middle of a circle, meets it, as shares of its length. */
function crossing(ax: number, ay: number, bx: number, by: number, radius: number): [number, number] | null {
  const [dx, dy] = [bx - ax, by - ay]
  const square = dx * dx + dy * dy
  const half = ax * dx + ay * dy
  const rest = half * half - square * (ax * ax + ay * ay - radius * radius)
  if (!(rest > 0)) return null
  const root = Math.sqrt(rest)
  return [(-half - root) / square, (-half + root) / square]
}

function arcsInDisc({ mesh, locator }: PlateModel, [cx, cy]: Point, radius: number): EdgePart[] {
  const angles: number[] = []
  for (const { a, b } of mesh.sides) {
    const [ax, ay] = [mesh.x[a]! - cx, mesh.y[a]! - cy]
    const [bx, by] = [mesh.x[b]! - cx, mesh.y[b]! - cy]
    for (const t of crossing(ax, ay, bx, by, radius) ?? []) {
      if (t >= 0 && t < 1) angles.push(Math.atan2(ay + t * (by - ay), ax + t * (bx - ax)))
    }
  }
  const starts = angles.length === 0 ? [-Math.PI] : angles.sort((p, q) => p - q)
  const parts: EdgePart[] = []
  for (const [i, from] of starts.entries()) {
    const to = i + 1 < starts.length ? starts[i + 1]! : starts[0]! + 2 * Math.PI
    if (to - from < 1e-12) continue
    const middle = (from + to) / 2
    if (locator.find([cx + radius * Math.cos(middle), cy + radius * Math.sin(middle)]) < 0) continue
    const count = Math.max(1, Math.ceil((to - from) / ARC))
    const step = (to - from) / count
    for (let k = 0; k < count; k += 1) {
      for (const [g, weight] of GAUSS) {
        const angle = from + (k + g) * step
        const [nx, ny] = [Math.cos(angle), Math.sin(angle)]
        const [x, y] = [cx + radius * nx, cy + radius * ny]
        const e = locator.find([x, y])
        if (e < 0) continue
        const length = weight * step * radius
        parts.push({ e, x, y, nx: nx * length, ny: ny * length })
      }
    }
  }
  return parts
}
