import { writeFile } from 'node:fs/promises'
import { foundText, InputError } from '@castwright/engine/working'
import { openStore } from '@castwright/record/store'
import { jobFile, Notices, wallClock, YardLog } from '@castwright/server'
import { PLACE_OPTIONS, readPlace, withRecord } from '../serving.ts'
import { textTable, type Verb } from '../verb.ts'

export const exportVerb: Verb = {
  name: 'export',
  file: { name: 'JOB', about: 'mark of the job' },
  options: [
    { flags: '--to <FILE>', about: 'write the job file there; an existing file is refused' },
    ...PLACE_OPTIONS,
  ],
  example: 'castwright export K-17 --json --data data',
  async run(given) {
    const mark = given.file ?? ''
    const place = readPlace(given, process.env)
    // Reading beside a running server is fine, so the folder is not locked.
    const store = await withRecord(place, () => openStore({ ...place, existing: true }))
    try {
      const state = await new YardLog({ store, clock: wallClock, notices: new Notices() }).state()
      const job = jobFile(state, mark)
      if (job === null) {
        const known = [
          ...new Set([...state.jobs.keys(), ...[...state.panels.values()].map((facts) => facts.job)]),
        ]
        throw new InputError(
          [
            {
              path: 'JOB',
              found: foundText(mark),
              expected: known.length === 0 ? 'a job; the record has none' : `one of ${known.join(', ')}`,
            },
          ],
          place.folder,
        )
      }
      const to = given.optionalText('to')
      if (to !== undefined) await writeNew(to, `${JSON.stringify(job, null, 2)}\n`)
      const drawings = job.drawings as readonly { readonly mark: string; readonly revision?: string }[]
      return {
        json: job,
        table: () =>
          textTable([
            ['Mark', 'Revision', 'Due on site'],
            ...drawings.map((drawing) => [
              drawing.mark,
              drawing.revision ?? '',
              job.due?.[drawing.mark] ?? '',
            ]),
          ]),
      }
    } finally {
      await store.close()
    }
  },
}

async function writeNew(path: string, text: string): Promise<void> {
  try {
    await writeFile(path, text, { flag: 'wx' })
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException
    const found = code === 'EEXIST' ? `${path}, which is there already` : `${path} (${code})`
    throw new InputError(
      [{ path: '', found, expected: 'a new file in a folder that is there' }],
      'option --to',
    )
  }
}
