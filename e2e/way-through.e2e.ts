import { execFileSync } from 'node:child_process'
import { readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { STEP_IDS, type StepId } from '@castwright/engine/steps'
import type { StoredEntry } from '@castwright/record'
import { selfSigned } from '@castwright/server/self-signed'
import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { type App, PHONE, startApp, startBrowser, watchFaults } from './app.ts'
import {
  addPerson,
  answerAll,
  changePerson,
  closeStep,
  decideAll,
  openStep,
  signDifferences,
  signHold,
  signIn,
  stillMissing,
  typeDrawing,
} from './hands.ts'
import { TEST_YARD } from './yard.ts'

const BIN = fileURLToPath(new URL('../packages/cli/bin/castwright.js', import.meta.url))
const JOB = 'J1'
const MARK = 'W1'
const PANEL = `${JOB}/${MARK}`
const ENGINEER = { name: 'Ada Engineer', pin: '481516' }
const BEFORE_SET: readonly StepId[] = ['steel-in', 'cut-bend', 'cage', 'mould']
const BEFORE_STRIP: readonly StepId[] = ['deliver', 'place', 'finish', 'cure']
const AFTER_STRIP: readonly StepId[] = ['as-built', 'store', 'load', 'hand-over']

let browser: Browser
let current: Way | null = null

beforeAll(async () => {
  browser = await startBrowser()
})

afterAll(async () => {
  await browser.close()
})

afterEach(async ({ task }) => {
  if (task.result?.state === 'fail' && current !== null) {
    const open = current.context.pages().at(-1)
    await open?.screenshot({
      path: join(tmpdir(), `castwright-e2e-${task.name.replace(/\W+/g, '-')}.png`),
      fullPage: true,
    })
    await end(current)
  }
  current = null
})

/** One run of the way: a fresh server, a phone, the lead signed in. */
interface Way {
  readonly app: App
  readonly context: BrowserContext
  readonly page: Page
  readonly lead: { readonly name: string; readonly pin: string }
  readonly faults: readonly string[]
}

async function begin(tls?: { cert: string; key: string }, on = browser): Promise<Way> {
  const app = await startApp({ verb: 'serve', ...(tls ? { tls } : {}) })
  const context = await on.newContext({
    ...PHONE,
    acceptDownloads: true,
  })
  const faults = watchFaults(context)
  const page = await context.newPage()
  page.setDefaultTimeout(30_000)
  const lead = app.people.find((person) => person.role === 'lead')
  if (lead === undefined) throw new Error('the first start names no lead')
  await page.goto(app.address)
  await signIn(page, lead.name, lead.pin)
  current = { app, context, page, lead, faults }
  return current
}

async function end({ app, context }: Way): Promise<void> {
  await context.close()
  await app.stop()
}

/** Empty yard to a panel with a drawing, all by hand. */
async function setUp({ page, app }: Way): Promise<void> {
  await page.getByRole('heading', { name: 'Start here' }).waitFor()
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles({
      name: 'yard.json',
      mimeType: 'application/json',
      buffer: Buffer.from(JSON.stringify(TEST_YARD)),
    })
  await page.getByRole('link', { name: 'Enter a drawing' }).waitFor()
  await page.goto(`${app.address}/yard`)
  await addPerson(page, ENGINEER.name, 'engineer', ENGINEER.pin)
  await page.goto(`${app.address}/drawing/new`)
  await typeDrawing(page, JOB, MARK)
}

/** One step that is no hold: everything answered, what is not good decided, closed. */
async function workStep({ page, app }: Way, step: StepId): Promise<void> {
  await openStep(page, app.address, PANEL, step)
  if (step === 'deliver') await enterPour(page)
  if (step === 'cure') await enterLog(page)
  await answerAll(page)
  if (step === 'hand-over') await handOver(page)
  await decideAll(page)
  expect(await stillMissing(page), step).toEqual([])
  await closeStep(page)
}

async function enterPour(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Enter the pour' }).click()
  await page.getByLabel('Water met cement').fill(localTime(-20))
  await page.getByLabel('Bed', { exact: true }).selectOption('B1')
  await page.getByLabel('Mix', { exact: true }).selectOption('K40')
  await page.getByRole('button', { name: 'Record the pour' }).click()
  await page.getByRole('button', { name: 'Correct the pour' }).waitFor()
}

async function enterLog(page: Page): Promise<void> {
  const rows = Array.from({ length: 21 }, (_, hour) => `${hour},${20 + Math.min(hour, 8)}`)
  await page.getByRole('button', { name: 'Bring in a log' }).click()
  await page.getByLabel('Logger file').setInputFiles({
    name: 'log.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from(`hours,celsius\n${rows.join('\n')}\n`),
  })
  await page.getByRole('button', { name: 'Record the log' }).click()
  await page.getByRole('button', { name: 'Bring in a log' }).waitFor()
}

/** Hours from now as a field of day and time takes them, in the yard's zone (UTC). */
function localTime(hours: number): string {
  return new Date(Date.now() + hours * 3_600_000).toISOString().slice(0, 16)
}

async function openSet(way: Way): Promise<void> {
  await openStep(way.page, way.app.address, PANEL, 'set')
  await answerAll(way.page)
  expect(await stillMissing(way.page)).toEqual([])
  await signHold(way.page, way.lead.name, way.lead.pin)
  await way.page.getByText('The hold is open').first().waitFor()
}

/** Everything that the first lift waits for; the signature is not in it. */
async function readyToStrip(way: Way): Promise<void> {
  const { page, app, lead } = way
  await openStep(page, app.address, PANEL, 'strip')
  await answerAll(page)
  for (const [specimen, strength] of [
    ['C1', '24.5'],
    ['C2', '25.1'],
  ] as const) {
    await page.getByRole('button', { name: 'Enter a result' }).click()
    await page.getByLabel('Specimen').fill(specimen)
    await page.getByRole('textbox', { name: 'Strength' }).fill(strength)
    await page.getByRole('button', { name: 'Record the result' }).click()
    await page.getByRole('button', { name: 'Enter a result' }).waitFor()
  }
  expect((await stillMissing(page)).join()).toContain('Lifting design')
  await changePerson(page, ENGINEER.name, ENGINEER.pin)
  await openStep(page, app.address, PANEL, 'strip')
  await page.getByRole('button', { name: /^Confirm/ }).click()
  await page
    .getByRole('button', { name: /^Confirm/ })
    .last()
    .click()
  await page.getByText(/^Confirmed:/).waitFor()
  await changePerson(page, lead.name, lead.pin)
  await openStep(page, app.address, PANEL, 'strip')
  // The design is confirmed and holds, ours does not pass: the lead cannot open it, nor sign the difference.
  const waiting = await stillMissing(page)
  expect(waiting.length).toBeGreaterThan(0)
  expect(waiting.every((text) => /a difference signed by an engineer with a reason$/.test(text))).toBe(true)
  expect(await page.getByRole('button', { name: /^Sign this difference/ }).count()).toBe(0)
  expect(await page.getByRole('button', { name: /^Sign: opens/ }).count()).toBe(0)
  await changePerson(page, ENGINEER.name, ENGINEER.pin)
  await openStep(page, app.address, PANEL, 'strip')
  expect(await signDifferences(page)).toBe(waiting.length)
  await changePerson(page, lead.name, lead.pin)
  await openStep(page, app.address, PANEL, 'strip')
  expect(await stillMissing(page)).toEqual([])
  await page
    .getByText(/differences? (is|are) signed by an engineer/)
    .first()
    .waitFor()
}

async function openStrip(way: Way): Promise<void> {
  await readyToStrip(way)
  await signHold(way.page, way.lead.name, way.lead.pin)
  await way.page.getByText('The hold is open').first().waitFor()
}

let handed: Buffer | null = null

async function handOver(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Hand over the passport' }).click()
  await page.getByLabel('To whom').fill('site foreman')
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page
      .getByRole('button', { name: /^(Save|Record|Hand)/ })
      .last()
      .click(),
  ])
  handed = readFileSync(await download.path())
}

