import { readFileSync } from 'node:fs'
import { DEMO_CLOCK } from '@castwright/demo'
import type { StoredEntry } from '@castwright/record'
import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { type App, PHONE, startApp, startBrowser } from './app.ts'
import { signIn } from './hands.ts'

const CARD = '/panel/Saltmarsh%20Library/E03?step=place'

let app: App
let browser: Browser

beforeAll(async () => {
  browser = await startBrowser()
  app = await startApp({ verb: 'demo', clock: DEMO_CLOCK })
})

afterAll(async () => {
  await browser.close()
  await app.stop()
})

async function phone(): Promise<{ context: BrowserContext; page: Page }> {
  const context = await browser.newContext({ ...PHONE, acceptDownloads: true })
  const page = await context.newPage()
  page.setDefaultTimeout(30_000)
  const person = app.people.find(({ role }) => role === 'floor')
  if (person === undefined) throw new Error('nobody of the floor')
  await page.goto(app.address)
  await signIn(page, person.name, person.pin)
  return { context, page }
}

async function answerOne(page: Page): Promise<string> {
  const button = page.getByRole('button', { name: /^As it should be/ }).first()
  await button.waitFor()
  const name = (await button.textContent()) ?? ''
  await button.click()
  await page.getByRole('button', { name, exact: true }).waitFor({ state: 'detached' })
  return name
}

/** The last entries of the record, oldest first, however long it is. */
async function newest(page: Page, count: number): Promise<StoredEntry[]> {
  const entries = await page.evaluate(async (wanted) => {
    const ask = (path: string) => fetch(path).then((answer) => answer.json())
    const { size } = (await ask('/api/entries?after=-1&limit=1')) as { size: number }
    return ((await ask(`/api/entries?after=${size - wanted - 1}&limit=100`)) as { entries: unknown[] })
      .entries
  }, count)
  return (entries as StoredEntry[]).slice(-count)
}

it('two windows of one phone keep one chain', async () => {
  const { context, page } = await phone()
  const other = await context.newPage()
  other.setDefaultTimeout(30_000)
  await page.goto(`${app.address}${CARD}`)
  await other.goto(`${app.address}/panel/Saltmarsh%20Library/S06?step=finish`)
  await Promise.all([answerOne(page), answerOne(other)])
  await expect
    .poll(async () => (await newest(page, 2)).map(({ device }) => device.counter), { timeout: 30_000 })
    .toEqual([1, 2])
  const [first, second] = await newest(page, 2)
  expect(second?.device.id).toBe(first?.device.id)
  expect(second?.device.previous).toMatch(/^[0-9a-f]{64}$/)
  await context.close()
})

it('what is kept here can be saved to a file and read back on another phone', async () => {
  const { context, page } = await phone()
  await page.goto(`${app.address}${CARD}`)
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => true))
  await context.setOffline(true)
  await answerOne(page)
  await page.getByRole('link', { name: 'Yard' }).click()
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: /^Save 1 unsent/ }).click(),
  ])
  const kept = readFileSync(await download.path(), 'utf8')
  expect(kept).toContain('castwright')
  await context.close()

  const next = await phone()
  const before = (await newest(next.page, 1))[0]?.index ?? -1
  await next.page.goto(`${app.address}/yard`)
  await next.page
    .getByLabel('Read unsent entries back from a file')
    .setInputFiles({ name: 'kept.json', mimeType: 'application/json', buffer: Buffer.from(kept) })
  await expect.poll(async () => (await newest(next.page, 1))[0]?.index, { timeout: 30_000 }).toBe(before + 1)
  await next.context.close()
})
