import type { Point, Ring } from '../../panel/point.ts'
import { placeInRing } from '../../panel/polygon.ts'
import { type Region, unite } from '../../panel/region.ts'
import type { PlacedBar } from '../../steel/steel-plan.ts'
import { commonPractice, type Source } from '../../working/source.ts'
import { clearBars, concreteCells, type Grid, gridOver, grown } from './steel-grid.ts'

export interface CloseSteelInput {
  readonly region: Region
  readonly placed: readonly PlacedBar[]
  /** Diameter of the vibrator's head, mm. */
  readonly head: number
  /** Strips narrower than this are left out, mm: they are reached from beside. */
  readonly narrow: number
}

/** Clear gap that a head needs between bars, in head diameters. */
export const CLEAR_HEADS = 2

export const CLOSE_STEEL: Source = commonPractice(
  'a head works freely where the bars leave it twice its diameter; less is close steel',
)

/** Zones are squares of this side put together, mm. */
const SQUARE = 100

/**
 * Where bars stand so close, seen from above, that the head finds no gap: concrete from which the middle of the nearest gap of two head
 * diameters lies more than two head diameters away. Found on cells of 10 mm, given as rings of whole squares of 100 mm that hold it, so a zone is
 * rather too large than too small. Strips narrower than `narrow` (trimmers beside an opening, the line of bars at a face) are left out.
 *
 * Left out: bars that are not laid out, inserts and cast-ins other than their bars. Empty where nothing stands close or no bar is laid out.
 */
export function closeSteel({ region, placed, head, narrow }: CloseSteelInput): Ring[] {
  if (placed.length === 0) return []
  const gap = CLEAR_HEADS * head
  const grid = gridOver(region)
  const concrete = concreteCells(grid, region)
  const free = concrete.slice()
  clearBars(free, grid, placed, gap / 2)
  const reached = grown(free, grid, gap)
  const close = concrete.map((inside, at) => (inside === 1 && reached[at] === 0 ? 1 : 0))
  if (!close.includes(1)) return []
  return ringsAround(grid, wide(close, grid, narrow))
}

/** What stays of marked cells where strips narrower than `narrow` are taken out. */
function wide(cells: Uint8Array, grid: Grid, narrow: number): Uint8Array {
  const around = grown(
    cells.map((one) => 1 - one),
    grid,
    narrow / 2 - grid.cell / 2,
  )
  const kept = grown(
    around.map((one) => 1 - one),
    grid,
    narrow / 2,
  )
  return cells.map((one, at) => (one === 1 && kept[at] === 1 ? 1 : 0))
}

/** Rings of whole squares that hold every marked cell; one with a hole is given in rectangles. */
function ringsAround(grid: Grid, cells: Uint8Array): Ring[] {
  const by = Math.max(1, Math.round(SQUARE / grid.cell))
  const [columns, rows] = [Math.ceil(grid.columns / by), Math.ceil(grid.rows / by)]
  const squares = new Uint8Array(columns * rows)
  for (const [at, one] of cells.entries())
    if (one === 1) {
      const [row, column] = [Math.floor(at / grid.columns), at % grid.columns]
      squares[Math.floor(row / by) * columns + Math.floor(column / by)] = 1
    }
  const side = by * grid.cell
  const rectangles = rectanglesOf(squares, columns).map(([column, row, wide, high]): Ring => {
    const [x, y] = [grid.left + column * side, grid.bottom + row * side]
    return box(x, y, x + wide * side, y + high * side)
  })
  return unite(rectangles).flatMap((piece) =>
    piece.holes.length === 0 ? [piece.outline] : rectangles.filter((ring) => holds(piece.outline, ring)),
  )
}

/** Marked squares in few rectangles: as long as can be along the row, then as high. */
function rectanglesOf(
  squares: Uint8Array,
  columns: number,
): [column: number, row: number, wide: number, high: number][] {
  const left = squares.slice()
  const found: [number, number, number, number][] = []
  for (let at = left.indexOf(1); at >= 0; at = left.indexOf(1, at)) {
    const [row, column] = [Math.floor(at / columns), at % columns]
    let wide = 1
    while (column + wide < columns && left[at + wide] === 1) wide += 1
    let high = 1
    while (isFull(left, at + high * columns, wide)) high += 1
    for (let up = 0; up < high; up += 1) left.fill(0, at + up * columns, at + up * columns + wide)
    found.push([column, row, wide, high])
  }
  return found
}

function isFull(squares: Uint8Array, from: number, count: number): boolean {
  for (let at = from; at < from + count; at += 1) if (squares[at] !== 1) return false
  return true
}

function box(left: number, bottom: number, right: number, top: number): Ring {
  const corners: Point[] = [
    [left, bottom],
    [right, bottom],
    [right, top],
    [left, top],
  ]
  return corners
}

function holds(outline: Ring, ring: Ring): boolean {
  const [[left, bottom], , [right, top]] = ring as unknown as [Point, Point, Point]
  return placeInRing([(left + right) / 2, (bottom + top) / 2], outline) !== 'outside'
}
