import type { LogRow, RawLog } from '@castwright/engine/cure/logger'
import { numberOf } from '../bar-list/number-text.ts'
import type { RowIssue } from '../bar-list/row-issue.ts'
import { quoted } from '../bar-list/row-issue.ts'
import { type Cell, cellText, columnIndex, type Table } from '../bar-list/table.ts'
import { instantOf } from './local-time.ts'
import type { LoggerMap } from './logger-map.ts'
import { saysNothing } from './no-reading.ts'

const HOUR = 3_600_000

export interface LogInput {
  readonly table: Table
  readonly map: LoggerMap
  /** Water met cement, UTC; null where the file gives hours from mixing itself. */
  readonly mixed: string | null
  /** IANA name of the yard's time zone. */
  readonly zone: string
}

export interface ReadLog {
  readonly log: RawLog
  /** Rows that cannot be read, each with what is wrong; the log holds the others. */
  readonly errors: readonly RowIssue[]
}

/**
 * The readings of a logger's file by a column mapping, hours from mixing, °C. Every row is looked at. A cell that says that there is no reading is null;
 * one that says anything else than a number is an error of its row.
 */
export function logOf({ table, map, mixed, zone }: LogInput): ReadLog {
  const errors: RowIssue[] = []
  const rows: LogRow[] = []
  const columns = map.channels.map(({ column }) => columnIndex(column) ?? -1)
  let after: number | null = null
  for (let index = map.first - 1; index < table.rows.length; index += 1) {
    const cells = table.rows[index] ?? []
    if (cells.every((cell) => cell === null)) continue
    const row = index + 1
    const time = timeOf(cells, row, { map, mixed, zone, after }, errors)
    const celsius = columns.map((column, at) =>
      degrees(cells[column], { row, column: map.channels[at]?.column ?? '' }, map, errors),
    )
    if (time === null || celsius.includes(undefined)) continue
    if (time.instant !== null) after = time.instant
    rows.push({ row, hours: time.hours, celsius: celsius as (number | null)[] })
  }
  return { log: { channels: map.channels.map(({ name }) => name), rows }, errors }
}

interface TimeOptions extends Pick<LogInput, 'map' | 'mixed' | 'zone'> {
  readonly after: number | null
}

function timeOf(
  cells: readonly Cell[],
  row: number,
  { map, mixed, zone, after }: TimeOptions,
  errors: RowIssue[],
): { readonly hours: number; readonly instant: number | null } | null {
  const { columns, as } = map.time
  const text = columns
    .map((column) => cellText(cells[columnIndex(column) ?? -1]))
    .join(' ')
    .trim()
  const fault = (expected: string): null => {
    errors.push({
      row,
      column: columns[0] ?? null,
      name: 'time',
      found: text === '' ? 'nothing' : quoted(text),
      expected,
    })
    return null
  }
  if (as === 'hours') {
    const hours = numberOf(text, map.decimal)
    return typeof hours === 'number' && Number.isFinite(hours)
      ? { hours, instant: null }
      : fault('hours from mixing')
  }
  const instant = instantOf(text, as, { zone, after })
  if (instant === null)
    return fault(as === 'instant' ? 'a time with its offset from UTC' : `a day and a time, ${as}`)
  const start = mixed === null ? Number.NaN : Date.parse(mixed)
  return Number.isNaN(start)
    ? fault('the time of mixing, which is not known')
    : { hours: (instant - start) / HOUR, instant }
}

/** °C of a cell; null: no reading; undefined: an error, which was told. */
function degrees(
  cell: Cell | undefined,
  { row, column }: { readonly row: number; readonly column: string },
  { decimal, unit }: LoggerMap,
  errors: RowIssue[],
): number | null | undefined {
  const text = cellText(cell)
    .replace(/\s*°?\s*[CF]$/i, '')
    .trim()
  if (saysNothing(text)) return null
  const value = cell?.kind === 'number' ? cell.number : numberOf(text, decimal)
  if (typeof value !== 'number' || !Number.isFinite(value)) {
    errors.push({
      row,
      column,
      name: 'temperature',
      found: quoted(cellText(cell)),
      expected: `a temperature, decimal ${decimal}`,
    })
    return undefined
  }
  return unit === 'F' ? ((value - 32) * 5) / 9 : value
}
