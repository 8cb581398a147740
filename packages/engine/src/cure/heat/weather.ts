import { InputError, type InputIssue } from '../../working/issue.ts'
import { COLDEST_READING, HOTTEST_READING } from '../readings.ts'
import type { SeriesPoint } from './series.ts'

/** One row of weather: hours from mixing, °C, m/s, °C, W/m². */
export interface WeatherRow {
  readonly hours: number
  readonly air: number
  readonly wind?: number | undefined
  readonly sky?: number | undefined
  readonly sun?: number | undefined
}

/** A stretch between two readings of one column that is longer than allowed: nothing is put in. */
export interface WeatherGap {
  readonly column: WeatherColumn
  readonly from: number
  readonly to: number
}

export type WeatherColumn = 'air' | 'wind' | 'sky' | 'sun'

/** Weather in time, straight between readings. A column that no row gives is empty. */
export interface Weather {
  readonly air: readonly SeriesPoint[]
  readonly wind: readonly SeriesPoint[]
  readonly sky: readonly SeriesPoint[]
  readonly sun: readonly SeriesPoint[]
  readonly gaps: readonly WeatherGap[]
}

const COLUMNS: readonly WeatherColumn[] = ['air', 'wind', 'sky', 'sun']
const RANGES: Readonly<Record<WeatherColumn, readonly [low: number, high: number, unit: string]>> = {
  air: [COLDEST_READING, HOTTEST_READING, '°C'],
  wind: [0, 40, 'm/s'],
  sky: [-120, 60, '°C'],
  sun: [0, 1500, 'W/m²'],
}
/** Longest stretch between two readings that is still taken as straight, h: common practice, no source. */
export const LONGEST_STRETCH = 3
const MOST_ISSUES = 20
const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i
/** A moment with its zone: without one nobody knows which night it was. */
const MOMENT = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d+)?)?(Z|[+-]\d{2}:?\d{2})$/

/**
 * Weather from typed rows in order of time. Stretches longer than `longest` hours are listed as gaps, never filled.
 *
 * @throws InputError naming row and column: rows counted from 1, as given.
 */
export function weatherOf(rows: readonly WeatherRow[], longest = LONGEST_STRETCH, from = ''): Weather {
  return weatherFrom(
    rows.map((row, index) => ({ row: index + 1, ...row })),
    [],
    longest,
    from,
  )
}

/**
 * Weather from CSV: a header of `hours` (from mixing) or `time` (ISO 8601 with zone), `air`, and as wanted `wind`, `sky`, `sun`, in any
 * order; an empty cell is no reading. A byte-order mark, CRLF, quotes and empty rows are fine.
 *
 * @param mixed when water met cement, ISO 8601 with zone; needed where the rows have `time`
 * @throws InputError naming row and column: rows counted from 1, the header being the first.
 */
export function readWeather(
  text: string,
  {
    mixed,
    longest = LONGEST_STRETCH,
    from = '',
  }: { readonly mixed?: string; readonly longest?: number; readonly from?: string } = {},
): Weather {
  const lines = text
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\n|\r/)
    .map((line, index) => ({ row: index + 1, cells: cellsOf(line) }))
    .filter(({ cells }) => cells.some((cell) => cell !== ''))
  const [header, ...body] = lines
  const names = (header?.cells ?? []).map((name) => name.toLowerCase())
  const start = startOf(names, mixed, from)
  const issues: InputIssue[] = []
  const rows = body.map(({ row, cells }) => readRow(names, cells, row, start, issues))
  return weatherFrom(rows, issues, longest, from)
}

/** Milliseconds of mixing where the rows have moments, null where they have hours. @throws InputError of the header. */
function startOf(names: readonly string[], mixed: string | undefined, from: string): number | null {
  const strange = names.filter((name) => ![...COLUMNS, 'hours', 'time'].includes(name))
  const twice = names.filter((name, index) => names.indexOf(name) < index)
  const clocks = names.filter((name) => name === 'hours' || name === 'time')
  if (strange.length > 0 || twice.length > 0 || clocks.length !== 1 || !names.includes('air')) {
    const found = names.length === 0 ? 'nothing' : JSON.stringify(names.join(',').slice(0, 60))
    const expected = 'a header of hours or time, air, and of wind, sky, sun those that are known'
    throw new InputError([{ path: 'row 1', found, expected }], from)
  }
  if (clocks[0] === 'hours') return null
  const start = mixed !== undefined && MOMENT.test(mixed) ? Date.parse(mixed) : Number.NaN
  if (Number.isNaN(start))
    throw new InputError(
      [
        {
          path: 'mixed',
          found: mixed ?? 'nothing',
          expected: 'when it was mixed, such as 2026-03-09T14:30+13:00',
        },
      ],
      from,
    )
  return start
}

