/** One thing wrong in a log, with the row as the person counts it in the file. */
export interface LogFault {
  /** 1 is the first line of the file. */
  readonly row: number
  readonly found: string
  readonly expected: string
}

export type TemperatureLogFile =
  | { readonly ok: true; readonly readings: readonly (readonly [hours: number, celsius: number])[] }
  | { readonly ok: false; readonly faults: readonly LogFault[] }

/** More faults than this help nobody: the file is another one. */
const MOST_FAULTS = 50
const MOST_READINGS = 20_000
const HEADER = ['hours', 'celsius'] as const

/**
 * Reads a logger's file: header `hours,celsius`, then one reading a row, hours from mixing and rising. Comma, semicolon or tab
 * part the columns; a decimal comma is fine where the columns are not parted by commas. Every bad row is named; nothing
 * of a file with a bad row is taken.
 */
export function readTemperatureLog(text: string): TemperatureLogFile {
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\r|\n/)
  const first = lines.findIndex((line) => line.trim() !== '')
  if (first < 0) return refuse([{ row: 1, found: 'nothing', expected: 'a header hours,celsius' }])
  const header = lines[first] ?? ''
  const comma = header.includes(';') ? ';' : header.includes('\t') ? '\t' : ','
  const names = cells(header, comma).map((name) => name.toLowerCase())
  if (names[0] !== HEADER[0] || names[1] !== HEADER[1]) {
    return refuse([{ row: first + 1, found: header.slice(0, 80), expected: 'a header hours,celsius' }])
  }
  const readings: (readonly [number, number])[] = []
  const faults: LogFault[] = []
  for (const [index, line] of lines.entries()) {
    if (index <= first || line.trim() === '') continue
    if (faults.length >= MOST_FAULTS) break
    const row = index + 1
    const reading = readRow(line, comma, row, readings.at(-1)?.[0] ?? null)
    if (Array.isArray(reading)) readings.push(reading as unknown as readonly [number, number])
    else faults.push(reading as LogFault)
  }
  if (faults.length > 0) return refuse(faults)
  if (readings.length === 0) return refuse([{ row: first + 2, found: 'nothing', expected: 'a reading' }])
  if (readings.length > MOST_READINGS) {
    return refuse([{ row: 1, found: `${readings.length} readings`, expected: `at most ${MOST_READINGS}` }])
  }
  return { ok: true, readings }
}

function readRow(
  line: string,
  comma: string,
  row: number,
  before: number | null,
): readonly [number, number] | LogFault {
  const parts = cells(line, comma)
  if (parts.length < 2) return { row, found: line.slice(0, 80), expected: 'hours and °C' }
  const [hours, celsius] = [numberOf(parts[0], comma), numberOf(parts[1], comma)]
  if (hours === null) return { row, found: parts[0] || 'nothing', expected: 'hours, a number' }
  if (celsius === null) return { row, found: parts[1] || 'nothing', expected: '°C, a number' }
  if (before !== null && !(hours > before)) {
    return { row, found: `${hours} h after ${before} h`, expected: 'hours that rise from row to row' }
  }
  if (celsius < -60 || celsius > 150) return { row, found: `${celsius} °C`, expected: '−60 to 150 °C' }
  return [hours, celsius]
}

function cells(line: string, comma: string): string[] {
  return line.split(comma).map((cell) =>
    cell
      .trim()
      .replace(/^"(.*)"$/, '$1')
      .trim(),
  )
}

function numberOf(text: string | undefined, comma: string): number | null {
  const plain = comma === ',' ? (text ?? '') : (text ?? '').replace(',', '.')
  if (!/^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/.test(plain)) return null
  const value = Number(plain)
  return Number.isFinite(value) ? value : null
}

function refuse(faults: readonly LogFault[]): TemperatureLogFile {
  return { ok: false, faults }
}

export function logFaultSentence({ row, found, expected }: LogFault): string {
  return `Row ${row}: found ${found}, expected ${expected}`
}
