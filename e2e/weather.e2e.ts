import AxeBuilder from '@axe-core/playwright'
import { DEMO_CLOCK } from '@castwright/demo'
import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { type App, PHONE, startApp, startBrowser, watchFaults } from './app.ts'
import { signIn } from './hands.ts'

const PANEL = '/strength/Saltmarsh%20Library/S06'

let app: App
let browser: Browser
let context: BrowserContext
let page: Page
let faults: readonly string[]

beforeAll(async () => {
  browser = await startBrowser()
  app = await startApp({ verb: 'demo', clock: DEMO_CLOCK })
  context = await browser.newContext({ ...PHONE, reducedMotion: 'reduce' })
  faults = watchFaults(context)
  page = await context.newPage()
  await page.clock.setFixedTime(DEMO_CLOCK)
  page.setDefaultTimeout(30_000)
  const lead = app.people.find(({ role }) => role === 'lead')
  if (lead === undefined) throw new Error('found no lead')
  await page.goto(app.address)
  await signIn(page, lead.name, lead.pin)
})

afterAll(async () => {
  await browser.close()
  await app.stop()
})

async function inspect(): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze()
  expect(
    violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(' | ')}`),
  ).toEqual([])
  expect(
    await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth),
  ).toBeLessThanOrEqual(0)
}

/** Two days of the yard's clock from the hour after the job's, by the hour; one row may be put in place of another. */
function fileOf(air: (hour: number) => number, odd: Readonly<Record<number, string>> = {}): Buffer {
  const start = Date.parse('2026-09-16T15:00:00.000Z') // 16:00 in the yard
  const rows = Array.from({ length: 40 }, (_, hour) => {
    const wall = new Date(start + (hour + 1) * 3_600_000).toISOString()
    return odd[hour] ?? `${wall.slice(0, 10)} ${wall.slice(11, 16)},${air(hour)},85,12`
  })
  return Buffer.from(`time,air °C,humidity %,wind km/h\n${rows.join('\n')}\n`)
}

async function choose(buffer: Buffer): Promise<void> {
  await page.getByLabel('Weather file').setInputFiles({ name: 'forecast.csv', mimeType: 'text/csv', buffer })
}

it('a forecast with rows that cannot be is refused row by row, with what came and what was expected', async () => {
  await page.goto(`${app.address}/weather`)
  await page.getByText('Forecast to Fri 12:00').waitFor()
  await inspect()
  await choose(
    fileOf(() => 4, {
      3: '2026-09-16 19:00,412,85,12',
      5: '2026-09-16 21:00,4,185,12',
      7: 'soon,4,85,12',
      12: '2026-09-17 04:00,19.5,85,12',
    }),
  )
  const alert = page.getByRole('alert')
  await alert.getByText('3 cells of this file cannot be right').waitFor()
  await alert.getByText('Row 5, column B (air): found 412, expected −60 to 60 °C').waitFor()
  await alert.getByText('Row 7, column C (humidity): found 185, expected 0 to 100 %').waitFor()
  await alert.getByText('Row 9, column A (time): found "soon"').waitFor()
  await page.getByText('air reads 19.5 °C, 15.5 K from the readings around it').waitFor()
  await page.getByRole('button', { name: 'Shut: 3 cells cannot be right' }).waitFor()
  await inspect()
})

it('a file without a clock is not taken, and says so', async () => {
  await choose(Buffer.from('hours,air\n0,12\n1,11\n2,11.5\n'))
  await page.getByText('no column of times on a clock').waitFor()
  await inspect()
})

it('a sound forecast is looked at, recorded, and moves the computed night', async () => {
  await page.goto(`${app.address}${PANEL}`)
  const night = page.getByRole('region', { name: 'The night, computed' })
  const sentence = night.locator('.night-sentence')
  await sentence.waitFor()
  const before = await sentence.textContent()
  expect(before).toMatch(/^Coldest \d+\.\d °C .* at the top face; strip strength \d+\.\d MPa expected/)
  await inspect()
  await page.goto(`${app.address}/weather`)
  await choose(fileOf((hour) => 2 + (hour % 2) / 2))
  await page.getByText('40 rows, Wed 16:00 to Fri 07:00 on the yard’s clock').waitFor()
  await inspect()
  await page.getByRole('button', { name: 'Record the forecast' }).click()
  await page.getByText('40 hours of forecast from forecast.csv.').first().waitFor()
  await page.goto(`${app.address}${PANEL}`)
  await sentence.waitFor()
  await expect.poll(() => sentence.textContent()).not.toBe(before)
})

it('a warmer cover is tried on it and not recorded', async () => {
  const night = page.getByRole('region', { name: 'The night, computed' })
  await night.getByText('Try another cover, hour or heating').click()
  await night.getByLabel('Cover', { exact: true }).selectOption('foam mat')
  await night.getByText('Tried, not recorded').waitFor()
  await inspect()
  await night.getByRole('button', { name: 'Back to the night as it is' }).click()
  await night.getByText('Tried, not recorded').waitFor({ state: 'detached' })
})

it('a forecast typed for a few hours is put in straight and kept', async () => {
  await page.goto(`${app.address}/weather`)
  const type = page.getByRole('region', { name: 'Type a forecast' })
  const first = type.getByRole('group', { name: 'Time 1' })
  await first.getByLabel('Air').fill('99')
  await type.getByText('found 99, expected −60 to 60 °C').waitFor()
  await inspect()
  for (const [at, air] of [14, 9, 6, 8].entries())
    await type
      .getByRole('group', { name: `Time ${at + 1}` })
      .getByLabel('Air')
      .fill(String(air))
  await type.getByRole('button', { name: 'Record this forecast' }).click()
  await type.getByText('16 hours of forecast.').waitFor()
  expect(faults).toEqual([])
})

it('what was typed is taken back with a reason', async () => {
  await page.goto(`${app.address}/weather`)
  await page.getByText('What was recorded last, to take back').click()
  const typed = page.getByText('Forecast, Wed 16:00 to Thu 07:00, 16 readings', { exact: true })
  await typed.waitFor()
  await page.getByRole('button', { name: /^take back.*to Thu 07:00/ }).click()
  await page.getByRole('button', { name: /^Take it back/ }).click()
  await page.getByText('Write the reason').waitFor()
  await inspect()
  await page.getByLabel('Why it is wrong').fill('Typed for the wrong night.')
  await page.getByRole('button', { name: /^Take it back/ }).click()
  await typed.waitFor({ state: 'detached' })
})

it('the cure card has the night’s findings as advice, with its picture', async () => {
  await page.goto(`${app.address}/panel/Saltmarsh%20Library/S06?step=cure`)
  await page.getByRole('region', { name: 'The night, computed' }).locator('svg').first().waitFor()
  await page.getByText('computed, as advice').first().waitFor({ state: 'attached' })
  await inspect()
  expect(faults).toEqual([])
})
