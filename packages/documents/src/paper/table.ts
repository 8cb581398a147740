import { INKS } from '../picture/role-look.ts'
import type { Paper } from './paper.ts'

export interface Column {
  readonly head: string
  /** Share of the width. */
  readonly share: number
  readonly align?: 'left' | 'right'
}

/** Clear space between the columns of a table, points. */
const CELL_GAP = 10

/** A table being written: widths of its columns, points, and size of its text. */
interface Table {
  readonly struct: PDFKit.PDFStructureElement
  readonly columns: readonly Column[]
  readonly widths: readonly number[]
  readonly size: number
}

/** Writes a table where the sheet stands. The head is repeated on each page; rows are never split. */
export function drawTable(
  paper: Paper,
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  size: number,
): void {
  const shares = columns.reduce((sum, column) => sum + column.share, 0)
  const widths = columns.map((column) => (column.share / shares) * paper.width)
  const table: Table = { struct: paper.pdf.struct('Table'), columns, widths, size }
  paper.root.add(table.struct)
  const heads = columns.map((column) => column.head)
  const first = rows[0] === undefined ? 0 : rowHeight(paper, table, rows[0], false)
  paper.need(rowHeight(paper, table, heads, true) + first)
  drawRow(paper, table, heads, true)
  for (const row of rows) {
    const height = rowHeight(paper, table, row, false)
    if (height > paper.room) {
      paper.need(height)
      drawRow(paper, table, heads, true)
    }
    drawRow(paper, table, row, false)
  }
  table.struct.end()
  paper.gap(8)
}

function drawRow(paper: Paper, table: Table, cells: readonly string[], head: boolean): void {
  const { columns, widths, size } = table
  const top = paper.y
  const height = rowHeight(paper, table, cells, head)
  const row = paper.pdf.struct('TR')
  table.struct.add(row)
  let x = paper.left
  cells.forEach((cell, index) => {
    const width = widths[index] ?? 0
    const lines = paper.letters.lines(cell, size, head, width - CELL_GAP)
    const left = x
    const element = paper.pdf.struct(head ? 'TH' : 'TD', {}, () => {
      paper.y = top + 3
      for (const line of lines) {
        const shift =
          columns[index]?.align === 'right' ? width - CELL_GAP - paper.letters.widthOf(line, size, head) : 0
        paper.letters.draw(line, left + shift, paper.y, size, head, INKS.ink)
        paper.y += size * 1.3
      }
    })
    row.add(element)
    x += width
  })
  row.end()
  paper.artifact(() => paper.rule(top + height, head ? 1 : 0.5))
  paper.y = top + height
}

function rowHeight(paper: Paper, { widths, size }: Table, cells: readonly string[], head: boolean): number {
  const most = Math.max(
    1,
    ...cells.map(
      (cell, index) => paper.letters.lines(cell, size, head, (widths[index] ?? 0) - CELL_GAP).length,
    ),
  )
  return most * size * 1.3 + 6
}
