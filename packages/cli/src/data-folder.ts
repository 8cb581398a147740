import { InputError } from '@castwright/engine/working'
import type { Given } from './given.ts'
import type { VerbOption } from './verb.ts'

export const DATA_OPTION: VerbOption = {
  flags: '--data <folder>',
  about: 'data folder of the record; CASTWRIGHT_DATA where not given, else ./data',
}

/** The data folder that a verb works on. @throws InputError where the option is empty. */
export function dataFolder(given: Given): string {
  const option = given.optionalText('data')
  if (option !== undefined && option.trim() === '') throw given.fault('data', option, 'a folder')
  return option ?? process.env.CASTWRIGHT_DATA ?? 'data'
}

/** Folder of the attachments where it is not in the data folder. @throws InputError for an address of another kind. */
export function filesFolder(): string | undefined {
  const place = process.env.CASTWRIGHT_FILES
  if (place === undefined || place === '') return undefined
  if (!/^[a-z][a-z0-9+.-]+:\/\//i.test(place)) return place
  throw new InputError(
    [{ path: '', found: place, expected: 'a folder of this machine' }],
    'environment CASTWRIGHT_FILES',
  )
}

/** Verbs that copy files cannot copy a record that lives in PostgreSQL. @throws InputError where DATABASE_URL is set. */
export function refuseDatabaseUrl(verb: string): void {
  if (!process.env.DATABASE_URL) return
  throw new InputError(
    [
      {
        path: '',
        found: 'an address of PostgreSQL',
        expected: `none: ${verb} copies the embedded record; PostgreSQL is copied by its own tools, the yard’s key and files by copying their folder`,
      },
    ],
    'environment DATABASE_URL',
  )
}
