import { DEMO_CLOCK } from '@castwright/demo'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type App, DESK, PHONE, startApp, startBrowser, watchFaults } from './app.ts'
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

/** Zones that were ticked and not walked come first; how many, and how many insertions they have. */
async function saidOf(page: Page): Promise<{ readonly zones: number; readonly insertions: number }> {
  const said = page.locator('.walk-zones li').filter({ hasText: /said to be reached by \S/ })
  await said.first().waitFor()
  const texts = await said.allTextContents()
  // What was said is not counted as walked.
  for (const text of texts) expect(text).toMatch(/: 0 of \d+ insertions/)
  return {
    zones: texts.length,
    insertions: texts.reduce((sum, text) => sum + Number(/: 0 of (\d+)/.exec(text)?.[1]), 0),
  }
}

describe.each([
  ['a phone', 0, { ...PHONE, colorScheme: 'dark' }],
  // The tablet finds what the phone recorded: its walk goes on from there.
  ['a tablet', 4, { ...DESK, viewport: { width: 768, height: 1024 }, hasTouch: true, colorScheme: 'light' }],
] as const)('a pour followed on %s', (_, walked, options) => {
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
    const said = await saidOf(page)
    const [zone, first] = [said.zones + 1, said.insertions + walked + 1]
    await page.getByText(new RegExp(`^Next is ${first} of \\d+\\.$`)).waitFor()
    await expectNoFaultsOfAxe(page)
    await page.getByRole('button', { name: 'Vibrator in' }).click()
    await page.getByText(new RegExp(`^Insertion ${first} of`)).waitFor()
    await page.evaluate(async () => void (await navigator.serviceWorker.ready))
    await context.setOffline(true)
    const onTo = page.getByRole('button', { name: 'Out, on to the next' })
    for (let at = first + 1; at <= first + 3; at += 1) {
      await onTo.click()
      await page.getByText(new RegExp(`^Insertion ${at} of`)).waitFor()
    }
    await page.reload()
    await page.getByText(new RegExp(`^Insertion ${first + 3} of`)).waitFor()
    await page
      .getByText(new RegExp(`^Shorter than 5 s: ${[1, 2, 3].map((at) => said.insertions + at).join(', ')}`))
      .waitFor()
    await page.getByRole('button', { name: 'Out, wait' }).click()
    await page.getByRole('button', { name: 'Take back' }).click()
    await page.getByText(new RegExp(`^Next is ${first + 3} of`)).waitFor()
    await page.getByRole('button', { name: 'In at the next' }).click()
    await page.getByText(new RegExp(`^Insertion ${first + 3} of`)).waitFor()
    await page.getByRole('button', { name: 'Out, wait' }).click()
    await page.getByRole('button', { name: `Record zone ${zone} as not all reached` }).click()
    await page.getByText(new RegExp(`Zone ${zone}:.*recorded as not reached`)).waitFor()
    await context.setOffline(false)
    await page.goto(`${app.address}/panel/Saltmarsh%20Library/E03?step=place`)
    await page.getByText(`Zone ${zone}: placed and vibrated`).first().waitFor()
    await page.getByText('fails').first().waitFor()
    expect(faults).toEqual([])
    await context.close()
  })
})

describe('where the chute stands and which heads work', () => {
  it('are settled in the room; the order turns round, the heads share it, and what was reached stays reached', async () => {
    const context = await browser.newContext({ ...PHONE, colorScheme: 'light', reducedMotion: 'reduce' })
    const faults = watchFaults(context)
    const page = await context.newPage()
    page.setDefaultTimeout(20_000)
    const hand = app.people.find(({ name }) => name.startsWith('Sam')) ?? app.people[0]
    if (hand === undefined) throw new Error('nobody to sign in')
    await page.goto(`${app.address}/pours/Saltmarsh%20Library/E03`)
    await signIn(page, hand.name, hand.pin)
    const { insertions } = await saidOf(page)
    await page.getByText(new RegExp(`^Next is ${insertions + 9} of \\d+\\.$`)).waitFor()
    await page.getByText('Nobody said where it stands.').waitFor()
    await page.getByRole('button', { name: 'Say where it stands' }).click()
    const corner = page.getByLabel('At a corner')
    const farthest = (await corner.getByRole('option').count()) - 2
    await corner.selectOption(String(Math.floor(farthest / 2)))
    await expectNoFaultsOfAxe(page)
    await page.getByRole('button', { name: 'Record the place' }).click()
    await page.getByText(/^At \d+, \d+ mm\. Said by/).waitFor()
    await page.getByText(/^Next is \d+ of \d+\.$/).waitFor()
    // Eight were reached from the other end: none is lost, wherever they now stand in the order.
    const reached = async (): Promise<number> => {
      const zones = await page.locator('.walk-zones li').allTextContents()
      return zones.reduce((sum, text) => sum + Number(/: (\d+) of/.exec(text)?.[1] ?? 0), 0)
    }
    expect(await reached()).toBe(8)
    await page.getByRole('button', { name: 'Say which heads work' }).click()
    await page.getByLabel(/^V56, head/).selectOption('2')
    await page.getByRole('button', { name: 'Record the heads' }).click()
    await page.getByText('2 × V56').waitFor()
    await page.getByLabel('This device follows').selectOption('2')
    await page
      .getByText(/mine 0 of \d+/)
      .first()
      .waitFor()
    await expectNoFaultsOfAxe(page)
    expect(await reached()).toBe(8)
    await page.goto(`${app.address}/panel/Saltmarsh%20Library/E03?step=place`)
    await page.getByText('2 × V56').waitFor()
    expect(faults).toEqual([])
    await context.close()
  })
})
