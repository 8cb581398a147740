import { DEMO_CLOCK } from '@castwright/demo'
import type { Browser, BrowserContext, Page } from 'playwright-core'
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

async function phoneOf(name: string): Promise<{ context: BrowserContext; page: Page; faults: string[] }> {
  const context = await browser.newContext({ ...PHONE, colorScheme: 'light', reducedMotion: 'reduce' })
  const faults = watchFaults(context)
  const page = await context.newPage()
  page.setDefaultTimeout(20_000)
  await page.goto(`${app.address}/pours`)
  const person = app.people.find((each) => each.name.startsWith(name))
  if (person === undefined) throw new Error(`no ${name}`)
  await signIn(page, person.name, person.pin)
  await page.getByRole('heading', { name: 'E03, Saltmarsh Library' }).waitFor()
  await page
    .getByText(/^Loads: \d on record/)
    .first()
    .waitFor()
  return { context, page, faults }
}

describe('concrete arrives, on a phone', () => {
  it('a truck counts by itself, a bad load is judged and sent back without a network, and stays in sight', async () => {
    const { context, page, faults } = await phoneOf('Orla')
    const timer = page.getByRole('timer', { name: 'Load 7374' })
    await timer.waitFor()
    expect(await timer.textContent()).toMatch(/left, soon too old/)
    const first = await timer.textContent()
    await expect.poll(() => timer.textContent(), { timeout: 5000 }).not.toBe(first)
    await page.evaluate(async () => void (await navigator.serviceWorker.ready))
    await context.setOffline(true)
    const pour = page.locator('.pours-list > li').filter({ hasText: 'E03, Saltmarsh Library' })
    await pour.getByRole('button', { name: 'Enter a docket' }).click()
    await expectNoFaultsOfAxe(page)
    await pour.getByLabel('Number', { exact: true }).fill('7399')
    await pour.getByLabel('Truck', { exact: true }).fill('9')
    await pour.getByLabel('Mix', { exact: true }).selectOption('K40')
    await pour.getByLabel('Volume of this load').fill('1,5')
    await pour.getByRole('button', { name: /^Now ?: Batched/ }).click()
    await pour.getByRole('button', { name: /^Now ?: Arrived/ }).click()
    await pour.getByLabel('Slump measured').fill('190')
    await pour.getByLabel('Concrete temperature').fill('19')
    await pour.getByLabel('Water added here').fill('0')
    await pour.getByRole('button', { name: 'Record the docket' }).click()
    const load = pour.locator('.load').filter({ hasText: 'Load 7399' })
    await load.getByText('kept here').waitFor()
    await load.locator('.load-against').getByText('slump').waitFor()
    await page.getByRole('timer', { name: 'Load 7399' }).waitFor()
    await load.getByRole('button', { name: /^send back ?: load 7399/ }).click()
    await load.getByRole('button', { name: /^Send the load back/ }).click()
    await load.getByText('Write the reason: it stands in the record with your name.').waitFor()
    await load.getByLabel('Why it goes back').fill('Slump 190, runs off the chute')
    await load.getByRole('button', { name: /^Send the load back/ }).click()
    await load.getByText('Sent back:').waitFor()
    await expect.poll(() => page.getByRole('timer', { name: 'Load 7399' }).count()).toBe(0)
    await expectNoFaultsOfAxe(page)
    // It still discharges: no decision is asked for before its end.
    await page.goto(`${app.address}/panel/Saltmarsh%20Library/E03?step=deliver`)
    await page.getByText('Load 7374: still discharging').first().waitFor()
    await page.goto(`${app.address}/pours`)
    // The other truck is finished with one tap, still without a network.
    await pour.getByRole('button', { name: /^Discharge finished ?: load 7374/ }).click()
    await expect.poll(() => timer.count()).toBe(0)
    await context.setOffline(false)
    await page.goto(`${app.address}/panel/Saltmarsh%20Library/E03?step=deliver`)
    await page.getByRole('heading', { name: 'Is this the concrete that was ordered' }).waitFor()
    await page.getByText(/^Close concrete arrives as Orla/).waitFor()
    await page.goto(`${app.address}/panel/Saltmarsh%20Library/E03?step=place`)
    const carried = page.locator('.carried')
    await carried.getByText('Load 7399').waitFor()
    await carried.getByText(/sent back: Slump 190/).waitFor()
    expect(faults).toEqual([])
    await context.close()
  })

  it('the floor enters and finishes, and decides nothing; a list with a bad row is not taken', async () => {
    const { context, page, faults } = await phoneOf('Sam')
    expect(await page.getByRole('button', { name: /^send back|^not in this panel|^accept/ }).count()).toBe(0)
    await page.getByText('Bring in a list of dockets').click()
    const list = page.getByLabel('List from the supplier')
    const file = (text: string) => ({ name: 'day.csv', mimeType: 'text/csv', buffer: Buffer.from(text) })
    await list.setInputFiles(file('docket,panel,volume,batched\n9001,S06,3,14:50\n9002,S06,three,15:10\n'))
    await page.getByText('Row 3, column C (volume): found "three", expected a number').waitFor()
    expect(await page.getByRole('button', { name: 'Record 1 load' }).isDisabled()).toBe(true)
    await expectNoFaultsOfAxe(page)
    await list.setInputFiles(file('docket,panel,volume,batched\n9001,S06,3,14:50\n9002,S06,2,15:10\n'))
    await page.getByRole('button', { name: 'Record 2 loads' }).click()
    await page.getByText('2 loads recorded.').waitFor()
    const other = page.locator('.pours-list > li').filter({ hasText: 'S06, Saltmarsh Library' })
    await other.getByText('Loads: 3 on record').waitFor()
    expect(faults).toEqual([])
    await context.close()
  })
})