interface NumberedRow extends WeatherRow {
  readonly row: number
}

function readRow(
  names: readonly string[],
  cells: readonly string[],
  row: number,
  start: number | null,
  issues: InputIssue[],
): NumberedRow {
  if (cells.length !== names.length)
    issues.push({
      path: `row ${row}`,
      found: `${cells.length} cells`,
      expected: `${names.length} cells, as in the header`,
    })
  const cell = (name: string): string => cells[names.indexOf(name)] ?? ''
  const value = (name: WeatherColumn): number | undefined => {
    const text = cell(name)
    return text === '' ? undefined : NUMBER.test(text) ? Number(text) : Number.NaN
  }
  const [hoursText, timeText] = [cell('hours'), cell('time')]
  const moment = MOMENT.test(timeText) ? Date.parse(timeText) : Number.NaN
  const hours =
    start === null ? (NUMBER.test(hoursText) ? Number(hoursText) : Number.NaN) : (moment - start) / 3_600_000
  if (start !== null && Number.isNaN(moment))
    issues.push({
      path: `row ${row}: time`,
      found: timeText || 'nothing',
      expected: 'a moment such as 2026-03-09T14:30+13:00',
    })
  // An empty cell of air is no reading there; the stretch over it is then judged.
  return {
    row,
    hours,
    air: value('air') as number,
    wind: value('wind'),
    sky: value('sky'),
    sun: value('sun'),
  }
}

function weatherFrom(
  rows: readonly NumberedRow[],
  issues: InputIssue[],
  longest: number,
  from: string,
): Weather {
  const points: Record<WeatherColumn, SeriesPoint[]> = { air: [], wind: [], sky: [], sun: [] }
  let before = Number.NEGATIVE_INFINITY
  for (const { row, hours, ...values } of rows) {
    if (!Number.isFinite(hours)) {
      if (!issues.some(({ path }) => path === `row ${row}: time`))
        issues.push({
          path: `row ${row}: hours`,
          found: String(hours),
          expected: 'hours from mixing, a number',
        })
      continue
    }
    if (!(hours > before))
      issues.push({
        path: `row ${row}: hours`,
        found: `${hours} h`,
        expected: `a time after ${before} h of the row before`,
      })
    before = Math.max(before, hours)
    for (const column of COLUMNS) {
      const value = values[column]
      if (value === undefined) continue
      const [low, high, unit] = RANGES[column]
      if (value >= low && value <= high) points[column].push([hours, value])
      else
        issues.push({
          path: `row ${row}: ${column}`,
          found: String(value),
          expected: `${low} to ${high} ${unit}`,
        })
    }
  }
  if (issues.length === 0 && points.air.length === 0)
    issues.push({ path: 'rows', found: 'no reading of the air', expected: 'at least one' })
  if (issues.length > 0) throw new InputError(issues.slice(0, MOST_ISSUES), from)
  const gaps = COLUMNS.flatMap((column) =>
    points[column].slice(1).flatMap(([to], index): WeatherGap[] => {
      const start = points[column][index]?.[0] ?? to
      return to - start > longest ? [{ column, from: start, to }] : []
    }),
  )
  return { ...points, gaps }
}

/** Why a column does not carry a run from 0 to an hour; empty where it does. Each stretch without readings is named. */
export function weatherGaps({ gaps, ...points }: Weather, column: WeatherColumn, hours: number): string[] {
  const [first, last] = [points[column][0]?.[0], points[column].at(-1)?.[0]]
  if (first === undefined || last === undefined) return [`weather.${column}: no readings`]
  return [
    ...(first > 0 ? [`weather.${column}: nothing before ${first} h from mixing`] : []),
    ...gaps
      .filter((gap) => gap.column === column && gap.to > 0 && gap.from < hours)
      .map((gap) => `weather.${column}: nothing from ${gap.from} to ${gap.to} h`),
    ...(last < hours ? [`weather.${column}: nothing after ${last} h, the run goes on to ${hours} h`] : []),
  ]
}

function cellsOf(line: string): string[] {
  return line.split(',').map((cell) => cell.trim().replace(/^"(.*)"$/, '$1'))
}
