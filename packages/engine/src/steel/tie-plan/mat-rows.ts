import type { Layer } from '../../panel/drawing.ts'
import type { Point } from '../../panel/point.ts'
import type { BarLine } from '../mat-lines.ts'
import type { PlacedBar, PlacedLap, SteelPlan } from '../steel-plan.ts'

/** One row of a mat as laid, its laps joined to one line. */
export interface MatRowLine extends BarLine {
  readonly diameter: number
  /** Centreline above the mould face, mm; null where the cover is not given. */
  readonly height: number | null
  readonly marks: readonly string[]
}

export interface LayerRows {
  readonly layer: Layer
  readonly alongX: readonly MatRowLine[]
  readonly alongY: readonly MatRowLine[]
}

/**
 * The mats of each layer as rows, from the bars as they are placed. Pieces that are lapped are one line, at the place of the row, though
 * one of them lies a bar aside. Mould first.
 */
export function layerRows({ placed, laps }: Pick<SteelPlan, 'placed' | 'laps'>): LayerRows[] {
  const groups = lappedGroups(placed, laps)
  return (['mould', 'top'] as const).flatMap((layer) => {
    const mats = placed.filter((bar) => bar.use === 'mat' && bar.layer === layer && bar.path.length === 2)
    if (mats.length === 0) return []
    return [{ layer, alongX: rowsAlong(mats, groups, 0), alongY: rowsAlong(mats, groups, 1) }]
  })
}

interface Group {
  /** A point on the row that the bars share. */
  readonly at: Point
}

/** The row of every bar that is lapped, one object for all the bars of it. */
function lappedGroups(placed: readonly PlacedBar[], laps: readonly PlacedLap[]): ReadonlyMap<string, Group> {
  const next = new Map<string, { to: string; at: Point }[]>()
  for (const { bars, at } of laps) {
    for (const [from, to] of [bars, [bars[1], bars[0]]] as const)
      next.set(from, [...(next.get(from) ?? []), { to, at }])
  }
  const groups = new Map<string, Group>()
  for (const { id } of placed) {
    const start = next.get(id)?.[0]
    if (start === undefined || groups.has(id)) continue
    const group: Group = { at: start.at }
    const open = [id]
    while (open.length > 0) {
      const here = open.pop() as string
      if (groups.has(here)) continue
      groups.set(here, group)
      open.push(...(next.get(here) ?? []).map(({ to }) => to))
    }
  }
  return groups
}

/** Bars are straight along an axis to within this, mm. */
const STRAIGHT = 1e-6

function rowsAlong(
  bars: readonly PlacedBar[],
  groups: ReadonlyMap<string, Group>,
  axis: 0 | 1,
): MatRowLine[] {
  const across = axis === 0 ? 1 : 0
  const lines = new Map<Group | PlacedBar, Omit<MatRowLine, 'row'>>()
  for (const bar of bars) {
    const [a, b] = bar.path
    if (a === undefined || b === undefined || Math.abs(a[across] - b[across]) > STRAIGHT) continue
    const group = groups.get(bar.id)
    const key = group ?? bar
    const [from, to] = [Math.min(a[axis], b[axis]), Math.max(a[axis], b[axis])]
    const line = lines.get(key)
    lines.set(key, {
      at: group?.at[across] ?? a[across],
      from: Math.min(from, line?.from ?? from),
      to: Math.max(to, line?.to ?? to),
      diameter: bar.diameter,
      height: bar.height,
      marks: [...new Set([...(line?.marks ?? []), bar.mark])],
    })
  }
  return [...lines.values()]
    .sort((a, b) => a.at - b.at || a.from - b.from)
    .map((line, row) => ({ ...line, row }))
}

/** Largest distance between neighbouring rows, mm; null with fewer than two. */
export function widestGap(lines: readonly BarLine[]): number | null {
  const places = [...new Set(lines.map((line) => line.at))].sort((a, b) => a - b)
  let widest: number | null = null
  for (let i = 1; i < places.length; i += 1)
    widest = Math.max(widest ?? 0, (places[i] as number) - (places[i - 1] as number))
  return widest
}