/** Checks the file as a stranger would: on the page that needs no server, and with the command line. */
async function checkPassport({ app, context, page: before }: Way): Promise<void> {
  if (handed === null) throw new Error('no passport was handed over')
  const { publicKey } = (await ask(before, '/api/key')) as { publicKey: string }
  const page = await context.newPage()
  await page.goto(`${app.address}/verify`)
  await page.getByLabel('Key that the yard publishes').fill(publicKey)
  const bent = Buffer.from(handed)
  const at = bent.indexOf('"thickness":160')
  expect(at).toBeGreaterThan(0)
  bent[at + 12] = '2'.charCodeAt(0)
  for (const [bytes, words] of [
    [handed, /^Everything fits: bytes, proofs, head and signature/],
    [bent, /drawing\.thickness: found 260, expected 160/],
  ] as const) {
    await page
      .getByLabel('Passport file')
      .setInputFiles({ name: 'w.json', mimeType: 'application/json', buffer: bytes })
    await page.getByText(words).first().waitFor()
  }
  await page.close()

  const verify = (bytes: Buffer): { code: number; out: { verdict: string; problems: { at: string }[] } } => {
    const file = join(tmpdir(), `castwright-passport-${process.pid}.json`)
    writeFileSync(file, bytes)
    try {
      const out = execFileSync(process.execPath, [BIN, 'verify', file, '--key', publicKey, '--json'], {
        encoding: 'utf8',
      })
      return { code: 0, out: JSON.parse(out) }
    } catch (error) {
      const { status, stdout } = error as { status: number; stdout: string }
      return { code: status, out: JSON.parse(stdout) }
    }
  }
  expect(verify(handed)).toMatchObject({ code: 0, out: { verdict: 'pass', problems: [] } })
  const broken = verify(bent)
  expect(broken).toMatchObject({ code: 1, out: { verdict: 'fail' } })
  expect(JSON.stringify(broken.out.problems)).toContain('thickness')
}

