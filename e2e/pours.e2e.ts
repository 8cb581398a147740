import AxeBuilder from '@axe-core/playwright'
import { DEMO_CLOCK } from '@castwright/demo'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type App, DESK, PHONE, startApp, startBrowser, watchFaults } from './app.ts'
import { signIn } from './hands.ts'

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

async function expectNoFaultsOfAxe(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze()
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`)).toEqual([])
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true)
}

describe.each([
  ['a phone', { ...PHONE, colorScheme: 'dark' }],
  ['a tablet', { ...DESK, viewport: { width: 768, height: 1024 }, hasTouch: true, colorScheme: 'light' }],
] as const)('a pour followed on %s', (_, options) => {
  it('keeps the walk through a lost network and a page opened anew, shows what was passed over, and records the zone', async () => {
    const context = await browser.newContext({ ...options, reducedMotion: 'reduce' })
    const faults = watchFaults(context)
    const page = await context.newPage()
    page.setDefaultTimeout(20_000)
    await page.goto(`${app.address}/pours`)
    const hand = app.people.find(({ name }) => name.startsWith('Sam')) ?? app.people[0]
    if (hand === undefined) throw new Error('nobody to sign in')
    await signIn(page, hand.name, hand.pin)
    await page.getByRole('heading', { name: 'Pours', level: 1 }).waitFor()
    await page.getByText('E03, Saltmarsh Library').waitFor()
    await expectNoFaultsOfAxe(page)
    await page.goto(`${app.address}/pours/Saltmarsh%20Library/E03`)
    await page.getByText(/^Next is 1 of \d+\.$/).waitFor()
    await expectNoFaultsOfAxe(page)
    await page.getByRole('button', { name: 'Vibrator in' }).click()
    await page.getByText(/^Insertion 1 of/).waitFor()
    await page.evaluate(async () => void (await navigator.serviceWorker.ready))
    await context.setOffline(true)
    const onTo = page.getByRole('button', { name: 'Out, on to the next' })
    for (let at = 2; at <= 4; at += 1) {
      await onTo.click()
      await page.getByText(new RegExp(`^Insertion ${at} of`)).waitFor()
    }
    await page.reload()
    await page.getByText(/^Insertion 4 of/).waitFor()
    await page.getByText(/^Shorter than 5 s: 1, 2, 3/).waitFor()
    await page.getByRole('button', { name: 'Out, wait' }).click()
    await page.getByRole('button', { name: 'Take back' }).click()
    await page.getByText(/^Next is 4 of/).waitFor()
    await page.getByRole('button', { name: 'In at the next' }).click()
    await page.getByRole('button', { name: 'Out, wait' }).click()
    await page.getByRole('button', { name: /^Record zone 1 as not all reached/ }).click()
    await page.getByText(/Zone 1.*recorded as not reached/).waitFor()
    await context.setOffline(false)
    await page.goto(`${app.address}/panel/Saltmarsh%20Library/E03?step=place`)
    await page.getByText('Zone 1: placed and vibrated').first().waitFor()
    await page.getByText('fails').first().waitFor()
    expect(faults).toEqual([])
    await context.close()
  })
})
