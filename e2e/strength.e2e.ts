import AxeBuilder from '@axe-core/playwright'
import { DEMO_CLOCK } from '@castwright/demo'
import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type App, PHONE, startApp, startBrowser, watchFaults } from './app.ts'
import { signIn } from './hands.ts'

let app: App
let browser: Browser
let context: BrowserContext
let page: Page
let faults: readonly string[]

beforeAll(async () => {
  browser = await startBrowser()
  app = await startApp({ verb: 'demo', clock: DEMO_CLOCK })
  context = await browser.newContext({ ...PHONE, colorScheme: 'light', reducedMotion: 'reduce' })
  faults = watchFaults(context)
  page = await context.newPage()
  page.setDefaultTimeout(20_000)
  await page.clock.setFixedTime(new Date(DEMO_CLOCK))
  await page.goto(`${app.address}/strength/specimens`)
  const hand = app.people.find(({ name }) => name.startsWith('Lena')) ?? app.people[0]
  if (hand === undefined) throw new Error('nobody to sign in')
  await signIn(page, hand.name, hand.pin)
})

afterAll(async () => {
  await context.close()
  await browser.close()
  await app.stop()
})

async function expectNoFaultsOfAxe(): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze()
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`)).toEqual([])
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true)
}

describe('the room of strength on a phone', () => {
  it('tells what is due, and takes a result in two taps and a number', async () => {
    await page.getByText('1 overdue, 1 due today', { exact: false }).waitFor()
    await expectNoFaultsOfAxe()
    await page.getByRole('button', { name: 'Enter T01-4' }).click()
    await expectNoFaultsOfAxe()
    // The field has the focus: the number is typed where one is.
    await page.keyboard.type('58,6')
    await page.getByRole('button', { name: 'Record', exact: true }).click()
    await page.getByText('1 overdue, 0 due today', { exact: false }).waitFor()
    await page
      .getByText(/^8 tests$|^\d+ tests$/)
      .last()
      .click()
    await page
      .getByText(/58\.6 MPa/)
      .first()
      .waitFor()
  })

  it('takes the result to the panel, whose curve says what it rests on', async () => {
    await page.goto(`${app.address}/strength/Saltmarsh%20Library/T01`)
    await page.getByText(/brought up to date by .*T01-4/).waitFor()
    await page.getByRole('heading', { name: /^Probability of .* MPa by the hour$/ }).waitFor()
    await page.getByRole('heading', { name: 'How often such a band held' }).waitFor()
    await page.getByText('I-C. Yeh', { exact: false }).waitFor()
    await expectNoFaultsOfAxe()
  })

  it('shows single tests, ranges and what is not known yet', async () => {
    await page.goto(`${app.address}/strength/results`)
    await page.getByRole('heading', { name: /^Single tests: / }).waitFor()
    await expectNoFaultsOfAxe()
    await page
      .getByLabel('Mix, age and specimens')
      .selectOption({ label: 'K50, 7 d, cylinders by the standard: 1 test' })
    await page.getByText('No limits yet').waitFor()
    await expectNoFaultsOfAxe()
  })

  it('plans specimens where the concrete arrives', async () => {
    await page.goto(`${app.address}/panel/Saltmarsh%20Library/E03?step=deliver`)
    await page.getByRole('button', { name: 'Enter specimens' }).click()
    await expectNoFaultsOfAxe()
    await page.getByRole('button', { name: 'Record the specimens' }).click()
    await page.getByText('E03-S2', { exact: false }).first().waitFor()
  })

  it('reports no error', () => {
    expect(faults).toEqual([])
  })
})
