import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { DEMO_CLOCK, DEMO_ZONE, demoHistory, demoPeople, shiftDays } from '@castwright/demo'
import { startServer } from '@castwright/server'
import { demoClock, loadDemo, readDemoClock, settleDemoFolder } from '../demo-record.ts'
import {
  DOOR_OPTIONS,
  readDoor,
  readPlace,
  reportDefect,
  spokenStart,
  untilStopped,
  variableFault,
  webFolder,
  withRecord,
} from '../serving.ts'
import type { Verb } from '../verb.ts'
import { APP_MISSING } from './serve.ts'

export const demoVerb: Verb = {
  name: 'demo',
  options: [
    ...DOOR_OPTIONS,
    { flags: '--reset-pin <person>', about: 'give this person (id) a new PIN at random, told once' },
  ],
  example: 'castwright demo --port 4870 --data data',
  async run(given) {
    const start = readDemoClock(process.env)
    const door = await readDoor(given, process.env)
    const place = readPlace(given, process.env)
    if (place.databaseUrl !== undefined) {
      throw variableFault(
        'DATABASE_URL',
        'a database',
        'nothing: the invented job is kept in the embedded store',
      )
    }
    const clock = demoClock(start)
    const now = (): string => new Date(clock()).toISOString()
    const marker = await settleDemoFolder({
      folder: place.folder,
      start,
      now: now(),
      middle: DEMO_CLOCK,
      timezone: DEMO_ZONE,
    })
    const entries = marker.loaded ? [] : shiftDays(demoHistory().entries, marker.days)
    const yard = entries[0]?.yard
    const web = webFolder()
    const resetPin = given.optionalText('reset-pin')
    const running = await withRecord(place, () =>
      startServer({
        ...door,
        ...place,
        ...(yard === undefined ? {} : { yard }),
        web,
        clock,
        demo: true,
        people: demoPeople(),
        prepare: (store) => loadDemo({ store, folder: place.folder, marker, entries, now: now() }),
        report: reportDefect,
        ...(resetPin === undefined ? {} : { resetPin }),
      }),
    )
    const told = untilStopped()
    const notes = [
      'The yard, the job and the people are invented.',
      ...(start === null ? [] : [`The clock started at ${start} and runs on.`]),
      ...(web !== null && existsSync(join(web, 'index.html')) ? [] : [APP_MISSING]),
    ]
    process.stdout.write(spokenStart({ running, place, json: given.flag('json'), notes }))
    await told
    await running.close()
    return { json: {}, printed: true, table: () => '' }
  },
}
