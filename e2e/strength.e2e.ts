import AxeBuilder from '@axe-core/playwright'
import { DEMO_CLOCK } from '@castwright/demo'
import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type App, PHONE, startApp, startBrowser, watchFaults } from './app.ts'
import { openStep, signIn, typeDrawing } from './hands.ts'
import { TEST_YARD } from './yard.ts'

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
      .getByText(/^\d+ tests$/)
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

describe('a mix of which the yard knows little', () => {
  it('stands on open tests by its proportions; one with tests of its own is held against them', async () => {
    const [k40] = TEST_YARD.mixes ?? []
    if (k40 === undefined) throw new Error('no mix')
    const { curve: _, scatter: __, ...bare } = k40
    const ages = [18, 24, 48, 72, 168, 336, 672]
    const mixes = [
      {
        ...bare,
        proportions: {
          cement: 380,
          slag: 0,
          flyAsh: 0,
          water: 165,
          superplasticizer: 5,
          coarse: 1000,
          fine: 780,
        },
      },
      {
        ...bare,
        mark: 'K45',
        scatter: 0.07,
        tests: [...ages, ...ages].map((age, i) => ({
          age,
          strength: ((58 * 0.05 * (age - 3)) / (1 + 0.05 * (age - 3))) * (1 + 0.03 * Math.sin(5 * i)),
        })),
      },
    ]
    const own = await startApp({ verb: 'serve', bring: [{ ...TEST_YARD, mixes }] })
    const phone = await browser.newContext({ ...PHONE, colorScheme: 'dark', reducedMotion: 'reduce' })
    try {
      const hand = await phone.newPage()
      hand.setDefaultTimeout(30_000)
      const lead = own.people.find(({ role }) => role === 'lead')
      if (lead === undefined) throw new Error('no lead')
      await hand.goto(`${own.address}/drawing/new`)
      await signIn(hand, lead.name, lead.pin)
      await typeDrawing(hand, 'J1', 'W1')
      await openStep(hand, own.address, 'J1/W1', 'deliver')
      await hand.getByRole('button', { name: 'Enter the pour' }).click()
      await hand
        .getByLabel('Water met cement')
        .fill(new Date(Date.now() - 20 * 3_600_000).toISOString().slice(0, 16))
      await hand.getByLabel('Bed', { exact: true }).selectOption('B1')
      await hand.getByLabel('Mix', { exact: true }).selectOption('K40')
      await hand.getByRole('button', { name: 'Record the pour' }).click()
      await hand.getByRole('button', { name: 'Correct the pour' }).waitFor()
      await hand.goto(`${own.address}/strength/J1/W1`)
      await hand.getByText('open tests of 339 mixes', { exact: false }).waitFor()
      await hand.getByText('It times no lift.', { exact: false }).waitFor()
      await openStep(hand, own.address, 'J1/W1', 'deliver')
      await hand.getByRole('button', { name: 'Correct the pour' }).click()
      await hand.getByLabel('Mix', { exact: true }).selectOption('K45')
      await hand.getByLabel('Why it is corrected').fill('misread')
      await hand.getByRole('button', { name: 'Record the correction' }).click()
      await hand.getByRole('button', { name: 'Correct the pour' }).waitFor()
      await hand.goto(`${own.address}/strength/J1/W1`)
      await hand.getByText('The 14 own tests of K45, each left out in turn', { exact: false }).waitFor()
    } finally {
      await phone.close()
      await own.stop()
    }
  })
})
