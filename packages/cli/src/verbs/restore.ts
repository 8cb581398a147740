import { DATA_OPTION, dataFolder, refuseDatabaseUrl } from '../data-folder.ts'
import type { Verb } from '../verb.ts'
import { copyTable, folderOf } from './backup.ts'

export const restoreVerb: Verb = {
  name: 'restore',
  file: { name: 'FOLDER', about: 'folder that backup wrote' },
  options: [{ ...DATA_OPTION, about: `${DATA_OPTION.about}; must be new or empty` }],
  example: 'castwright restore backup-monday --data data-restored',
  async run(given) {
    refuseDatabaseUrl('restore')
    const { restoreFolder } = await import('@castwright/record/store')
    const copy = await restoreFolder({ from: folderOf(given), folder: dataFolder(given) })
    return {
      json: { ...copy },
      table: () => `Every entry, node and file was read and fits.\n${copyTable(copy)}`,
    }
  },
}
