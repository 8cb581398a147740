import { InputError } from '@castwright/engine/working'
import { DATA_OPTION, dataFolder, filesFolder, refuseDatabaseUrl } from '../data-folder.ts'
import type { Given } from '../given.ts'
import { textTable, type Verb } from '../verb.ts'

export const backupVerb: Verb = {
  name: 'backup',
  file: {
    name: 'FOLDER',
    about: 'new folder for the copy; holds the yard’s key too, so keep it like the data folder',
  },
  options: [DATA_OPTION],
  example: 'castwright backup backup-monday --data data',
  async run(given) {
    refuseDatabaseUrl('backup')
    const to = folderOf(given)
    const folder = dataFolder(given)
    const files = filesFolder()
    const { openStore, StoreError } = await import('@castwright/record/store')
    const opened = openStore({
      folder,
      existing: true,
      ...(files === undefined ? {} : { filesFolder: files }),
    })
    const store = await opened.catch((error: unknown) => {
      if (!(error instanceof StoreError)) throw error
      throw new InputError(
        [{ path: '', found: error.message, expected: 'a data folder with a record' }],
        'option --data',
      )
    })
    try {
      const backup = await store.backup(to)
      return { json: { ...backup }, table: () => copyTable(backup) }
    } finally {
      await store.close()
    }
  },
}

export function folderOf(given: Given): string {
  const folder = given.file
  if (folder !== undefined && folder.trim() !== '' && folder !== '-') return folder
  throw new InputError([{ path: '', found: folder ?? 'nothing', expected: 'a folder' }], 'FOLDER')
}

export function copyTable(copy: {
  readonly folder: string
  readonly yard: string
  readonly size: number
  readonly root: string
  readonly files: number
}): string {
  return textTable([
    ['Folder', copy.folder],
    ['Yard', copy.yard],
    ['Entries', String(copy.size)],
    ['Root', copy.root],
    ['Files', String(copy.files)],
  ])
}
