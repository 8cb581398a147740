import { DEMO_CLOCK } from '@castwright/demo'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { type App, DESK, startApp, startBrowser } from './app.ts'

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

it('signs in, decides what fails and closes the step by keyboard alone', async () => {
  const context = await browser.newContext(DESK)
  const page = await context.newPage()
  page.setDefaultTimeout(30_000)
  await page.clock.setFixedTime(new Date(DEMO_CLOCK))
  const lead = app.people.find(({ role }) => role === 'lead')
  if (lead === undefined) throw new Error('no lead')
  await page.goto(app.address)
  await page.getByRole('button', { name: new RegExp(lead.name) }).waitFor()
  await tabTo(page, lead.name)
  expect(await focusRing(page)).toBeGreaterThanOrEqual(3)
  await page.keyboard.press('Enter')
  await page.getByLabel('PIN', { exact: true }).waitFor()
  // The field has the focus: the digits go straight into it.
  await page.keyboard.type(lead.pin)
  await page.keyboard.press('Enter')
  await page.getByRole('navigation', { name: 'Rooms' }).waitFor()

  // The failing panel of the day is one link away.
  await page.getByRole('link', { name: /B03 fails/ }).waitFor()
  await tabTo(page, 'B03 fails')
  await page.keyboard.press('Enter')
  await page.getByRole('heading', { name: 'Is it the size and shape that was drawn?' }).waitFor()
  const open = async (): Promise<number> => page.getByRole('button', { name: /^decide/ }).count()
  await page
    .getByRole('button', { name: /^decide/ })
    .first()
    .waitFor()
  for (let left = await open(); left > 0; left = await open()) {
    await tabTo(page, 'decide')
    await page.keyboard.press('Enter')
    await tabTo(page, 'textarea')
    await page.keyboard.type('accepted by the designer')
    await tabTo(page, 'Record the decision')
    await page.keyboard.press('Enter')
    await expect.poll(open, { timeout: 15_000 }).toBe(left - 1)
  }
  await page.getByRole('button', { name: /^Close as built/i }).waitFor()
  await tabTo(page, 'Close as built')
  await page.keyboard.press('Enter')
  await page.getByText('This step is closed').waitFor()
  await context.close()
})

/** Presses Tab until the thing with this word, or this kind of field, has the focus. */
async function tabTo(page: Page, word: string): Promise<void> {
  for (let press = 0; press < 400; press += 1) {
    await page.keyboard.press('Tab')
    const here = await page.evaluate(() => {
      const active = document.activeElement
      return `${active?.tagName.toLowerCase()} ${active?.textContent ?? ''}`
    })
    if (here.toLowerCase().includes(word.toLowerCase())) return
  }
  throw new Error(`Tab never came to ${word}`)
}

/** Width of the ring around what has the focus, px. */
function focusRing(page: Page): Promise<number> {
  return page.evaluate(() => {
    const active = document.activeElement
    return active === null ? 0 : Number.parseFloat(getComputedStyle(active).outlineWidth)
  })
}
