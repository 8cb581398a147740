import { InputError, type InputIssue } from '@castwright/engine/working'

/** One thing wrong, or to be looked at, in a list. */
export interface RowIssue {
  /** Row as the spreadsheet shows it, from 1; null where it is not in one row. */
  readonly row: number | null
  /** Column as the spreadsheet shows it: `C`; null where it is not in one column. */
  readonly column: string | null
  /** Name of the column as written in the list, or of the field where the list has no such column. */
  readonly name: string | null
  readonly found: string
  readonly expected: string
}

/** Place of an issue: `row 5, column C (Diameter)`. */
export function issuePlace({ row, column, name }: RowIssue): string {
  const named = name === null ? '' : column === null ? name : ` (${name})`
  const where = column === null ? named : `column ${column}${named}`
  return [row === null ? '' : `row ${row}`, where].filter((part) => part !== '').join(', ')
}

/** The issues of a list as an error of input. */
export function listError(issues: readonly RowIssue[], file: string): InputError {
  return new InputError(
    issues.map((issue): InputIssue => {
      const { found, expected } = issue
      return { path: issuePlace(issue), found, expected }
    }),
    file,
  )
}

/** What came, in quotes and short enough for one line. */
export function quoted(text: string): string {
  return JSON.stringify(text.length > 60 ? `${text.slice(0, 57)}…` : text)
}
