import { existsSync } from 'node:fs'
import { createServer as createHttp } from 'node:http'
import { createServer as createHttps } from 'node:https'
import type { AddressInfo } from 'node:net'
import { networkInterfaces } from 'node:os'
import { join } from 'node:path'
import { InputError } from '@castwright/engine/working'
import type { Role } from '@castwright/record'
import { openStore, type Store } from '@castwright/record/store'
import { createAdaptorServer, type ServerType } from '@hono/node-server'
import { createApp } from '../app.ts'
import { isLoopback } from '../guard/origin.ts'
import { type FirstSignIn, makeFirstPeople, resetPin } from '../people/people.service.ts'
import { type Clock, wallClock } from './clock.ts'
import { lockFolder } from './folder-lock.ts'
import { checkDoor, type Door } from './settings.ts'

export interface FirstPerson {
  readonly id: string
  readonly name: string
  readonly role: Role
}

export interface StartOptions extends Door {
  /** Data folder; made where it is missing. */
  readonly folder: string
  /** Folder of attachments, where it is not in the data folder. */
  readonly filesFolder?: string
  /** PostgreSQL in place of the embedded store; the folder then holds key and attachments. */
  readonly databaseUrl?: string
  /** Folder of the built app; null serves the API alone. */
  readonly web: string | null
  readonly clock?: Clock
  /** Name of a new log; a random one where not given. */
  readonly yard?: string
  /** The accounts of a new data folder; one lead where not given. */
  readonly people?: readonly FirstPerson[]
  /** Fills the record before anybody can ask; called at each start. */
  readonly prepare?: (store: Store) => Promise<void>
  readonly demo?: boolean
  /** Id of a person who gets a new PIN at this start. */
  readonly resetPin?: string
  readonly report?: (error: unknown) => void
}

export interface Running {
  /** The address to open first. */
  readonly address: string
  /** Every address that it is seen under. */
  readonly addresses: readonly string[]
  readonly port: number
  readonly yard: string
  /** Accounts made or given a new PIN at this start, with their PINs; empty otherwise. */
  readonly firstSignIn: readonly FirstSignIn[]
  /** Finishes what is being written, closes the store and gives the folder back. */
  close(): Promise<void>
}

const FIRST_LEAD: readonly FirstPerson[] = [{ id: 'lead', name: 'Lead', role: 'lead' }]
/** How long requests may still run when the server stops, ms. */
const PATIENCE = 5000

/**
 * Opens the record of a data folder and serves it.
 *
 * @throws InputError for options that do not fit, a folder in use, a port that is taken; StoreError and HistoryError for a record
 * that cannot be opened here.
 */
export async function startServer(options: StartOptions): Promise<Running> {
  const door = checkDoor(options)
  const clock = options.clock ?? wallClock
  const web = options.web !== null && existsSync(join(options.web, 'index.html')) ? options.web : null
  const unlock = lockFolder(options.folder)
  const undo: (() => unknown)[] = [unlock]
  try {
    const store = await openStore({
      folder: options.folder,
      clock,
      ...(options.filesFolder === undefined ? {} : { filesFolder: options.filesFolder }),
      ...(options.databaseUrl === undefined ? {} : { databaseUrl: options.databaseUrl }),
      ...(options.yard === undefined ? {} : { yard: options.yard }),
    })
    undo.push(() => store.close())
    const { app, log, notices } = createApp({
      store,
      clock,
      web,
      demo: options.demo ?? false,
      tls: door.tls !== null,
      origin: door.origin,
      loopbackOnly: isLoopback(door.host) && door.origin === null,
      ...(options.report === undefined ? {} : { report: options.report }),
    })
    await options.prepare?.(store)
    // Listens before the first accounts are made: a taken port must not use up the PINs that are told once.
    const server = await listen(door, app.fetch)
    undo.push(() => server.close())
    const made = await makeFirstPeople(store.people, options.people ?? FIRST_LEAD)
    const firstSignIn =
      options.resetPin === undefined ? made : [await resetPin(store.people, options.resetPin)]
    // Folds the whole log now, so that the first to ask need not wait for it.
    log.state().catch(options.report ?? (() => undefined))
    const { port } = server.address() as AddressInfo
    const addresses = addressesOf(door, port)
    return {
      address: addresses[0] ?? '',
      addresses,
      port,
      yard: store.yard,
      firstSignIn,
      async close() {
        notices.closeAll()
        await stopListening(server)
        await log.idle()
        await store.close()
        unlock()
      },
    }
  } catch (error) {
    for (const act of undo.reverse()) await act()
    throw error
  }
}

type Fetch = Parameters<typeof createAdaptorServer>[0]['fetch']

function listen({ host, port, tls }: Door, fetch: Fetch): Promise<ServerType> {
  const server =
    tls === null ? createAdaptorServer({ fetch, createServer: createHttp }) : secureServer(tls, fetch)
  return new Promise((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) => reject(listenFault(error, host, port)))
    server.listen(port, host, () => resolve(server))
  })
}

function secureServer({ cert, key }: NonNullable<Door['tls']>, fetch: Fetch): ServerType {
  try {
    return createAdaptorServer({
      fetch,
      createServer: createHttps,
      serverOptions: { cert, key, minVersion: 'TLSv1.2' },
    })
  } catch (error) {
    const found = error instanceof Error ? error.message : String(error)
    throw new InputError(
      [{ path: '--cert, --key', found, expected: 'a PEM certificate and its own private key' }],
      'serve',
    )
  }
}

function listenFault(error: NodeJS.ErrnoException, host: string, port: number): unknown {
  const issue = (path: string, found: string, expected: string): InputError =>
    new InputError([{ path, found, expected }], 'serve')
  switch (error.code) {
    case 'EADDRINUSE':
      return issue('--port', `${port}, which another program is using`, 'a free port')
    case 'EACCES':
      return issue('--port', `${port}, which this user may not open`, 'a port from 1024 up')
    case 'EADDRNOTAVAIL':
    case 'ENOTFOUND':
    case 'EAI_AGAIN':
      return issue('--host', `${host} (${error.code})`, 'an address of this machine')
    default:
      return error
  }
}

/** Ends when the last request is answered. A connection kept open by a browser is closed as soon as it rests. */
async function stopListening(server: ServerType): Promise<void> {
  const began = Date.now()
  const rest = setInterval(() => {
    if (!('closeIdleConnections' in server)) return
    server.closeIdleConnections()
    if (Date.now() - began > PATIENCE) server.closeAllConnections()
  }, 50)
  await new Promise<void>((done) => server.close(() => done()))
  clearInterval(rest)
}

function addressesOf({ host, tls, origin }: Door, port: number): string[] {
  const scheme = tls === null ? 'http' : 'https'
  const named = (name: string): string => `${scheme}://${name.includes(':') ? `[${name}]` : name}:${port}/`
  const here = host === '0.0.0.0' || host === '::' ? ['localhost', ...outward()].map(named) : [named(host)]
  return origin === null ? here : [`${origin}/`, ...here]
}

/** Addresses of this machine that others in the yard can reach. */
function outward(): string[] {
  return Object.values(networkInterfaces())
    .flatMap((list) => list ?? [])
    .filter(({ internal, family }) => !internal && family === 'IPv4')
    .map(({ address }) => address)
}
