import { type ChildProcess, execFileSync, spawn } from 'node:child_process'
import { createHash, X509Certificate } from 'node:crypto'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { type Browser, type BrowserContext, type BrowserContextOptions, chromium } from 'playwright-core'

const BIN = fileURLToPath(new URL('../packages/cli/bin/castwright.js', import.meta.url))

export interface FirstSignIn {
  readonly id: string
  readonly name: string
  readonly role: string
  readonly pin: string
}

export interface App {
  /** Without a slash at the end. */
  readonly address: string
  readonly data: string
  readonly people: readonly FirstSignIn[]
  stop(): Promise<void>
}

export interface AppOptions {
  readonly verb: 'serve' | 'demo'
  readonly tls?: { readonly cert: string; readonly key: string }
  /** ISO instant; only with the invented job. */
  readonly clock?: string
  /** Drawings, yard or job taken into the fresh record before the server starts. */
  readonly bring?: readonly unknown[]
}

/** Starts the built command line on a free port with a fresh data folder, as a yard would. */
export async function startApp({ verb, tls, clock, bring = [] }: AppOptions): Promise<App> {
  const folder = mkdtempSync(join(tmpdir(), 'castwright-e2e-'))
  const data = join(folder, 'data')
  for (const input of bring) {
    execFileSync(process.execPath, [BIN, 'import', '-', '--data', data], { input: JSON.stringify(input) })
  }
  const args = [BIN, verb, '--port', '0', '--data', data, '--json']
  if (tls) {
    writeFileSync(join(folder, 'cert.pem'), tls.cert)
    writeFileSync(join(folder, 'key.pem'), tls.key)
    args.push('--cert', join(folder, 'cert.pem'), '--key', join(folder, 'key.pem'))
  }
  const child = spawn(process.execPath, args, {
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...process.env, ...(clock === undefined ? {} : { CASTWRIGHT_CLOCK: clock }) },
  })
  const { address, firstSignIn } = await spoken(child)
  return {
    address: address.replace(/\/$/, ''),
    data,
    people: firstSignIn,
    stop: async () => {
      await ended(child)
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

/** The one document that a starting server prints. */
function spoken(child: ChildProcess): Promise<{ address: string; firstSignIn: FirstSignIn[] }> {
  return new Promise((done, fail) => {
    let out = ''
    let err = ''
    child.stderr?.on('data', (chunk: Buffer) => {
      err += chunk
    })
    child.stdout?.on('data', (chunk: Buffer) => {
      out += chunk
      try {
        done(JSON.parse(out))
      } catch {
        // not the whole of it yet
      }
    })
    child.on('exit', (code) => fail(new Error(`the server ended with ${code}: ${err}`)))
  })
}

function ended(child: ChildProcess): Promise<void> {
  return new Promise((done) => {
    if (child.exitCode !== null) return done()
    child.on('exit', () => done())
    child.kill('SIGTERM')
  })
}

const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

/** A browser; `trusted` is a certificate that it takes as a phone does on which the yard has installed it. */
export function startBrowser(trusted?: string): Promise<Browser> {
  const pins = trusted === undefined ? [] : [`--ignore-certificate-errors-spki-list=${keyHash(trusted)}`]
  return chromium.launch({
    executablePath: process.env.CASTWRIGHT_CHROMIUM ?? '/usr/bin/chromium',
    args: [...FLAGS, ...pins],
  })
}

function keyHash(cert: string): string {
  const key = new X509Certificate(cert).publicKey.export({ type: 'spki', format: 'der' })
  return createHash('sha256').update(key).digest('base64')
}

/** A phone held upright: 360 px wide, touch. */
export const PHONE: BrowserContextOptions = {
  viewport: { width: 360, height: 740 },
  hasTouch: true,
  isMobile: true,
  deviceScaleFactor: 1,
  locale: 'en-GB',
  timezoneId: 'UTC',
}

export const DESK: BrowserContextOptions = {
  viewport: { width: 1440, height: 900 },
  deviceScaleFactor: 1,
  locale: 'en-GB',
  timezoneId: 'UTC',
}

/** Faults that a page reports: an end-to-end test ends with none. */
export function watchFaults(context: BrowserContext): string[] {
  const faults: string[] = []
  context.on('weberror', (error) => faults.push(error.error().message))
  context.on('console', (message) => {
    // The network is cut on purpose in some tests; the browser writes that as an error.
    if (message.type() === 'error' && !/Failed to load resource|net::ERR_/.test(message.text())) {
      faults.push(message.text())
    }
  })
  return faults
}
