/** What stands in one cell of a list; null where it is empty. */
export type Cell =
  | null
  | { readonly kind: 'number'; readonly number: number; readonly formula?: true }
  /** `date`: a cell that the spreadsheet keeps as a date; `fault`: `#REF!` and the like; `text` is what a person sees. */
  | {
      readonly kind: 'text' | 'date' | 'truth' | 'fault'
      readonly text: string
      readonly formula?: true
    }

/** Cells merged into one: rows and columns from 0, both ends within. */
export interface MergedCells {
  readonly top: number
  readonly left: number
  readonly bottom: number
  readonly right: number
}

/** The cells of a list as they stand in the file: `rows[0]` is row 1 of the spreadsheet. */
export interface Table {
  /** Name of the file. */
  readonly name: string
  /** Name of the sheet that was read, and of all; none in a text file. */
  readonly sheet: string | null
  readonly sheets: readonly string[]
  readonly rows: readonly (readonly Cell[])[]
  readonly merged: readonly MergedCells[]
  /** Decimal sign that the form of the file leaves, where it leaves one. */
  readonly decimal: DecimalSign | null
}

export type DecimalSign = 'point' | 'comma'

/** Rows that a list may have: more is no bar list. */
export const MOST_ROWS = 50_000
/** Columns that are looked at. */
export const MOST_COLUMNS = 200

/** Name of a column as a spreadsheet shows it, from its index: 0 is `A`, 26 is `AA`. */
export function columnLetter(index: number): string {
  const last = String.fromCharCode(65 + (index % 26))
  return index < 26 ? last : columnLetter(Math.floor(index / 26) - 1) + last
}

/** Index of a column from its name, `A` is 0; null where that is no column. */
export function columnIndex(letters: string): number | null {
  if (!/^[A-Za-z]{1,3}$/.test(letters)) return null
  let index = 0
  for (const letter of letters.toUpperCase()) index = index * 26 + letter.charCodeAt(0) - 64
  return index - 1
}

/** What a person sees in a cell. */
export function cellText(cell: Cell | undefined): string {
  if (cell === null || cell === undefined) return ''
  return cell.kind === 'number' ? String(cell.number) : cell.text
}
