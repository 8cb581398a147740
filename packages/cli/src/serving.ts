import { existsSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { InputError } from '@castwright/engine/working'
import { HistoryError, StoreError } from '@castwright/record/store'
import { checkDoor, DEFAULT_HOST, DEFAULT_PORT, type Door, type Running } from '@castwright/server'
import { DATA_OPTION, dataFolder, filesFolder } from './data-folder.ts'
import type { Given } from './given.ts'
import { textTable, type VerbOption } from './verb.ts'

/** The environment, a word at a time; tests hand in their own. */
export type Environment = Readonly<Record<string, string | undefined>>

/** Where the record is; shared by every verb that opens one. */
export const PLACE_OPTIONS: readonly VerbOption[] = [
  DATA_OPTION,
  { flags: '--yard <name>', about: 'name of the log: for a new record, or where a database holds several' },
]

export const DOOR_OPTIONS: readonly VerbOption[] = [
  { flags: '--host <name>', about: `host name or address to listen on; ${DEFAULT_HOST} if not given` },
  {
    flags: '--port <number>',
    about: `port, 0 for a free one; CASTWRIGHT_PORT or ${DEFAULT_PORT} if not given`,
  },
  { flags: '--cert <FILE>', about: 'certificate for TLS, PEM' },
  { flags: '--key <FILE>', about: 'private key of the certificate, PEM' },
  { flags: '--origin <address>', about: 'https address that browsers see, behind a proxy that ends TLS' },
  ...PLACE_OPTIONS,
]

/** How the server is to be reached. @throws InputError naming option or variable. */
export async function readDoor(given: Given, environment: Environment): Promise<Door> {
  const port =
    given.optionalNumber('port', { least: 0, most: 65_535, whole: true }) ??
    portOf(environment.CASTWRIGHT_PORT) ??
    DEFAULT_PORT
  const cert = await given.optionFile('cert')
  const key = await given.optionFile('key')
  if (cert !== undefined && key === undefined) {
    throw given.fault('key', undefined, 'the private key that belongs to --cert')
  }
  if (key !== undefined && cert === undefined) {
    throw given.fault('cert', undefined, 'the certificate that belongs to --key')
  }
  return checkDoor({
    host: given.optionalText('host') ?? DEFAULT_HOST,
    port,
    tls: cert === undefined || key === undefined ? null : { cert: cert.text, key: key.text },
    origin: given.optionalText('origin')?.replace(/\/$/, '') ?? null,
  })
}

function portOf(text: string | undefined): number | undefined {
  if (text === undefined || text === '') return undefined
  const port = /^\d{1,5}$/.test(text) ? Number(text) : Number.NaN
  if (port <= 65_535) return port
  throw variableFault('CASTWRIGHT_PORT', text, 'a whole number from 0 to 65535')
}

export interface RecordPlace {
  readonly folder: string
  readonly filesFolder?: string
  /** PostgreSQL in place of the embedded store. */
  readonly databaseUrl?: string
  /** Name of the log. */
  readonly yard?: string
}

/** Where the record is. @throws InputError naming option or variable. */
export function readPlace(given: Given, { DATABASE_URL }: Environment): RecordPlace {
  const files = filesFolder()
  const yard = given.optionalText('yard')
  if (yard !== undefined && !/^[a-z0-9][a-z0-9-]{0,62}$/.test(yard)) {
    throw given.fault('yard', yard, 'a name of small letters, digits and hyphens')
  }
  if (DATABASE_URL && !/^postgres(ql)?:\/\//.test(DATABASE_URL)) {
    throw variableFault('DATABASE_URL', 'another kind of address', 'postgres://…')
  }
  return {
    folder: resolve(dataFolder(given)),
    ...(files === undefined ? {} : { filesFolder: resolve(files) }),
    ...(DATABASE_URL ? { databaseUrl: DATABASE_URL } : {}),
    ...(yard === undefined ? {} : { yard }),
  }
}

/** Runs what opens a record; that it is another's, or cannot be reached, is said as a wrong input. @throws InputError */
export async function withRecord<T>(place: RecordPlace, act: () => Promise<T>): Promise<T> {
  try {
    return await act()
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException
    if (error instanceof StoreError || error instanceof HistoryError) {
      throw new InputError(
        [{ path: '', found: error.message, expected: 'a record that can be opened here' }],
        'option --data',
      )
    }
    if (place.databaseUrl !== undefined && code !== undefined) {
      throw variableFault(
        'DATABASE_URL',
        `a database that does not answer (${code})`,
        'one that can be reached',
      )
    }
    if (code === 'EACCES' || code === 'ENOTDIR' || code === 'EROFS') {
      throw new InputError(
        [{ path: '', found: `${place.folder} (${code})`, expected: 'a folder that can be written' }],
        'option --data',
      )
    }
    throw error
  }
}

/** Only the invented job has a clock of its own. @throws InputError where it is set without. */
export function refuseClock({ CASTWRIGHT_CLOCK }: Environment): void {
  if (CASTWRIGHT_CLOCK !== undefined && CASTWRIGHT_CLOCK !== '') {
    throw variableFault(
      'CASTWRIGHT_CLOCK',
      CASTWRIGHT_CLOCK,
      'nothing: only the invented job has a clock of its own',
    )
  }
}

export function variableFault(name: string, found: string, expected: string): InputError {
  return new InputError([{ path: '', found, expected }], `environment ${name}`)
}

/** Folder of the built app, looked for from this file upward, in the sources as in the bundle. */
export function webFolder(): string | null {
  let at = dirname(fileURLToPath(import.meta.url))
  for (;;) {
    if (existsSync(join(at, 'packages/web'))) return join(at, 'packages/web/dist/app')
    const up = dirname(at)
    if (up === at) return null
    at = up
  }
}

export interface Spoken {
  readonly running: Running
  readonly place: RecordPlace
  readonly json: boolean
  /** What else there is to say, before how to stop. */
  readonly notes: readonly string[]
}

/** What a started server says of itself: address and, once, how to sign in. */
export function spokenStart({ running, place, json, notes }: Spoken): string {
  const { address, addresses, firstSignIn, yard } = running
  if (json) {
    return `${JSON.stringify({ address, addresses, yard, data: place.folder, firstSignIn, pid: process.pid }, null, 2)}\n`
  }
  const lines = [
    `Castwright runs at ${address}`,
    ...addresses.slice(1).map((other) => `                also ${other}`),
    `Record ${yard} in ${place.folder}`,
    '',
    ...(firstSignIn.length > 0
      ? [
          'Sign in with these PINs. They are told only now; write them down:',
          textTable(firstSignIn.map(({ name, role, pin }) => [`  ${name}`, role, pin])),
        ]
      : [
          'Sign in with the PINs that were told at the first start. A lost one: start once with --reset-pin PERSON.',
        ]),
    ...notes.flatMap((note) => ['', note]),
    '',
    'Stop with Ctrl+C.',
  ]
  return `${lines.join('\n')}\n`
}

/** Ends when the process is told to stop; a second signal stops it at once. */
export function untilStopped(): Promise<void> {
  return new Promise((done) => {
    const stop = (): void => {
      process.once('SIGINT', () => process.exit(130))
      process.once('SIGTERM', () => process.exit(143))
      done()
    }
    process.once('SIGINT', stop)
    process.once('SIGTERM', stop)
  })
}

/** Writes a defect of the server where the one who runs it looks; never into an answer. */
export function reportDefect(error: unknown): void {
  const text = error instanceof Error ? (error.stack ?? error.message) : String(error)
  process.stderr.write(`${new Date().toISOString()} defect: ${text}\n`)
}
