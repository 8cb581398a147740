import AxeBuilder from '@axe-core/playwright'
import { DEMO_CLOCK } from '@castwright/demo'
import type { StoredEntry } from '@castwright/record'
import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { type App, DESK, PHONE, startApp, startBrowser, watchFaults } from './app.ts'
import { openStep, signIn } from './hands.ts'

const PANEL = 'Saltmarsh Library/C02'

let app: App
let browser: Browser
let context: BrowserContext
let page: Page
let faults: readonly string[]
let key = ''

beforeAll(async () => {
  browser = await startBrowser()
  app = await startApp({ verb: 'demo', clock: DEMO_CLOCK })
  context = await browser.newContext(PHONE)
  faults = watchFaults(context)
  page = await context.newPage()
  page.setDefaultTimeout(30_000)
  await enter(page, 'lead')
})

afterAll(async () => {
  await browser.close()
  await app.stop()
})

async function enter(on: Page, role: string): Promise<void> {
  const person = app.people.find((one) => one.role === role)
  if (person === undefined) throw new Error(`found nobody who is ${role}`)
  await on.goto(app.address)
  await signIn(on, person.name, person.pin)
}

/** When the panel's concrete was mixed, by the record. */
async function mixed(): Promise<number> {
  const entries = (await page.evaluate(async () => {
    const found: unknown[] = []
    for (;;) {
      const answer = await fetch(`/api/entries?after=${found.length - 1}&limit=1000`)
      const { entries: some, size } = (await answer.json()) as { entries: unknown[]; size: number }
      found.push(...some)
      if (found.length >= size) return found
    }
  })) as StoredEntry[]
  const cast = entries.filter(({ kind, subject }) => kind === 'cast' && subject.id === PANEL).at(-1)
  if (cast === undefined) throw new Error(`found no pour of ${PANEL}`)
  return Date.parse((cast.value as { at: string }).at)
}

/** As a logger does: no cookie, no origin, its key. */
function send(readings: unknown, bearer = key): Promise<Response> {
  return fetch(`${app.address}/api/readings`, {
    method: 'POST',
    headers: { authorization: `Bearer ${bearer}`, 'content-type': 'application/json' },
    body: JSON.stringify({ readings }),
  })
}

async function inspect(on: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page: on }).analyze()
  expect(
    violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(' | ')}`),
  ).toEqual([])
  expect(
    await on.evaluate(() => document.documentElement.scrollWidth - window.innerWidth),
  ).toBeLessThanOrEqual(0)
}

it('a lead makes a logger on a phone and is shown its key', async () => {
  await page.goto(`${app.address}/yard`)
  await page.getByText('Add a logger').click()
  await page.getByLabel('Name of the logger').fill('North box')
  await page.getByLabel('Panel that it reads for', { exact: true }).selectOption(PANEL)
  await page.getByRole('button', { name: 'Add the logger' }).click()
  const shown = page.getByRole('region', { name: 'Key of North box' })
  await shown.waitFor()
  key = await shown.getByLabel('Key', { exact: true }).inputValue()
  expect(key).toMatch(/^[A-Za-z0-9_-]{43}$/)
  await context.grantPermissions(['clipboard-read', 'clipboard-write'])
  await shown.getByRole('button', { name: 'Copy the key' }).click()
  await shown.getByText('Copied.').waitFor()
  expect(await page.evaluate(() => navigator.clipboard.readText())).toBe(key)
  await page.getByRole('list', { name: 'Loggers' }).getByText('Nothing yet').waitFor()
  await inspect(page)
})

it('its readings come in by the key and stand on the card of the panel', async () => {
  const start = await mixed()
  const readings = [0.5, 1, 1.5, 2].flatMap((hours) =>
    ['core', 'face'].map((channel) => ({
      channel: `north ${channel}`,
      at: new Date(start + hours * 3_600_000).toISOString(),
      celsius: channel === 'core' ? 20 + 2 * hours : 18,
    })),
  )
  const first = await send(readings)
  expect(first.status).toBe(200)
  expect(await first.json()).toMatchObject({ panel: PANEL, stored: 8, known: 0, empty: 0 })
  expect(await (await send(readings)).json()).toMatchObject({ stored: 0, known: 8 })
  await page
    .getByRole('list', { name: 'Loggers' })
    .getByText(/north (core|face) \d+ °C/)
    .waitFor()
  await openStep(page, app.address, encodeURI(PANEL), 'cure')
  await page
    .getByText(/north core, 4 readings to 2.00 h/)
    .first()
    .waitFor()
  await page
    .getByText(/north face, 4 readings to 2.00 h/)
    .first()
    .waitFor()
})

it('a wrong key, a reading of before mixing and a cookie alone are refused', async () => {
  const start = await mixed()
  const early = [{ channel: 'north core', at: new Date(start - 60_000).toISOString(), celsius: 20 }]
  expect((await send(early, 'x'.repeat(43))).status).toBe(401)
  const refused = await send(early)
  expect(refused.status).toBe(422)
  expect(((await refused.json()) as { issues: { path: string }[] }).issues[0]?.path).toBe('readings[0].at')
  const status = await page.evaluate(async () => {
    const body = JSON.stringify({ readings: [{ channel: 'c', at: new Date().toISOString(), celsius: 20 }] })
    const headers = { 'content-type': 'application/json' }
    return (await fetch('/api/readings', { method: 'POST', headers, body })).status
  })
  expect(status).toBe(401)
})

it('the key is never shown again, by the app or by the server', async () => {
  await page.goto(`${app.address}/yard`)
  const list = page.getByRole('list', { name: 'Loggers' })
  await list.getByText('North box', { exact: true }).waitFor()
  expect(await page.getByRole('region', { name: /^Key of/ }).count()).toBe(0)
  expect(await page.content()).not.toContain(key)
  expect(await page.evaluate(async () => (await fetch('/api/loggers')).text())).not.toContain(key)
  await inspect(page)
})

it('the floor takes it off its panel by keyboard at a desk, and its readings have to wait', async () => {
  const desk = await browser.newContext(DESK)
  const at = await desk.newPage()
  at.setDefaultTimeout(30_000)
  await enter(at, 'floor')
  await at.goto(`${app.address}/yard`)
  const list = at.getByRole('list', { name: 'Loggers' })
  await list.getByText(`reads for ${PANEL}`).waitFor()
  expect(await at.getByText('Add a logger').count()).toBe(0)
  await list.locator('summary').focus()
  await at.keyboard.press('Enter')
  await at.getByLabel('Panel that North box reads for').selectOption('')
  await list.getByRole('button', { name: 'Move it' }).focus()
  await at.keyboard.press('Enter')
  await list.getByText('reads for no panel').waitFor()
  await inspect(at)
  const none = await send([{ channel: 'north core', at: new Date().toISOString(), celsius: 20 }])
  expect(none.status).toBe(409)
  await desk.close()
})

it('a lead closes it, and its key opens nothing', async () => {
  await page.goto(`${app.address}/yard`)
  await page.getByRole('list', { name: 'Loggers' }).locator('summary').click()
  await page.getByRole('button', { name: 'Close the logger North box' }).click()
  await page.getByText('Closed: 1').waitFor()
  const shut = await send([{ channel: 'north core', at: new Date().toISOString(), celsius: 20 }])
  expect(shut.status).toBe(403)
  expect(faults).toEqual([])
})
