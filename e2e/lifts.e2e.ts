import { DEMO_CLOCK } from '@castwright/demo'
import type { Browser, BrowserContextOptions, Page } from 'playwright-core'
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

const FULL = 'Full: mesh refined at each insert.'

async function openLift(options: BrowserContextOptions): Promise<{ page: Page; faults: readonly string[] }> {
  const context = await browser.newContext({ ...options, reducedMotion: 'reduce' })
  const faults = watchFaults(context)
  const page = await context.newPage()
  page.setDefaultTimeout(60_000)
  await page.clock.setFixedTime(new Date(DEMO_CLOCK))
  const lead = app.people.find(({ role }) => role === 'lead')
  if (lead === undefined) throw new Error('no lead')
  await page.goto(`${app.address}/lifts/Saltmarsh%20Library/N06`)
  await signIn(page, lead.name, lead.pin)
  await page.getByText(FULL).waitFor()
  return { page, faults }
}

function nameOf(page: Page, mark: string): Promise<string | null> {
  return page.getByRole('button', { name: new RegExp(`^Insert ${mark},`) }).getAttribute('aria-label')
}

describe.each([
  ['a desk', DESK],
  ['a phone', PHONE],
] as const)('on %s', (_, options) => {
  it('an insert is moved by pointer and by keys, the loads follow, and it goes back to the drawing', async () => {
    const { page, faults } = await openLift(options)
    const handle = page.getByRole('button', { name: /^Insert A,/ })
    const [drawn, other] = [await nameOf(page, 'A'), await nameOf(page, 'C')]
    await handle.scrollIntoViewIfNeeded()
    const box = await handle.boundingBox()
    if (box === null) throw new Error('no handle')
    expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(48)
    const paper = page.locator('.lift-paper')
    const size = await paper.boundingBox()
    await page.mouse.move(box.x + 24, box.y + 24)
    await page.mouse.down()
    // A few px of a phone are 100 mm of the panel; much more and equalised legs hang it level no longer.
    const by = (options.viewport?.width ?? 0) < 500 ? 3 : 10
    await page.mouse.move(box.x + 24 - by, box.y + 24 - by, { steps: 3 })
    await page.mouse.up()
    await expect.poll(() => nameOf(page, 'A'), { timeout: 30_000 }).not.toBe(drawn)
    await page.getByText(FULL).waitFor()
    // Nothing moves under the finger.
    expect((await paper.boundingBox())?.height).toBe(size?.height)
    await expect.poll(() => nameOf(page, 'C'), { timeout: 30_000 }).not.toBe(other)

    await page.getByRole('button', { name: 'Back to the drawing' }).click()
    await expect.poll(() => nameOf(page, 'A'), { timeout: 30_000 }).toBe(drawn)
    await page.getByText(FULL).waitFor()

    await handle.focus()
    await page.keyboard.press('ArrowRight')
    await expect.poll(() => nameOf(page, 'A'), { timeout: 30_000 }).not.toBe(drawn)
    await page.getByText(FULL).waitFor()
    await page.getByRole('button', { name: 'Compare with drawing' }).click()
    await page.getByRole('columnheader', { name: 'trial' }).waitFor()
    await page.getByRole('button', { name: 'Back to the drawing' }).click()
    await expect.poll(() => nameOf(page, 'A'), { timeout: 30_000 }).toBe(drawn)
    expect(faults).toEqual([])
    await page.context().close()
  })
})
