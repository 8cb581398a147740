import type { ScheduleTable } from './schedule-table.ts'

export interface WriteCsvOptions {
  /** Begins with a byte-order mark, by which spreadsheets know UTF-8. */
  readonly bom?: boolean
}

/**
 * The schedule as CSV (RFC 4180): commas between, decimal points, UTF-8, lines end with CRLF, the first names columns and units. Text that
 * a spreadsheet would run as a formula gets a `'` before it, which reading takes off again.
 */
export async function writeCsv(
  { columns, rows }: Pick<ScheduleTable, 'columns' | 'rows'>,
  { bom = false }: WriteCsvOptions = {},
): Promise<Uint8Array> {
  const { default: Papa } = await import('papaparse')
  const lines = [columns.map(({ name }) => name), ...rows].map((row) =>
    row.map((cell) => (typeof cell === 'string' ? plainText(cell) : cell === null ? '' : String(cell))),
  )
  const text = `${Papa.unparse(lines, { newline: '\r\n' })}\r\n`
  return new TextEncoder().encode(bom ? `\uFEFF${text}` : text)
}

/** Text that no spreadsheet takes for a formula. */
export function plainText(text: string): string {
  return /^'*[=+\-@＝＋－＠\t\r]/.test(text) ? `'${text}` : text
}
