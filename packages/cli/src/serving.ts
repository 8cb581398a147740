import { existsSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { foundText, InputError } from '@castwright/engine/working'
import { checkDoor, DEFAULT_HOST, DEFAULT_PORT, type Door, type Running } from '@castwright/server'
import type { Given } from './given.ts'
import { textTable, type VerbOption } from './verb.ts'

/** The environment, a word at a time; tests hand in their own. */
export type Environment = Readonly<Record<string, string | undefined>>

export const DATA_OPTION: VerbOption = {
  flags: '--data <DIR>',
  about: 'data folder of the embedded record; CASTWRIGHT_DATA if not given',
}

export const DOOR_OPTIONS: readonly VerbOption[] = [
  { flags: '--host <name>', about: `host name or address to listen on; ${DEFAULT_HOST} if not given` },
  {
    flags: '--port <number>',
    about: `port, 0 for a free one; CASTWRIGHT_PORT or ${DEFAULT_PORT} if not given`,
  },
  { flags: '--cert <FILE>', about: 'certificate for TLS, PEM' },
  { flags: '--key <FILE>', about: 'private key of the certificate, PEM' },
  { flags: '--origin <address>', about: 'https address that browsers see, behind a proxy that ends TLS' },
  DATA_OPTION,
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
}

/**
 * Where the record is.
 *
 * @throws InputError for a database or a store of attachments that this version cannot use.
 */
export function readPlace(given: Given, environment: Environment, fallback: string): RecordPlace {
  const { DATABASE_URL, CASTWRIGHT_FILES } = environment
  if (DATABASE_URL !== undefined && DATABASE_URL !== '') {
    throw variableFault(
      'DATABASE_URL',
      'an address of a database',
      'nothing: this version keeps the record in the embedded store alone, and would not write to that database',
    )
  }
  if (CASTWRIGHT_FILES !== undefined && /^[a-z][a-z0-9+.-]+:\/\//i.test(CASTWRIGHT_FILES)) {
    throw variableFault(
      'CASTWRIGHT_FILES',
      CASTWRIGHT_FILES,
      'a folder: this version keeps attachments on disk alone',
    )
  }
  return {
    folder: resolve(given.optionalText('data') ?? (environment.CASTWRIGHT_DATA || fallback)),
    ...(CASTWRIGHT_FILES ? { filesFolder: resolve(CASTWRIGHT_FILES) } : {}),
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
  return new InputError([{ path: '', found: foundText(found), expected }], `environment ${name}`)
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