async function entriesOnServer({ page }: Way): Promise<StoredEntry[]> {
  const { entries } = (await ask(page, '/api/entries?after=-1&limit=1000')) as { entries: StoredEntry[] }
  return entries
}

/** Asks the server from within the page, so that its certificate and its session count. */
function ask(page: Page, path: string): Promise<unknown> {
  return page.evaluate((address) => fetch(address).then((answer) => answer.json()), path)
}

describe('a panel from its drawing to its passport, on a phone of 360 px', () => {
  it('with the app and nothing else', async () => {
    const way = await begin()
    const { page } = way
    await setUp(way)
    for (const step of BEFORE_SET) await workStep(way, step)
    await openSet(way)
    for (const step of BEFORE_STRIP) await workStep(way, step)
    await openStrip(way)
    for (const step of AFTER_STRIP) await workStep(way, step)
    await page.getByRole('heading', { name: 'Decided at earlier steps' }).waitFor()
    await checkPassport(way)
    const entries = await entriesOnServer(way)
    expect(entries.filter(({ kind }) => kind === 'difference').length).toBeGreaterThan(0)
    expect(entries.filter(({ kind }) => kind === 'opening').map(({ step }) => step)).toEqual(['set', 'strip'])
    expect(entries.filter(({ kind }) => kind === 'close')).toHaveLength(STEP_IDS.length - 2)
    expect(way.faults).toEqual([])
    await end(way)
  })

  it('with the network cut in the middle', async () => {
    const way = await begin()
    const { page, context, app } = way
    await setUp(way)
    for (const step of BEFORE_SET) await workStep(way, step)
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => true))
    await openStep(page, app.address, PANEL, 'set')
    await answerAll(page)
    await page.getByText('all in the record').first().waitFor()
    const before = (await entriesOnServer(way)).length

    await context.setOffline(true)
    await page.reload()
    await page.locator('#card-question').waitFor()
    await page
      .getByLabel('Photo file')
      .setInputFiles({ name: 'cage.png', mimeType: 'image/png', buffer: PIXEL })
    await signHold(page, way.lead.name, way.lead.pin)
    await page.getByText('Signed here, opens when it is in the record.').waitFor()
    await page.reload()
    await page.locator('#card-question').waitFor()
    await page.getByText('Signed here, opens when it is in the record').waitFor()
    expect(await page.getByText(/kept here/i).count()).toBeGreaterThan(0)
    await page.close()

    await context.setOffline(false)
    const again = await context.newPage()
    again.setDefaultTimeout(30_000)
    await openStep(again, app.address, PANEL, 'set')
    await again.getByText('The hold is open').waitFor({ timeout: 60_000 })
    const entries = await entriesOnServer({ ...way, page: again })
    expect(
      entries
        .slice(before)
        .map(({ kind }) => kind)
        .sort(),
    ).toEqual(['opening', 'photo', 'request'])
    expect(new Set(entries.map(({ id }) => id)).size).toBe(entries.length)

    const on: Way = { ...way, page: again }
    for (const step of BEFORE_STRIP) await workStep(on, step)
    await openStrip(on)
    for (const step of AFTER_STRIP) await workStep(on, step)
    await checkPassport(on)
    await end(way)
  })

  it('over HTTPS with a certificate of the yard’s own', async () => {
    const tls = selfSigned()
    const trusting = await startBrowser(tls.cert)
    const way = await begin(tls, trusting)
    expect(way.app.address.startsWith('https://')).toBe(true)
    const cookies = await way.context.cookies()
    expect(cookies.find(({ name }) => name === 'castwright_session')).toMatchObject({
      secure: true,
      httpOnly: true,
      sameSite: 'Strict',
    })
    await setUp(way)
    for (const step of BEFORE_SET) await workStep(way, step)
    await openSet(way)
    for (const step of BEFORE_STRIP) await workStep(way, step)
    await openStrip(way)
    for (const step of AFTER_STRIP) await workStep(way, step)
    await checkPassport(way)
    await way.page.evaluate(() => navigator.serviceWorker.ready.then(() => true))
    await way.context.setOffline(true)
    await way.page.reload()
    await way.page.locator('#card-question').waitFor()
    await way.context.setOffline(false)
    expect(way.faults).toEqual([])
    await end(way)
    await trusting.close()
  })
})

/** One pixel, PNG. */
const PIXEL = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg==',
  'base64',
)
