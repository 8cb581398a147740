import { numberOf } from '../bar-list/number-text.ts'
import { type Cell, cellText, columnLetter, type Table } from '../bar-list/table.ts'
import { instantOf } from './local-time.ts'
import { LOGGER_MAP_FORMAT, type LoggerMap, type TimeForm } from './logger-map.ts'
import { saysNothing } from './no-reading.ts'

/** Rows that are looked at to see where the readings begin. */
const LOOKED_AT = 200
/** A column is of times, or of temperatures, where so many of its cells read as such. */
const MOSTLY = 0.8
const FORMS: readonly Exclude<TimeForm, 'hours'>[] = ['instant', 'year first', 'day first', 'month first']

/**
 * A mapping that fits a logger's file, to be looked at by a person; null where no column reads as times beside one of temperatures. Where day and month
 * cannot be told apart the day is taken to stand first, and `unsure` says so.
 */
export function guessMap(
  table: Table,
): { readonly map: LoggerMap; readonly unsure: readonly string[] } | null {
  const rows = table.rows.slice(0, LOOKED_AT)
  const wide = Math.max(0, ...rows.map((row) => row.length))
  for (const decimal of table.decimal === null ? (['point', 'comma'] as const) : [table.decimal]) {
    for (let first = 0; first < Math.min(rows.length, 60); first += 1) {
      const body = rows.slice(first).filter((row) => row.some((cell) => cell !== null))
      if (body.length < 2 || !isReading(body[0] ?? [], decimal)) continue
      const time = timeColumns(body, wide)
      if (time === null) continue
      const channels = Array.from({ length: wide }, (_, column) => column)
        .filter(
          (column) =>
            !time.columns.includes(column) &&
            mostly(body, column, (cell) => isNumber(cell, decimal) || saysNothing(cellText(cell))),
        )
        .filter((column) => !isCounter(body, column, decimal))
        .map((column) => ({ column: columnLetter(column), name: nameOf(rows.slice(0, first), column) }))
      if (channels.length === 0) continue
      const unit = /°?\s*F\b/.test(rows.slice(0, first).flat().map(cellText).join(' ')) ? 'F' : 'C'
      return {
        map: {
          format: LOGGER_MAP_FORMAT,
          first: first + 1,
          time: { columns: time.columns.map(columnLetter), as: time.as },
          decimal,
          unit,
          channels: named(channels),
        },
        unsure: [
          ...(time.unsure ? ['Day and month cannot be told apart: the day is taken to stand first.'] : []),
          ...(unit === 'F' ? ['The head names °F.'] : []),
        ],
      }
    }
  }
  return null
}

function isReading(row: readonly Cell[], decimal: LoggerMap['decimal']): boolean {
  return row.some((cell) => isNumber(cell, decimal))
}

function isNumber(cell: Cell | undefined, decimal: LoggerMap['decimal']): boolean {
  if (cell?.kind === 'number') return true
  const text = cellText(cell).replace(/\s*°?\s*[CF]$/i, '')
  return text !== '' && typeof numberOf(text, decimal) === 'number'
}

function mostly(
  rows: readonly (readonly Cell[])[],
  column: number,
  good: (cell: Cell | undefined) => boolean,
): boolean {
  const cells = rows.map((row) => row[column]).filter((cell) => cell !== null && cell !== undefined)
  return cells.length >= rows.length / 2 && cells.filter(good).length >= MOSTLY * cells.length
}

/** A running number 1, 2, 3 … is no temperature. */
function isCounter(
  rows: readonly (readonly Cell[])[],
  column: number,
  decimal: LoggerMap['decimal'],
): boolean {
  const values = rows.map((row) => numberOf(cellText(row[column]), decimal))
  const started = values[0] === 0 || values[0] === 1
  return (
    values.length > (started ? 2 : 4) &&
    values.every((value, at) => at === 0 || value === Number(values[at - 1]) + 1)
  )
}

interface TimeColumns {
  readonly columns: readonly number[]
  readonly as: TimeForm
  readonly unsure: boolean
}

function timeColumns(rows: readonly (readonly Cell[])[], wide: number): TimeColumns | null {
  const places = Array.from({ length: wide }, (_, column) => [column])
  for (const columns of [...places, ...places.slice(0, -1).map(([column = 0]) => [column, column + 1])]) {
    const texts = rows.map((row) =>
      columns
        .map((column) => cellText(row[column]))
        .join(' ')
        .trim(),
    )
    const fits = FORMS.filter((as) => rises(texts, as))
    const [as] = fits
    if (as !== undefined)
      return { columns, as, unsure: fits.includes('day first') && fits.includes('month first') }
  }
  // Hours from mixing: numbers that rise from near 0, in the first column that has such.
  for (const [column = 0] of places) {
    const values = rows.map((row) => Number(cellText(row[column]).replace(',', '.')))
    if (
      values.every((value, at) => Number.isFinite(value) && (at === 0 || value > Number(values[at - 1]))) &&
      Number(values[0]) < 24
    )
      return { columns: [column], as: 'hours', unsure: false }
  }
  return null
}

function rises(texts: readonly string[], as: Exclude<TimeForm, 'hours'>): boolean {
  const read = texts.map((text) => instantOf(text, as, { zone: 'UTC', after: null }))
  const good = read.filter((each): each is number => each !== null)
  if (good.length < MOSTLY * texts.length) return false
  const up = good.slice(1).filter((value, at) => value > (good[at] ?? Infinity)).length
  return up >= MOSTLY * (good.length - 1)
}

function nameOf(head: readonly (readonly Cell[])[], column: number): string {
  const words = head.map((row) => cellText(row[column])).filter((text) => text !== '')
  const last = words.at(-1) ?? ''
  return (
    last
      .replace(/[([]?\s*°?\s*[CF]\s*[)\]]?\s*$/, '')
      .trim()
      .slice(0, 80) || `channel ${columnLetter(column)}`
  )
}

/** Each channel has a name of its own. */
function named(
  channels: readonly { readonly column: string; readonly name: string }[],
): LoggerMap['channels'] {
  const seen = new Map<string, number>()
  return channels.slice(0, 32).map(({ column, name }) => {
    const count = (seen.get(name) ?? 0) + 1
    seen.set(name, count)
    return { column, name: count === 1 ? name : `${name} ${count}` }
  })
}
