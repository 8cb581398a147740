import { logFaults } from '@castwright/engine/cure/logger'
import { numberOf } from '../bar-list/number-text.ts'
import { quoted, type RowIssue } from '../bar-list/row-issue.ts'
import { type Cell, cellText, columnIndex, type Table } from '../bar-list/table.ts'
import { instantOf } from '../logger-file/local-time.ts'
import { saysNothing } from '../logger-file/no-reading.ts'
import type { WeatherMap, WindUnit } from './weather-map.ts'

/** Weather at an instant: ms since 1970, °C, %, km/h, W/m², °C; null where the file gives none. */
export interface WeatherFileRow {
  /** Row of the file, from 1. */
  readonly row: number
  readonly at: number
  readonly air: number | null
  readonly humidity: number | null
  readonly wind: number | null
  readonly sun: number | null
  readonly sky: number | null
}

/** Something in the file that a person must look at; nothing is mended. */
export interface WeatherFault {
  readonly row: number
  readonly text: string
}

export interface ReadWeatherFile {
  /** By time. */
  readonly rows: readonly WeatherFileRow[]
  /** Rows that cannot be read, or that no weather is: none of them is among `rows`. */
  readonly errors: readonly RowIssue[]
  /** Gaps, a clock that was moved, single readings that stand apart: shown, and left as they are. */
  readonly faults: readonly WeatherFault[]
}

export type WeatherQuantity = 'air' | 'humidity' | 'wind' | 'sun' | 'sky'

/** What weather can be: lowest, highest, unit. Wind as a station at a yard gives it. */
export const WEATHER_RANGES: Readonly<
  Record<WeatherQuantity, readonly [low: number, high: number, unit: string]>
> = {
  air: [-60, 60, '°C'],
  humidity: [0, 100, '%'],
  wind: [0, 144, 'km/h'],
  sun: [0, 1500, 'W/m²'],
  sky: [-120, 60, '°C'],
}
const QUANTITIES = Object.keys(WEATHER_RANGES) as WeatherQuantity[]

/** `−60 to 60 °C` */
export function rangeText(what: WeatherQuantity): string {
  const [low, high, unit] = WEATHER_RANGES[what]
  return `${low} to ${high} ${unit}`.replace('-', '−')
}

const KMH: Readonly<Record<WindUnit, number>> = { 'km/h': 1, 'm/s': 3.6, mph: 1.609344, kn: 1.852 }
const HOUR = 3_600_000

/**
 * The weather of a file by a column mapping. A cell that says that there is no reading is null; one that says anything else than a
 * number, or a number that no weather is, is an error of its row.
 */
export function weatherOfFile({
  table,
  map,
  zone,
}: {
  readonly table: Table
  readonly map: WeatherMap
  /** IANA name of the yard's time zone. */
  readonly zone: string
}): ReadWeatherFile {
  const errors: RowIssue[] = []
  const rows: WeatherFileRow[] = []
  let after: number | null = null
  for (let index = map.first - 1; index < table.rows.length; index += 1) {
    const cells = table.rows[index] ?? []
    if (cells.every((cell) => cell === null)) continue
    const row = index + 1
    const before = errors.length
    const at = timeOf(cells, row, { map, zone, after }, errors)
    const values = Object.fromEntries(
      QUANTITIES.map((what) => [what, readingOf(cells, row, what, map, errors)]),
    ) as Record<WeatherQuantity, number | null>
    if (at === null || errors.length > before) continue
    after = at
    rows.push({ row, at, ...values })
  }
  return { rows: [...rows].sort((a, b) => a.at - b.at), errors, faults: faultsOf(rows) }
}

/** What is to be looked at in weather however it came. */
export function faultsOf(rows: readonly WeatherFileRow[]): WeatherFault[] {
  const start = rows[0]?.at ?? 0
  const log = {
    channels: ['air'],
    rows: rows.map(({ row, at, air }) => ({ row, hours: (at - start) / HOUR, celsius: [air] })),
  }
  return logFaults(log).map(({ rows: [row], text }) => ({ row, text }))
}

function timeOf(
  cells: readonly Cell[],
  row: number,
  { map, zone, after }: { readonly map: WeatherMap; readonly zone: string; readonly after: number | null },
  errors: RowIssue[],
): number | null {
  const { columns, as } = map.time
  const text = columns
    .map((column) => cellText(cells[columnIndex(column) ?? -1]))
    .join(' ')
    .trim()
  const at = instantOf(text, as, { zone, after })
  if (at === null)
    errors.push({
      row,
      column: columns[0] ?? null,
      name: 'time',
      found: text === '' ? 'nothing' : quoted(text),
      expected: as === 'instant' ? 'a time with its offset from UTC' : `a day and a time, ${as}`,
    })
  return at
}

function readingOf(
  cells: readonly Cell[],
  row: number,
  what: WeatherQuantity,
  map: WeatherMap,
  errors: RowIssue[],
): number | null {
  const column = map[what]
  if (column === null) return null
  const cell = cells[columnIndex(column) ?? -1]
  const text = cellText(cell)
    .replace(/\s*(°?\s*[CF]|%|km\/h|m\/s|mph|kn|W\/m²)$/i, '')
    .trim()
  if (saysNothing(text)) return null
  const given = cell?.kind === 'number' ? cell.number : numberOf(text, map.decimal)
  const [low, high] = WEATHER_RANGES[what]
  const fault = (found: string): null => {
    errors.push({ row, column, name: what, found, expected: rangeText(what) })
    return null
  }
  if (typeof given !== 'number' || !Number.isFinite(given)) return fault(quoted(cellText(cell)))
  const value = inUnit(what, given, map)
  return value >= low && value <= high ? value : fault(cellText(cell))
}

function inUnit(what: WeatherQuantity, value: number, { unit, windUnit }: WeatherMap): number {
  if (what === 'wind') return value * KMH[windUnit]
  return (what === 'air' || what === 'sky') && unit === 'F' ? ((value - 32) * 5) / 9 : value
}
