import { type LoggerMap, parseLoggerMap } from '@castwright/documents/logger-file'

interface TextStorage {
  getItem(key: string): string | null
  setItem(key: string, value: string): void
}

const KEY = 'castwright.logger-map'
/** Loggers whose mapping is kept on a device. */
const MOST = 30

/** A logger is known again by the words of its file's first rows. */
export function headOf(rows: readonly (readonly unknown[])[]): string {
  return JSON.stringify(
    rows.slice(0, 5).map((row) => row.map((cell) => (cell as { text?: string } | null)?.text ?? null)),
  ).replace(/\d/g, '0')
}

/** The mapping that was kept for files with this head; null where there is none, or none that can be read. */
export function keptMap(storage: TextStorage, head: string): LoggerMap | null {
  const found = readAll(storage).find(([key]) => key === head)
  if (found === undefined) return null
  try {
    return parseLoggerMap(found[1])
  } catch {
    return null
  }
}

/** Keeps a mapping for files with this head; a full storage keeps it out, and the next file is asked again. */
export function keepMap(storage: TextStorage, head: string, map: LoggerMap): void {
  const others = readAll(storage).filter(([key]) => key !== head)
  try {
    storage.setItem(KEY, JSON.stringify([[head, map], ...others].slice(0, MOST)))
  } catch {
    // A convenience only.
  }
}

function readAll(storage: TextStorage): [string, unknown][] {
  try {
    const value: unknown = JSON.parse(storage.getItem(KEY) ?? '[]')
    return Array.isArray(value) ? (value as [string, unknown][]) : []
  } catch {
    return []
  }
}
