import type { DocketWords } from '@castwright/engine/pour/loads'
import { InputError, parseInput } from '@castwright/engine/working'
import { valueSchemas } from '@castwright/record'
import { decimalShown, numberOf } from '../bar-list/number-text.ts'
import { quoted, type RowIssue } from '../bar-list/row-issue.ts'
import { type Cell, cellText, columnLetter, type DecimalSign, type Table } from '../bar-list/table.ts'
import { instantOf } from '../logger-file/local-time.ts'
import { columnsOf, type DocketColumn, type FoundColumns } from './columns.ts'

export interface DocketRow {
  /** As the spreadsheet shows it, from 1. */
  readonly row: number
  /** Mark of the panel and its job; null where the list does not say. */
  readonly panel: string | null
  readonly job: string | null
  readonly docket: DocketWords
}

export interface ReadDockets {
  /** Rows that can be read; nothing of a row with an error is among them. */
  readonly rows: readonly DocketRow[]
  /** What is wrong, by row and column. */
  readonly errors: readonly RowIssue[]
  /** Columns that say nothing to us, as headed. */
  readonly unread: readonly string[]
}

export interface ReadDocketsInput {
  readonly table: Table
  /** IANA name of the yard's time zone: times without an offset are the yard's. */
  readonly zone: string
  /** Day of times that come without one, `2026-06-01`; null where such a time is an error. */
  readonly day: string | null
  /** How days are written where the year does not stand first. */
  readonly dates: 'day first' | 'month first'
}

const TIMES = ['batched', 'arrived', 'began', 'discharged'] as const
const WORDS = ['number', 'supplier', 'truck', 'mix'] as const
const NUMBERS = [
  'ordered',
  'volume',
  'used',
  'slumpTarget',
  'slump',
  'temperature',
  'waterAllowed',
  'waterAdded',
  'admixtureAdded',
  'remixTurns',
  'remixMinutes',
] as const
const DAY = 86_400_000

/**
 * A supplier's list of dockets, a load a row: columns by their heads in any order, numbers with point or comma, times with a day, with a column of days, or of the
 * day given. Every row is looked at, and each cell that cannot be read is told. A number that stands twice for one panel is an error of the second row.
 *
 * @throws InputError where no row names the columns.
 */
export function readDockets(input: ReadDocketsInput): ReadDockets {
  const { table } = input
  const found = columnsOf(table.rows)
  if (found === null) {
    throw new InputError(
      [
        {
          path: '',
          found: 'no row of heads with a docket number',
          expected: 'a head such as docket, truck, mix, volume, batched, panel',
        },
      ],
      table.name,
    )
  }
  const errors: RowIssue[] = []
  const rows: DocketRow[] = []
  const seen = new Map<string, number>()
  const decimal = table.decimal ?? decimalShown(numberTexts(table, found))
  for (let index = found.head + 1; index < table.rows.length; index += 1) {
    const cells = table.rows[index] ?? []
    if (cells.every((cell) => cell === null)) continue
    const row = readRow(cells, index + 1, found, { ...input, decimal })
    const key =
      row.read === null ? '' : `${row.read.job ?? ''}/${row.read.panel ?? ''}/${row.read.docket.number}`
    const before = seen.get(key)
    if (row.read !== null && before !== undefined)
      row.issues.push(
        issueAt(
          found,
          'number',
          index + 1,
          quoted(row.read.docket.number),
          `a docket once; row ${before} has it`,
        ),
      )
    errors.push(...row.issues)
    if (row.read === null || row.issues.length > 0) continue
    seen.set(key, index + 1)
    rows.push(row.read)
  }
  return { rows, errors, unread: found.unread }
}

function* numberTexts(table: Table, { head, columns }: FoundColumns): Iterable<string> {
  for (const cells of table.rows.slice(head + 1))
    for (const field of NUMBERS) {
      const at = columns.get(field)
      if (at !== undefined) yield cellText(cells[at])
    }
}

