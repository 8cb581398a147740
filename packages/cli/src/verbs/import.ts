import { openStore } from '@castwright/record/store'
import { bring, checkBrought, lockFolder, Notices, wallClock, YardLog } from '@castwright/server'
import { PLACE_OPTIONS, readPlace, withRecord } from '../serving.ts'
import { textTable, type Verb } from '../verb.ts'

/** Who an entry is by that was made here: whoever holds the computer of the yard. */
const COMMAND_LINE = { id: 'command-line', name: 'Command line', role: 'lead' } as const

export const importVerb: Verb = {
  name: 'import',
  file: { name: 'FILE', about: 'drawing, yard or job, JSON, told apart by its format' },
  options: [...PLACE_OPTIONS],
  example: 'castwright import docs/examples/ell.json --data data/example',
  async run(given) {
    const input = await given.fileJson()
    // Before the folder is touched: a wrong file leaves nothing behind.
    checkBrought(input, given.fileName)
    const place = readPlace(given, process.env)
    const unlock = lockFolder(place.folder)
    try {
      const store = await withRecord(place, () => openStore(place))
      try {
        const log = new YardLog({ store, clock: wallClock, notices: new Notices() })
        const { assumed, ...brought } = await bring(log, COMMAND_LINE, input, given.fileName)
        return {
          json: { ...brought, yard: store.yard, data: place.folder },
          assumed,
          table: () =>
            textTable([
              ['Stored', String(brought.stored)],
              ['In the record before', String(brought.known)],
              ['Record', `${store.yard} in ${place.folder}`],
            ]),
        }
      } finally {
        await store.close()
      }
    } finally {
      unlock()
    }
  },
}
