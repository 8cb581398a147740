import { bounds } from '../../panel/polygon.ts'
import { type Region, ringsOf } from '../../panel/region.ts'
import type { PlacedBar } from '../../steel/steel-plan.ts'

/** Square cells over a panel, row by row from below left. */
export interface Grid {
  readonly left: number
  readonly bottom: number
  /** Side of a cell, mm. */
  readonly cell: number
  readonly columns: number
  readonly rows: number
}

/** Cells are this large unless the panel then has too many, mm. */
const CELL = 10
const MOST_CELLS = 800_000

export function gridOver(region: Region): Grid {
  const box = bounds(ringsOf(region).flat())
  const [width, height] = [box.right - box.left, box.top - box.bottom]
  const cell = Math.max(CELL, Math.sqrt((width * height) / MOST_CELLS))
  // A border of one cell: what lies outside the panel is no concrete, and a strip along its edge has two sides.
  return {
    left: box.left - cell,
    bottom: box.bottom - cell,
    cell,
    columns: Math.ceil(width / cell) + 2,
    rows: Math.ceil(height / cell) + 2,
  }
}

/** 1 where the middle of a cell lies in the concrete. */
export function concreteCells(grid: Grid, region: Region): Uint8Array {
  const cells = new Uint8Array(grid.columns * grid.rows)
  const rings = ringsOf(region)
  for (let row = 0; row < grid.rows; row += 1) {
    const y = grid.bottom + (row + 0.5) * grid.cell
    // Crossings of the row with every edge, left to right: concrete between odd and even ones.
    const xs: number[] = []
    for (const ring of rings)
      for (const [i, [bx, by]] of ring.entries()) {
        const [ax, ay] = ring[(i + ring.length - 1) % ring.length] ?? [bx, by]
        if (ay > y !== by > y) xs.push(ax + ((y - ay) / (by - ay)) * (bx - ax))
      }
    xs.sort((a, b) => a - b)
    for (let i = 0; i + 1 < xs.length; i += 2) {
      const from = Math.ceil(((xs[i] ?? 0) - grid.left) / grid.cell - 0.5)
      const to = Math.floor(((xs[i + 1] ?? 0) - grid.left) / grid.cell - 0.5)
      cells.fill(
        1,
        row * grid.columns + Math.max(0, from),
        row * grid.columns + Math.min(grid.columns - 1, to) + 1,
      )
    }
  }
  return cells
}

/** Takes the mark off every cell within `room` of a bar’s skin, seen from above. */
export function clearBars(cells: Uint8Array, grid: Grid, bars: readonly PlacedBar[], room: number): void {
  const { left, bottom, cell, columns, rows } = grid
  for (const { path, diameter } of bars) {
    const reach = diameter / 2 + room
    for (let i = 0; i + 1 < path.length; i += 1) {
      const [[ax, ay], [bx, by]] = [path[i] ?? [0, 0], path[i + 1] ?? [0, 0]]
      const [dx, dy] = [bx - ax, by - ay]
      const long = dx * dx + dy * dy
      const first = Math.max(0, Math.floor((Math.min(ay, by) - reach - bottom) / cell))
      const last = Math.min(rows - 1, Math.ceil((Math.max(ay, by) + reach - bottom) / cell))
      const begin = Math.max(0, Math.floor((Math.min(ax, bx) - reach - left) / cell))
      const end = Math.min(columns - 1, Math.ceil((Math.max(ax, bx) + reach - left) / cell))
      for (let row = first; row <= last; row += 1) {
        const y = bottom + (row + 0.5) * cell - ay
        for (let column = begin; column <= end; column += 1) {
          const x = left + (column + 0.5) * cell - ax
          const along = long === 0 ? 0 : Math.max(0, Math.min(1, (x * dx + y * dy) / long))
          const [ex, ey] = [x - along * dx, y - along * dy]
          if (ex * ex + ey * ey < reach * reach) cells[row * columns + column] = 0
        }
      }
    }
  }
}

/** Every cell within `by` mm of a marked one, the marked ones too. */
export function grown(cells: Uint8Array, { columns, rows, cell }: Grid, by: number): Uint8Array {
  const far = Math.floor(by / cell + 1e-9)
  const none = far + 1
  // Distance to the nearest marked cell of the same column, in cells, no farther than is asked for.
  const upright = new Uint16Array(cells.length)
  for (let column = 0; column < columns; column += 1) {
    let away = none
    for (let row = 0; row < rows; row += 1) {
      const at = row * columns + column
      away = cells[at] === 1 ? 0 : Math.min(none, away + 1)
      upright[at] = away
    }
    away = none
    for (let row = rows - 1; row >= 0; row -= 1) {
      const at = row * columns + column
      away = cells[at] === 1 ? 0 : Math.min(none, away + 1)
      upright[at] = Math.min(upright[at] ?? none, away)
    }
  }
  const found = new Uint8Array(cells.length)
  const most = (by / cell) * (by / cell) + 1e-9
  for (let row = 0; row < rows; row += 1)
    for (let column = 0; column < columns; column += 1) {
      const to = Math.min(columns - 1, column + far)
      for (let other = Math.max(0, column - far); other <= to; other += 1) {
        const up = upright[row * columns + other] as number
        const across = other - column
        if (up <= far && up * up + across * across <= most) {
          found[row * columns + column] = 1
          break
        }
      }
    }
  return found
}