interface RowInput extends ReadDocketsInput {
  readonly decimal: DecimalSign | null
}

function readRow(
  cells: readonly Cell[],
  row: number,
  found: FoundColumns,
  input: RowInput,
): { readonly read: DocketRow | null; readonly issues: RowIssue[] } {
  const issues: RowIssue[] = []
  const text = (column: DocketColumn): string => {
    const at = found.columns.get(column)
    return at === undefined ? '' : cellText(cells[at]).trim()
  }
  const fault = (column: DocketColumn, expected: string): void => {
    const wrote = text(column)
    issues.push(issueAt(found, column, row, wrote === '' ? 'nothing' : quoted(wrote), expected))
  }
  const docket: Record<string, unknown> = {}
  for (const field of WORDS) if (text(field) !== '') docket[field] = text(field)
  if (text('number') === '') fault('number', 'the number of the docket')
  for (const field of NUMBERS) {
    if (text(field) === '') continue
    const at = found.columns.get(field)
    const cell = at === undefined ? null : cells[at]
    const value = cell?.kind === 'number' ? cell.number : numberOf(bare(text(field)), input.decimal)
    if (typeof value === 'number' && Number.isFinite(value)) docket[field] = value
    else fault(field, value === 'two-ways' ? 'a number that can be read in one way' : 'a number')
  }
  Object.assign(docket, timesOf(text, fault, input))
  const before = issues.length
  if (before === 0) {
    try {
      parseInput(valueSchemas.docket, docket)
    } catch (error) {
      if (!(error instanceof InputError)) throw error
      for (const { path, expected } of error.issues) fault(path as DocketColumn, expected)
    }
  }
  if (issues.length > 0) return { read: null, issues }
  const mark = (column: 'panel' | 'job'): string | null => (text(column) === '' ? null : text(column))
  const read = { row, panel: mark('panel'), job: mark('job'), docket: docket as unknown as DocketWords }
  return { read, issues }
}

/** A number without the unit that some lists write behind it. */
function bare(text: string): string {
  return text.replace(/\s*(m³|m3|mm|°\s*C|C|L|l|litres?|min)$/, '')
}

const CLOCK = /^\d{1,2}[:.h]\d{2}([:.]\d{2})?(\s*[ap]\.?m\.?)?$/i

/** Times of a row, UTC. A clock alone is of the row's day; one that lies before the one before it is of the next. */
function timesOf(
  text: (column: DocketColumn) => string,
  fault: (column: DocketColumn, expected: string) => void,
  { zone, day, dates }: RowInput,
): Record<string, string> {
  const times: Record<string, string> = {}
  let last: number | null = null
  let lastField = ''
  for (const field of TIMES) {
    const wrote = text(field)
    if (wrote === '') continue
    const alone = CLOCK.test(wrote)
    const whole = alone ? `${text('day') || (day ?? '')} ${wrote}`.trim() : wrote
    const at = readTime(whole, zone, dates)
    if (at === null) {
      fault(field, alone && text('day') === '' && day === null ? 'a day beside the time' : 'a day and a time')
      continue
    }
    const early: boolean = last !== null && at < last
    const next: number = early && alone && last !== null && last - at > DAY / 2 ? at + DAY : at
    if (last !== null && next < last) {
      fault(field, `a time not before ${lastField}`)
      continue
    }
    last = next
    lastField = field
    times[field] = new Date(next).toISOString()
  }
  return times
}

function readTime(text: string, zone: string, dates: RowInput['dates']): number | null {
  const where = { zone, after: null }
  const plain = text.replace('T', ' ')
  return (
    instantOf(text, 'instant', where) ??
    (/^\d{4}\D/.test(plain) ? instantOf(plain, 'year first', where) : instantOf(plain, dates, where))
  )
}

function issueAt(
  { columns }: FoundColumns,
  column: DocketColumn,
  row: number,
  found: string,
  expected: string,
): RowIssue {
  const at = columns.get(column)
  return { row, column: at === undefined ? null : columnLetter(at), name: column, found, expected }
}
