import { InputError } from '@castwright/engine/working'
import type { BarListMap } from './column-map.ts'
import { readCsv } from './read-csv.ts'
import { readXlsx } from './read-xlsx.ts'
import type { Table } from './table.ts'

/** Largest file that is read, bytes. */
export const MOST_FILE = 50_000_000

export interface TableInput {
  readonly bytes: Uint8Array
  /** Name of the file, for messages. */
  readonly name: string
  /** Sheet of an XLSX file; the first where absent. */
  readonly sheet?: string | undefined
  /** Helps to see what separates the columns of a text file. */
  readonly map?: BarListMap | undefined
}

/** The cells of a bar list, text or XLSX told apart by the bytes. @throws InputError where it is neither. */
export async function readTable({ bytes, name, sheet, map }: TableInput): Promise<Table> {
  const refuse = (found: string, expected: string): InputError =>
    new InputError([{ path: '', found, expected }], name)
  if (bytes.length === 0) throw refuse('an empty file', 'a bar list, CSV or XLSX')
  if (bytes.length > MOST_FILE) throw refuse(`${bytes.length} bytes`, `at most ${MOST_FILE / 1e6} MB`)
  if (bytes[0] === 0x50 && bytes[1] === 0x4b) return readXlsx({ bytes, name, sheet })
  if (bytes[0] === 0xd0 && bytes[1] === 0xcf) {
    throw refuse('a spreadsheet of the older binary form', 'CSV or XLSX: save it as one of these')
  }
  if (sheet !== undefined)
    throw refuse('a text file, which has no sheets', 'an XLSX file where a sheet is named')
  return readCsv({ bytes, name, map })
}
