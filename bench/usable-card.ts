import { type ChildProcess, spawn } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { createServer } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { type BrowserContext, chromium } from 'playwright-core'
import { type BenchLine, median, secondsOf } from './line.ts'

const BIN = fileURLToPath(new URL('../packages/cli/bin/castwright.js', import.meta.url))
const CARD = '/panel/Saltmarsh%20Library/E03?step=place'

/** From the address of a panel to its card with every check in it: signed in, record on the device; beside an empty page. */
export async function usableCard(executablePath: string): Promise<BenchLine[]> {
  const folder = mkdtempSync(join(tmpdir(), 'castwright-bench-'))
  const server = spawn(
    process.execPath,
    [BIN, 'demo', '--port', '0', '--data', join(folder, 'data'), '--json'],
    {
      stdio: ['ignore', 'pipe', 'inherit'],
    },
  )
  const empty = createServer((_, answer) =>
    answer.setHeader('content-type', 'text/html').end('<h1>empty</h1>'),
  )
  await new Promise<void>((done) => empty.listen(0, '127.0.0.1', done))
  const { port } = empty.address() as { port: number }
  const browser = await chromium.launch({
    executablePath,
    args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking'],
  })
  try {
    const { address, firstSignIn } = await spoken(server)
    const context = await browser.newContext({ viewport: { width: 360, height: 740 } })
    const lead = firstSignIn[0]
    await context.request.post(`${address}api/session`, {
      data: { person: lead?.id, pin: lead?.pin },
      headers: { origin: address.replace(/\/$/, '') },
    })
    const first = await open(context, address)
    const later = median([
      await open(context, address),
      await open(context, address),
      await open(context, address),
    ])
    const bare = await secondsOf(async () => {
      const page = await context.newPage()
      await page.goto(`http://127.0.0.1:${port}/`)
      await page.close()
    })
    return [
      {
        what: 'to a usable card, first visit of a device',
        value: `${first.toFixed(2)} s`,
        beside: `empty page ${bare.toFixed(2)} s; reads the whole record of the invented job`,
      },
      {
        what: 'to a usable card, record on the device',
        value: `${later.toFixed(2)} s`,
        beside: `empty page ${bare.toFixed(2)} s`,
      },
    ]
  } finally {
    await browser.close()
    empty.close()
    server.kill('SIGTERM')
    await new Promise((done) => server.on('exit', done))
    rmSync(folder, { recursive: true, force: true })
  }
}

async function open(context: BrowserContext, address: string): Promise<number> {
  const page = await context.newPage()
  const time = await secondsOf(async () => {
    await page.goto(`${address.replace(/\/$/, '')}${CARD}`)
    await page.locator('li.check-row').first().waitFor({ timeout: 60_000 })
  })
  await page.close()
  return time
}

function spoken(
  child: ChildProcess,
): Promise<{ address: string; firstSignIn: { id: string; pin: string }[] }> {
  return new Promise((done, fail) => {
    let out = ''
    child.stdout?.on('data', (chunk: Buffer) => {
      out += chunk
      try {
        done(JSON.parse(out))
      } catch {
        // not the whole of it yet
      }
    })
    child.on('exit', (code) => fail(new Error(`the server ended with ${code}`)))
  })
}
