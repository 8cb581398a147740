import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { startServer } from '@castwright/server'
import { refuseDemo } from '../demo-record.ts'
import {
  DOOR_OPTIONS,
  readDoor,
  readPlace,
  refuseClock,
  reportDefect,
  spokenStart,
  untilStopped,
  webFolder,
  withRecord,
} from '../serving.ts'
import type { Verb } from '../verb.ts'

export const serveVerb: Verb = {
  name: 'serve',
  options: [
    ...DOOR_OPTIONS,
    { flags: '--reset-pin <person>', about: 'give this person (id) a new PIN at random, told once' },
  ],
  example: 'castwright serve --port 4870 --data data',
  async run(given) {
    refuseClock(process.env)
    const door = await readDoor(given, process.env)
    const place = readPlace(given, process.env)
    const web = webFolder()
    const resetPin = given.optionalText('reset-pin')
    refuseDemo(place)
    const running = await withRecord(place, () =>
      startServer({
        ...door,
        ...place,
        web,
        report: reportDefect,
        ...(resetPin === undefined ? {} : { resetPin }),
      }),
    )
    // Listened for before anything is said: whoever reads the address may stop it at once.
    const told = untilStopped()
    const notes = [
      ...(running.firstSignIn.length > 0 && resetPin === undefined ? [FIRST_ACT] : []),
      ...(web !== null && existsSync(join(web, 'index.html')) ? [] : [APP_MISSING]),
    ]
    process.stdout.write(spokenStart({ running, place, json: given.flag('json'), notes }))
    await told
    await running.close()
    return { json: {}, printed: true, table: () => '' }
  },
}

/** A signature carries a person's name, and the first account has none. */
const FIRST_ACT =
  'Add the people of the yard under their own names, a lead among them, then close the account Lead.'

export const APP_MISSING = 'The app is not built, so only the API answers: run npm run build first.'
