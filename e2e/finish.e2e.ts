import { DEMO_CLOCK } from '@castwright/demo'
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type App, PHONE, startApp, startBrowser, watchFaults } from './app.ts'
import { signIn } from './hands.ts'
import { expectNoFaultsOfAxe } from './no-faults.ts'

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

describe.each(['light', 'dark'] as const)('a fresh surface on a phone, %s', (colorScheme) => {
  it('shows its shifted window, moves with a boot print tapped without network, and refuses a humidity that cannot be', async () => {
    const context = await browser.newContext({ ...PHONE, colorScheme, reducedMotion: 'reduce' })
    const faults = watchFaults(context)
    const page = await context.newPage()
    page.setDefaultTimeout(20_000)
    await page.clock.setFixedTime(DEMO_CLOCK)
    await page.goto(`${app.address}/panel/Saltmarsh%20Library/S06?step=finish`)
    const hand = app.people.find(({ name }) => name.startsWith('Lena')) ?? app.people[0]
    if (hand === undefined) throw new Error('nobody to sign in')
    await signIn(page, hand.name, hand.pin)
    await page.getByRole('heading', { name: 'Surface', exact: true }).waitFor()
    await page.getByText(/^Shifted .* later than planned because the concrete is/).waitFor()
    await page.getByText(/^by readings, the last 15\.2 °C on the surface at 14:06/).waitFor()
    await expectNoFaultsOfAxe(page)

    await page.evaluate(async () => void (await navigator.serviceWorker.ready))
    await context.setOffline(true)
    await page.getByRole('button', { name: /^3 mm/ }).click()
    const counts = page.getByText(/boot print of 3 mm seen at 15:10 (counts|agrees)/)
    await counts.waitFor()
    await page.reload()
    await counts.waitFor()
    await page
      .getByRole('button', { name: /take back.*Boot print/ })
      .last()
      .click()
    await counts.waitFor({ state: 'detached' })

    await page.getByRole('button', { name: 'Enter readings' }).click()
    await page.getByLabel('Humidity').fill('140')
    await page.getByLabel('Wind half a metre over it').fill('45')
    await page.getByRole('button', { name: 'Record readings' }).click()
    await page.getByText('Found 140, expected 0 to 100 %.').waitFor()
    await expectNoFaultsOfAxe(page)
    await page.getByLabel('Humidity').fill('25')
    await page.getByLabel('Air', { exact: true }).fill('16')
    await page.getByRole('button', { name: 'Record readings' }).click()
    await page.getByText(/Dries too fast|Near the line/).waitFor()
    await page.getByText('What helps here', { exact: true }).waitFor()

    await context.setOffline(false)
    await page.goto(`${app.address}/pours`)
    await page.getByText('S06, Saltmarsh Library').waitFor()
    await page
      .getByText(/^Shifted/)
      .first()
      .waitFor()
    await expectNoFaultsOfAxe(page)
    expect(faults).toEqual([])
    await context.close()
  })
})
