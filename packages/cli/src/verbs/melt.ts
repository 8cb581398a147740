import { foundText, InputError } from '@castwright/engine/working'
import { panelsOfHeat } from '@castwright/record'
import { openStore } from '@castwright/record/store'
import { Notices, wallClock, YardLog } from '@castwright/server'
import { PLACE_OPTIONS, readPlace, withRecord } from '../serving.ts'
import { textTable, type Verb } from '../verb.ts'

export const meltVerb: Verb = {
  name: 'melt',
  file: { name: 'HEAT', about: 'heat number as on certificate, tag or docket' },
  options: [...PLACE_OPTIONS],
  example: 'castwright melt H4022 --data data',
  async run(given) {
    const heat = (given.file ?? '').trim()
    if (heat === '') {
      throw new InputError([{ path: 'HEAT', found: foundText(given.file), expected: 'a heat number' }])
    }
    const place = readPlace(given, process.env)
    // Reading beside a running server is fine, so the folder is not locked.
    const store = await withRecord(place, () => openStore({ ...place, existing: true }))
    try {
      const { steel } = await new YardLog({ store, clock: wallClock, notices: new Notices() }).state()
      const panels = panelsOfHeat(steel, heat).map(({ panel, steel: its }) => ({
        panel,
        bundles: its.map(({ bundle, pieces }) => ({ bundle, pieces })),
      }))
      return {
        json: { heat, panels },
        table: () =>
          panels.length === 0
            ? 'No panel on record holds it. Steel that was cut without a record is not seen here.'
            : textTable([
                ['Panel', 'Bundles', 'Pieces'],
                ...panels.map(({ panel, bundles }) => [
                  panel,
                  bundles.map(({ bundle }) => bundle ?? 'unknown').join(', '),
                  String(
                    bundles.reduce(
                      (sum, { pieces }) => sum + pieces.reduce((all, { count }) => all + (count ?? 0), 0),
                      0,
                    ),
                  ),
                ]),
              ]),
      }
    } finally {
      await store.close()
    }
  },
}
