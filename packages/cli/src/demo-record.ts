import { existsSync } from 'node:fs'
import { mkdir, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { ToldEntry } from '@castwright/demo'
import { dayIn } from '@castwright/engine/steps'
import { foundText, InputError, readJson } from '@castwright/engine/working'
import type { Store } from '@castwright/record/store'
import { type Clock, clockFrom, wallClock } from '@castwright/server'
import { type Environment, type RecordPlace, variableFault } from './serving.ts'

/** Marks a data folder as the invented job's, and says how far the job was moved. */
export const DEMO_FILE = 'invented-job.json'
const FORMAT = 'castwright.invented-job/1'

interface Marker {
  readonly format: 'castwright.invented-job/1'
  /** Whole days that the job was moved by. */
  readonly days: number
  /** All of it is in the record; false while a first start has not got to its end. */
  readonly loaded: boolean
}

/** A yard's own record is never kept in the folder of the invented job. @throws InputError */
export function refuseDemo({ folder }: RecordPlace): void {
  if (!existsSync(join(folder, DEMO_FILE))) return
  throw new InputError(
    [
      {
        path: '',
        found: `${folder}, which holds the invented job`,
        expected: 'a folder for the record of your yard',
      },
    ],
    'option --data',
  )
}

/** Where the invented job's clock stands at the start; null: today, by the machine's clock. @throws InputError */
export function readDemoClock({ CASTWRIGHT_CLOCK }: Environment): string | null {
  if (CASTWRIGHT_CLOCK === undefined || CASTWRIGHT_CLOCK === '') return null
  const fits = /^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d(\.\d{1,3})?)?Z$/.test(CASTWRIGHT_CLOCK)
  if (!fits || !Number.isFinite(Date.parse(CASTWRIGHT_CLOCK))) {
    throw variableFault('CASTWRIGHT_CLOCK', CASTWRIGHT_CLOCK, 'an instant such as 2026-09-16T09:40:00Z')
  }
  return CASTWRIGHT_CLOCK
}

export function demoClock(start: string | null): Clock {
  return start === null ? wallClock : clockFrom(start)
}

export interface DemoFolderInput {
  readonly folder: string
  /** Set where the job keeps its own days. */
  readonly start: string | null
  /** Now, UTC; the middle of the job and the yard's zone. */
  readonly now: string
  readonly middle: string
  readonly timezone: string
}

/**
 * Readies a folder for the invented job and settles, once, by how many days the job is moved.
 *
 * @throws InputError where the folder holds another record, or a job that was moved while the clock shall stand still.
 */
export async function settleDemoFolder(input: DemoFolderInput): Promise<Marker> {
  const { folder, start, now, middle, timezone } = input
  const path = join(folder, DEMO_FILE)
  if (existsSync(path)) {
    const marker = readMarker(await readFile(path, 'utf8'), path)
    if (start !== null && marker.days !== 0) {
      throw variableFault(
        'CASTWRIGHT_CLOCK',
        start,
        `nothing: the job in ${folder} was moved by ${marker.days} days; a clock of its own needs a folder of its own`,
      )
    }
    return marker
  }
  if (existsSync(join(folder, 'record.sqlite'))) {
    throw new InputError(
      [
        {
          path: '',
          found: `${foundText(folder)}, which holds another record`,
          expected: 'a new folder for the invented job',
        },
      ],
      'option --data',
    )
  }
  const marker: Marker = {
    format: FORMAT,
    days: start === null ? wholeDays(dayIn(timezone, middle), dayIn(timezone, now)) : 0,
    loaded: false,
  }
  await mkdir(folder, { recursive: true, mode: 0o700 })
  await writeMarker(folder, marker)
  return marker
}

function wholeDays(from: string | null, to: string | null): number {
  if (from === null || to === null) throw new Error(`days from ${from} to ${to}: expected two dates`)
  return Math.round((Date.parse(to) - Date.parse(from)) / 86_400_000)
}

function readMarker(text: string, path: string): Marker {
  const marker = readJson(text, path) as Partial<Marker> | null
  const { format, days, loaded } = marker ?? {}
  if (format === FORMAT && Number.isInteger(days) && typeof loaded === 'boolean') return marker as Marker
  throw new InputError([{ path: '', found: foundText(marker), expected: `what ${FORMAT} holds` }], path)
}

export interface LoadInput {
  readonly store: Store
  readonly folder: string
  readonly marker: Marker
  /** Moved already, in the order in which the record had them. */
  readonly entries: readonly ToldEntry[]
  /** Now, UTC: what would be stored later than this has not happened yet. */
  readonly now: string
}

/** Puts the invented job into the record. Goes on where a start that was broken off has stopped. */
export async function loadDemo({ store, folder, marker, entries, now }: LoadInput): Promise<void> {
  if (marker.loaded) return
  const future = entries.findIndex(({ stored }) => stored > now)
  const past = future < 0 ? entries : entries.slice(0, future)
  // Each has its own time of storing; asked for at once they still share a few commits, and keep their order.
  const results = await Promise.all(
    past.map(({ stored, ...entry }) => store.append([entry], { now: stored })),
  )
  const refused = results.flat().find(({ status }) => status === 'refused')
  if (refused !== undefined)
    throw new Error(`an entry of the invented job is refused: ${JSON.stringify(refused)}`)
  await writeMarker(folder, { ...marker, loaded: true })
}

async function writeMarker(folder: string, marker: Marker): Promise<void> {
  await writeFile(join(folder, DEMO_FILE), `${JSON.stringify(marker)}\n`)
}
