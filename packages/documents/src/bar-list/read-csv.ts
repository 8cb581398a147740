import { InputError } from '@castwright/engine/working'
import { type BarListMap, EMPTY_MAP } from './column-map.ts'
import { headerScore } from './columns.ts'
import { listError, type RowIssue } from './row-issue.ts'
import { type Cell, MOST_COLUMNS, MOST_ROWS, type Table } from './table.ts'

const DELIMITERS = [',', ';', '\t'] as const
/** Characters that are enough to see how a list is written. */
const SAMPLE = 20_000

/**
 * Cells of a text list: commas, semicolons or tabs between, quotes by RFC 4180. A record is a row of the spreadsheet, whatever lines it
 * spans.
 *
 * @throws InputError where it is no text, a quote is never closed, or it is far too large.
 */
export async function readCsv({
  bytes,
  name,
  map = EMPTY_MAP,
}: {
  readonly bytes: Uint8Array
  readonly name: string
  readonly map?: BarListMap | undefined
}): Promise<Table> {
  const { default: Papa } = await import('papaparse')
  const whole = textOf(bytes, name)
  // Spreadsheets take this first line as a hint and do not show it as a row.
  const hint = /^sep=(.)\r?\n/i.exec(whole)
  const text = hint === null ? whole : whole.slice(hint[0].length)
  const parse = (part: string, delimiter: string, preview: number): Papa.ParseResult<string[]> =>
    Papa.parse<string[]>(part, { delimiter, preview, skipEmptyLines: false })
  const delimiter =
    hint?.[1] ?? best(DELIMITERS, (sign) => width(parse(text.slice(0, SAMPLE), sign, 40).data, map))
  const { data, errors } = parse(text, delimiter, MOST_ROWS + 1)
  const issues = errors.flatMap(({ type, row }): RowIssue[] =>
    type === 'Quotes'
      ? [
          {
            row: row === undefined ? null : row + 1,
            column: null,
            name: null,
            found: 'a quote that does not end its cell, or is never closed',
            expected: 'quotes around whole cells, doubled within',
          },
        ]
      : [],
  )
  if (issues.length > 0) throw listError(issues, name)
  if (data.length > MOST_ROWS) throw tooMany(name)
  return {
    name,
    sheet: null,
    sheets: [],
    rows: data.map((row) => row.slice(0, MOST_COLUMNS).map(csvCell)),
    merged: [],
    decimal: delimiter === ',' ? 'point' : null,
  }
}

export function tooMany(name: string): InputError {
  return new InputError(
    [{ path: '', found: `more than ${MOST_ROWS} rows`, expected: `at most ${MOST_ROWS} rows` }],
    name,
  )
}

/** Undoes the mark that an export puts before text which a spreadsheet would run: `'=A1` is `=A1`. */
function csvCell(text: string): Cell {
  const plain = /^'+[=+\-@＝＋－＠\t\r]/.test(text) ? text.slice(1) : text
  return plain.trim() === '' ? null : { kind: 'text', text: plain.trim() }
}

/** A row of names tells best what separates; without one, the sign that gives most columns. */
function width(rows: readonly string[][], map: BarListMap): number {
  const score = Math.max(0, ...rows.map((row) => headerScore(row.map(csvCell), map)))
  const cells = rows.reduce((sum, row) => sum + row.length, 0) / Math.max(1, rows.length)
  return score * 1000 + cells
}

function best<T>(choices: readonly [T, ...T[]], worth: (choice: T) => number): T {
  let [top] = choices
  let most = Number.NEGATIVE_INFINITY
  for (const choice of choices) {
    const value = worth(choice)
    if (value > most) [top, most] = [choice, value]
  }
  return top
}

function textOf(bytes: Uint8Array, name: string): string {
  const utf16 = (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff)
  const encoding = !utf16 ? 'utf-8' : bytes[0] === 0xff ? 'utf-16le' : 'utf-16be'
  try {
    const text = new TextDecoder(encoding, { fatal: true }).decode(bytes)
    if (!text.includes('\u0000')) return text
  } catch {
    // said below, with what is expected
  }
  throw new InputError(
    [{ path: '', found: 'bytes that are no text', expected: 'text in UTF-8 (or UTF-16), or an XLSX file' }],
    name,
  )
}
