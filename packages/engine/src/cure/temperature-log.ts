import { InputError, type InputIssue } from '../working/issue.ts'
import { COLDEST_READING, HOTTEST_READING, type Reading } from './readings.ts'

const HEADER = ['hours', 'celsius']
const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i
const MOST_ISSUES = 20

/**
 * Reads a temperature log: header `hours,celsius`, then one reading a row; hours from mixing, in order of time. A
 * byte-order mark, CRLF, quotes around a field and empty rows are fine.
 *
 * @throws InputError naming each row and column at fault (rows counted from 1, the header being the first).
 */
export function readTemperatureLog(text: string, from = ''): Reading[] {
  const rows = text
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\n|\r/)
    .map((line, index) => ({ row: index + 1, line }))
    .filter(({ line }) => line.trim() !== '')
  const [header, ...body] = rows
  if (header === undefined || !isHeader(header.line)) {
    const found = header === undefined ? 'nothing' : JSON.stringify(header.line.slice(0, 60))
    throw new InputError([{ path: 'row 1', found, expected: 'the header hours,celsius' }], from)
  }
  const issues: InputIssue[] = []
  const readings: Reading[] = []
  for (const { row, line } of body) {
    const reading = readRow(line, row, issues)
    const before = readings.at(-1)
    if (reading === null) continue
    if (before !== undefined && !(reading[0] > before[0]))
      issues.push(issue(row, 'hours', reading[0], `a time after ${before[0]} h of the row before`))
    else readings.push(reading)
  }
  if (issues.length === 0 && readings.length < 2)
    issues.push({ path: 'rows', found: `${readings.length} readings`, expected: 'at least two readings' })
  if (issues.length > 0) throw new InputError(issues.slice(0, MOST_ISSUES), from)
  return readings
}

function isHeader(line: string): boolean {
  const names = fields(line).map((name) => name.toLowerCase())
  return names.length === HEADER.length && names.every((name, index) => name === HEADER[index])
}

function readRow(line: string, row: number, issues: InputIssue[]): Reading | null {
  const parts = fields(line)
  if (parts.length !== HEADER.length) {
    issues.push({
      path: `row ${row}`,
      found: JSON.stringify(line.slice(0, 60)),
      expected: 'two fields: hours,celsius',
    })
    return null
  }
  const [hours, celsius] = parts.map((part) => (NUMBER.test(part) ? Number(part) : Number.NaN))
  const [hoursText = '', celsiusText = ''] = parts
  let sound = true
  if (hours === undefined || !(Number.isFinite(hours) && hours >= 0)) {
    issues.push(issue(row, 'hours', hoursText, 'hours from mixing, a number not below 0'))
    sound = false
  }
  if (celsius === undefined || !(celsius >= COLDEST_READING && celsius <= HOTTEST_READING)) {
    issues.push(
      issue(row, 'celsius', celsiusText, `a temperature from ${COLDEST_READING} to ${HOTTEST_READING} °C`),
    )
    sound = false
  }
  return sound ? [hours as number, celsius as number] : null
}

function fields(line: string): string[] {
  return line.split(',').map((field) => field.trim().replace(/^"(.*)"$/, '$1'))
}

function issue(row: number, column: string, found: number | string, expected: string): InputIssue {
  return { path: `row ${row}: ${column}`, found: found === '' ? 'nothing' : String(found), expected }
}
