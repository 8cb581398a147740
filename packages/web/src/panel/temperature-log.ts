import { readTable } from '@castwright/documents/bar-list'

export type LoggerTable = Awaited<ReturnType<typeof readTable>>

/** Rows and cells of a logger's file, text or XLSX. @throws InputError where it is neither. */
export async function readLoggerTable(file: File): Promise<LoggerTable> {
  return readTable({ bytes: new Uint8Array(await file.arrayBuffer()), name: file.name })
}
