import type { Point } from '../../panel/point.ts'
import { distanceToSegment } from '../../panel/polygon.ts'
import type { Region } from '../../panel/region.ts'
import type { PlacedBar } from '../../steel/steel-plan.ts'
import { clearBars, concreteCells, gridOver } from './steel-grid.ts'

/** An insertion with little room. */
export type Tight =
  /** Nearer to a face than the wanted margin: nothing else reaches what lies there. */
  | { readonly insertion: number; readonly at: 'face'; readonly clear: number }
  /** Over a bar: the head goes in beside it, farther away than a hand may miss. `move` null: no gap near takes the head. */
  | { readonly insertion: number; readonly at: 'bar'; readonly mark: string; readonly move: number | null }

export interface TightInput {
  readonly region: Region
  readonly placed: readonly PlacedBar[]
  readonly insertions: readonly Point[]
  /** Diameter of the head, mm. */
  readonly head: number
  /** How far a hand may miss at each insertion without leaving concrete unreached: radius of action less covering radius, mm. */
  readonly slack: readonly number[]
}

/** How far around an insertion a gap is looked for, in head diameters. */
const LOOK = 2

/**
 * Insertions that stand over a bar, seen from above, with no gap for the head within the slack. Inside the slack the proof still holds: every point
 * stays within the radius of action. Found on cells of 10 mm.
 */
export function overBars({ region, placed, insertions, head, slack }: TightInput): Tight[] {
  if (placed.length === 0) return []
  const grid = gridOver(region)
  const free = concreteCells(grid, region)
  clearBars(free, grid, placed, head / 2)
  const look = Math.max(...slack, LOOK * head)
  const reach = Math.ceil(look / grid.cell)
  return insertions.flatMap(([x, y], insertion): Tight[] => {
    const column = Math.floor((x - grid.left) / grid.cell)
    const row = Math.floor((y - grid.bottom) / grid.cell)
    let least = Number.POSITIVE_INFINITY
    for (let up = -reach; up <= reach; up += 1)
      for (let across = -reach; across <= reach; across += 1) {
        const [c, r] = [column + across, row + up]
        if (c < 0 || r < 0 || c >= grid.columns || r >= grid.rows || free[r * grid.columns + c] !== 1)
          continue
        const dx = Math.max(0, Math.abs(grid.left + (c + 0.5) * grid.cell - x) - grid.cell / 2)
        const dy = Math.max(0, Math.abs(grid.bottom + (r + 0.5) * grid.cell - y) - grid.cell / 2)
        least = Math.min(least, Math.hypot(dx, dy))
      }
    if (least <= (slack[insertion] ?? 0)) return []
    const bar = nearestBar(placed, [x, y])
    if (bar === null || bar.away > head / 2) return []
    return [{ insertion, at: 'bar', mark: bar.mark, move: least <= look ? least : null }]
  })
}

/** The bar whose skin is nearest to a place. */
function nearestBar(
  placed: readonly PlacedBar[],
  at: Point,
): { readonly mark: string; readonly away: number } | null {
  let best: { readonly mark: string; readonly away: number } | null = null
  for (const { mark, path, diameter } of placed)
    for (let i = 0; i + 1 < path.length; i += 1) {
      const away = distanceToSegment(at, [path[i] as Point, path[i + 1] as Point]) - diameter / 2
      if (best === null || away < best.away) best = { mark, away }
    }
  return best
}
