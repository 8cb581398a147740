import { writeFile } from 'node:fs/promises'
import type { PanelSchedule } from '@castwright/documents/bar-list'
import { InputError } from '@castwright/engine/working'
import type { Given } from '../given.ts'
import type { VerbOption } from '../verb.ts'

export const SCHEDULE_FILES: readonly VerbOption[] = [
  { flags: '--csv <file>', about: 'also writes the schedule, a new CSV file (RFC 4180)' },
  { flags: '--bom', about: 'the CSV begins with a byte-order mark, by which spreadsheets know UTF-8' },
  { flags: '--xlsx <file>', about: 'also writes the schedule, a new XLSX file' },
]

/** Writes the schedule where `--csv` and `--xlsx` say. @throws InputError where a file is there already or cannot be written. */
export async function writeScheduleFiles(given: Given, panels: readonly PanelSchedule[]): Promise<void> {
  const csv = given.optionalText('csv')
  const xlsx = given.optionalText('xlsx')
  if (given.flag('bom') && csv === undefined) throw given.fault('bom', 'no --csv', '--csv with --bom')
  if (csv === undefined && xlsx === undefined) return
  const { scheduleTable, writeCsv, writeXlsx } = await import('@castwright/documents/bar-list')
  const table = scheduleTable(panels)
  if (csv !== undefined) await writeNew(csv, await writeCsv(table, { bom: given.flag('bom') }), 'csv')
  if (xlsx !== undefined) await writeNew(xlsx, await writeXlsx(table), 'xlsx')
}

async function writeNew(path: string, bytes: Uint8Array, option: string): Promise<void> {
  try {
    await writeFile(path, bytes, { flag: 'wx' })
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException
    const found = code === 'EEXIST' ? `${path}, which is there already` : `${path} (${code})`
    throw new InputError(
      [{ path: '', found, expected: 'a new file in a folder that is there' }],
      `option --${option}`,
    )
  }
}
