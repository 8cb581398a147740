import type { Layer } from '../../panel/drawing.ts'
import type { BarLine } from '../mat-lines.ts'
import type { PlacedBar } from '../steel-plan.ts'

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

/** The mats of each layer as rows, from the bars as they are placed; lapped pieces of a row are one line. Mould first. */
export function layerRows(placed: readonly PlacedBar[]): LayerRows[] {
  return (['mould', 'top'] as const).flatMap((layer) => {
    const mats = placed.filter((bar) => bar.use === 'mat' && bar.layer === layer && bar.path.length === 2)
    if (mats.length === 0) return []
    return [{ layer, alongX: rowsAlong(mats, 0), alongY: rowsAlong(mats, 1) }]
  })
}

/** Bars are straight along an axis to within this, mm. */
const STRAIGHT = 1e-6

function rowsAlong(bars: readonly PlacedBar[], axis: 0 | 1): MatRowLine[] {
  const rows = new Map<string, PlacedBar[]>()
  const across = axis === 0 ? 1 : 0
  for (const bar of bars) {
    const [a, b] = bar.path
    if (a === undefined || b === undefined || Math.abs(a[across] - b[across]) > STRAIGHT) continue
    const key = `${a[across]} ${bar.height ?? ''} ${bar.diameter}`
    const row = rows.get(key)
    if (row === undefined) rows.set(key, [bar])
    else row.push(bar)
  }
  const lines = [...rows.values()].flatMap((row) => joined(row, axis))
  lines.sort((a, b) => a.at - b.at || a.from - b.from)
  return lines.map((line, row) => ({ ...line, row }))
}

/** Pieces that overlap are lapped: one line. */
function joined(row: readonly PlacedBar[], axis: 0 | 1): MatRowLine[] {
  const across = axis === 0 ? 1 : 0
  const pieces = row
    .map(({ path, mark, diameter, height }) => {
      const ends = path.map((point) => point[axis])
      return {
        from: Math.min(...ends),
        to: Math.max(...ends),
        at: path[0]?.[across] ?? 0,
        mark,
        diameter,
        height,
      }
    })
    .sort((a, b) => a.from - b.from)
  const lines: {
    row: number
    at: number
    from: number
    to: number
    diameter: number
    height: number | null
    marks: string[]
  }[] = []
  for (const { from, to, at, mark, diameter, height } of pieces) {
    const last = lines.at(-1)
    if (last !== undefined && from < last.to) {
      last.to = Math.max(last.to, to)
      if (!last.marks.includes(mark)) last.marks.push(mark)
    } else lines.push({ row: 0, at, from, to, diameter, height, marks: [mark] })
  }
  return lines
}

/** Largest distance between neighbouring rows, mm; null with fewer than two. */
export function widestGap(lines: readonly BarLine[]): number | null {
  const places = [...new Set(lines.map((line) => line.at))].sort((a, b) => a - b)
  let widest: number | null = null
  for (let i = 1; i < places.length; i += 1)
    widest = Math.max(widest ?? 0, (places[i] as number) - (places[i - 1] as number))
  return widest
}
