import {
  type BarList,
  type Columns,
  cellText,
  type RowIssue,
  type Table,
} from '@castwright/documents/bar-list'

/** A row of the list as the preview shows it. */
export interface ListRow {
  readonly row: number
  readonly good: boolean
  /** Text of the columns that are shown, as it stands in the file. */
  readonly cells: readonly string[]
  readonly errors: readonly RowIssue[]
  readonly warnings: readonly RowIssue[]
}

export interface ListRows {
  /** The columns that are shown, in the order of the cells. */
  readonly columns: Columns['all']
  readonly rows: readonly ListRow[]
  /** Of no one row: a missing column, several panels, a row that was passed over. */
  readonly whole: { readonly errors: readonly RowIssue[]; readonly warnings: readonly RowIssue[] }
}

/** Rows of the list beside what was found at each. */
export function listRows(table: Table, { columns, rows, errors, warnings }: BarList): ListRows {
  const shown = shownColumns(columns)
  const errorsAt = byRow(errors)
  const warningsAt = byRow(warnings)
  const known = new Set(rows.map(({ row }) => row))
  return {
    columns: shown,
    rows: rows.map(({ row, bar }) => ({
      row,
      good: bar !== null,
      cells: shown.map(({ index }) => cellText(table.rows[row - 1]?.[index])),
      errors: errorsAt.get(row) ?? [],
      warnings: warningsAt.get(row) ?? [],
    })),
    whole: {
      errors: errors.filter(({ row }) => row === null || !known.has(row)),
      warnings: warnings.filter(({ row }) => row === null || !known.has(row)),
    },
  }
}

function shownColumns({ of, legs, allLegs }: Columns): Columns['all'] {
  const { mark, diameter, grade, role, count, cutLength, turns, inside } = of
  return [mark, diameter, grade, role, count, cutLength, ...legs, allLegs ?? undefined, turns, inside].filter(
    (column) => column !== undefined,
  )
}

function byRow(issues: readonly RowIssue[]): ReadonlyMap<number, RowIssue[]> {
  const at = new Map<number, RowIssue[]>()
  for (const issue of issues) {
    if (issue.row === null) continue
    const before = at.get(issue.row)
    if (before === undefined) at.set(issue.row, [issue])
    else before.push(issue)
  }
  return at
}
