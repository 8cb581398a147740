import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { startServer } from '@castwright/server'
import {
  DOOR_OPTIONS,
  readDoor,
  readPlace,
  refuseClock,
  reportDefect,
  spokenStart,
  untilStopped,
  webFolder,
} from '../serving.ts'
import type { Verb } from '../verb.ts'

export const DEFAULT_DATA = 'data/yard'

export const serveVerb: Verb = {
  name: 'serve',
  options: [
    ...DOOR_OPTIONS.map((option) =>
      option.flags.startsWith('--data')
        ? { ...option, about: `${option.about}, else ${DEFAULT_DATA}` }
        : option,
    ),
    { flags: '--reset-pin <person>', about: 'give this person (id) a new PIN at random, told once' },
  ],
  example: 'castwright serve --port 4870 --data data/yard',
  async run(given) {
    refuseClock(process.env)
    const door = await readDoor(given, process.env)
    const place = readPlace(given, process.env, DEFAULT_DATA)
    const web = webFolder()
    const resetPin = given.optionalText('reset-pin')
    const running = await startServer({
      ...door,
      ...place,
      web,
      report: reportDefect,
      ...(resetPin === undefined ? {} : { resetPin }),
    })
    // Listened for before anything is said: whoever reads the address may stop it at once.
    const told = untilStopped()
    const notes = web !== null && existsSync(join(web, 'index.html')) ? [] : [APP_MISSING]
    process.stdout.write(spokenStart({ running, place, json: given.flag('json'), notes }))
    await told
    await running.close()
    return { json: {}, printed: true, table: () => '' }
  },
}

export const APP_MISSING = 'The app is not built, so only the API answers: run npm run build first.'
