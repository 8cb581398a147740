import type { Point, Ring } from '../../panel/point.ts'
import { covers, type Region } from '../../panel/region.ts'

/** The stretches of a straight line from `a` to `b` that lie in a region, as parts of it from 0 to 1, edges included. */
export function partsWithin(region: Region, a: Point, b: Point): (readonly [from: number, to: number])[] {
  const cuts = [0, 1]
  const [ux, uy] = [b[0] - a[0], b[1] - a[1]]
  for (const { outline, holes } of region) {
    addCuts(cuts, outline, a, b)
    for (const hole of holes) addCuts(cuts, hole, a, b)
  }
  if (cuts.length === 2) return covers(region, [a[0] + 0.5 * ux, a[1] + 0.5 * uy]) ? [[0, 1]] : []
  cuts.sort((one, other) => one - other)
  const parts: [number, number][] = []
  for (let i = 1; i < cuts.length; i += 1) {
    const [from, to] = [cuts[i - 1] as number, cuts[i] as number]
    if (to - from < 1e-12) continue
    const middle = (from + to) / 2
    if (!covers(region, [a[0] + middle * ux, a[1] + middle * uy])) continue
    const last = parts.at(-1)
    if (last !== undefined && from - last[1] < 1e-12) last[1] = to
    else parts.push([from, to])
  }
  return parts
}

/** Where the edges of a ring cross a straight line, as parts of it, ends left out. */
function addCuts(cuts: number[], ring: Ring, a: Point, b: Point): void {
  const [ux, uy] = [b[0] - a[0], b[1] - a[1]]
  for (let i = 0; i < ring.length; i += 1) {
    const c = ring[i] as Point
    const d = ring[i + 1 === ring.length ? 0 : i + 1] as Point
    const vx = d[0] - c[0]
    const vy = d[1] - c[1]
    const cross = ux * vy - uy * vx
    if (cross === 0) continue
    const along = ((c[0] - a[0]) * vy - (c[1] - a[1]) * vx) / cross
    const across = ((c[0] - a[0]) * uy - (c[1] - a[1]) * ux) / cross
    if (along > 0 && along < 1 && across >= 0 && across <= 1) cuts.push(along)
  }
}

/** Whether the whole line lies in the region. */
export function isWithin(region: Region, a: Point, b: Point): boolean {
  if (a[0] === b[0] && a[1] === b[1]) return covers(region, a)
  const [part] = partsWithin(region, a, b)
  return part !== undefined && part[0] <= 1e-12 && part[1] >= 1 - 1e-12
}
