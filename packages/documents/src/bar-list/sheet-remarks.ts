import type { ColumnAt, Columns } from './columns.ts'
import { quoted, type RowIssue } from './row-issue.ts'
import { type Cell, cellText, columnLetter, type Table } from './table.ts'

export function passedOver(row: number, cells: readonly Cell[]): RowIssue {
  const index = cells.findIndex((cell) => cell !== null)
  return {
    row,
    column: columnLetter(index),
    name: null,
    found: quoted(cellText(cells[index])),
    expected: 'a bar: the row is passed over',
  }
}

/** A row right below the names that holds units only. */
export function unitRow(
  cells: readonly Cell[],
  read: readonly ColumnAt[],
  row: number,
  header: number,
): boolean {
  const texts = read.map(({ index }) => cellText(cells[index]).trim()).filter((text) => text !== '')
  return (
    header > 0 &&
    row === header + 1 &&
    texts.every((text) => /^[([]?(mm|kg|°|deg|degrees|pcs|-|–)[)\]]?$/i.test(text))
  )
}

/** Issues of merged cells by row from 1: only the first of them holds the value. */
export function mergedRows(
  { merged }: Table,
  { header }: Columns,
  read: readonly ColumnAt[],
): ReadonlyMap<number, readonly RowIssue[]> {
  const issues = new Map<number, RowIssue[]>()
  for (const { top, left, bottom, right } of merged) {
    const column = read.find(({ index }) => index >= left && index <= right)
    if (column === undefined) continue
    const range = `${columnLetter(left)}${top + 1}:${columnLetter(right)}${bottom + 1}`
    for (let row = Math.max(top + 1, header + 1); row <= Math.min(bottom + 1, top + 10_000); row += 1) {
      const { letter, name } = column
      const issue = { row, column: letter, name, found: `merged cells ${range}`, expected: 'one cell a row' }
      issues.set(row, [...(issues.get(row) ?? []), issue])
    }
  }
  return issues
}

/** One remark a column with formulas: their last stored values are read. */
export function formulaRemarks({ rows }: Table, { header }: Columns, read: readonly ColumnAt[]): RowIssue[] {
  return read.flatMap(({ index, letter, name }) => {
    const places = rows.flatMap((row, r) => (r >= header && row[index]?.formula ? [r + 1] : []))
    const [first] = places
    if (first === undefined) return []
    return [
      {
        row: first,
        column: letter,
        name,
        found: places.length === 1 ? 'a formula' : `formulas in ${places.length} rows, this the first`,
        expected: 'values: the value stored last was read',
      },
    ]
  })
}
