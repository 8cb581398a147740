import AxeBuilder from '@axe-core/playwright'
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

const PANEL = 'Saltmarsh Library/N06'

async function openPage(options: BrowserContextOptions): Promise<{ page: Page; faults: readonly string[] }> {
  const context = await browser.newContext({ ...options, reducedMotion: 'reduce' })
  const faults = watchFaults(context)
  const page = await context.newPage()
  page.setDefaultTimeout(30_000)
  await page.clock.setFixedTime(new Date(DEMO_CLOCK))
  const lead = app.people.find(({ role }) => role === 'lead')
  if (lead === undefined) throw new Error('no lead')
  await page.goto(`${app.address}/steel/laid?panel=${encodeURIComponent(PANEL)}`)
  await signIn(page, lead.name, lead.pin)
  await page.getByRole('heading', { name: 'Layer by layer' }).waitFor()
  return { page, faults }
}

async function clean(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze()
  expect(
    violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(' | ')}`),
  ).toEqual([])
  const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)
  expect(over).toBeLessThanOrEqual(0)
}

/** For looking at: written only where somebody names a folder. */
async function keep(page: Page, name: string): Promise<void> {
  const { KEEP_SHOTS } = process.env
  if (KEEP_SHOTS !== undefined)
    await page.screenshot({ path: `${KEEP_SHOTS}/laid-${name}.png`, fullPage: true })
}

describe.each([
  ['desk', DESK],
  ['phone', PHONE],
] as const)('laid out, on a %s', (name, options) => {
  it('every layer, the section, laps, ties, chairs, hooks and the schedule', async () => {
    const { page, faults } = await openPage(options)
    await clean(page)
    await keep(page, name)
    const layers = page.getByRole('region', { name: 'Layer by layer' })
    const choices = layers.getByRole('group', { name: 'What the picture shows' }).getByRole('button')
    for (let i = 0; i < (await choices.count()); i += 1) {
      await choices.nth(i).click()
      expect(await choices.nth(i).getAttribute('aria-pressed')).toBe('true')
      await layers.locator('svg').first().waitFor()
    }
    await layers
      .getByText(/above the mould face/)
      .first()
      .waitFor()
    const chairs = page.getByRole('region', { name: 'Chairs' })
    await chairs.getByLabel('Chairs apart').fill('400')
    await chairs
      .getByText(/at most 400 mm apart/)
      .first()
      .waitFor()
    await chairs.getByLabel('One person with tools').fill('-1')
    await chairs.getByRole('alert').waitFor()
    await chairs.getByLabel('One person with tools').fill('')
    const cage = page.getByRole('region', { name: 'Cage and its hooks' })
    await cage.getByText('Nothing is said about hooks yet').waitFor()
    await cage.getByLabel('Largest sag of the cage').fill('60')
    await cage.getByText(/^On \d+ by \d+ hooks/).waitFor()
    await cage.getByText('passes').first().waitFor()
    await cage.getByLabel('Hooks along x').fill('2')
    await cage.getByLabel('Hooks along y').fill('2')
    await cage.getByText(/^On 2 by 2 hooks/).waitFor()
    await clean(page)
    await keep(page, `${name}-filled`)
    expect(faults).toEqual([])
    await page.context().close()
  })

  it('the cage in space is loaded when it is opened, turns by drag, slider and key, and names a bar', async () => {
    const { page, faults } = await openPage(options)
    expect(await page.locator('canvas').count()).toBe(0)
    const space = page.getByRole('region', { name: 'The cage in space' })
    await space.getByRole('button', { name: 'Open the cage' }).click()
    const canvas = space.getByRole('img', { name: /turned 30°/ })
    await canvas.waitFor()
    await space.getByRole('slider', { name: 'Turn' }).focus()
    await page.keyboard.press('ArrowRight')
    await space.getByRole('img', { name: /turned 35°/ }).waitFor()
    await space.getByRole('button', { name: 'Heights × 4' }).click()
    const drawn = space.getByRole('img', { name: /The cage in space/ })
    await drawn.scrollIntoViewIfNeeded()
    const box = await drawn.boundingBox()
    if (box === null) throw new Error('no canvas')
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
    await page.mouse.move(x, y)
    await page.mouse.down()
    await page.mouse.move(x + 40, y, { steps: 4 })
    await page.mouse.up()
    await space.getByRole('img', { name: /turned 55°/ }).waitFor()
    await space.getByRole('button', { name: 'Nearer' }).click()
    await space.getByRole('button', { name: 'Dragging moves it' }).click()
    await space.getByRole('button', { name: 'Left', exact: true }).click()
    await space.getByRole('img', { name: /turned 55°/ }).waitFor()
    await keep(page, `${name}-space`)
    await clean(page)
    expect(faults).toEqual([])
    await page.context().close()
  })
})

it('leads from the cage card to the page, and shows the laps of another panel', async () => {
  const { page, faults } = await openPage(DESK)
  await page.goto(`${app.address}/panel/Saltmarsh%20Library/N06?step=cage`)
  await page.getByRole('link', { name: 'How the bars lie' }).click()
  await page.getByRole('heading', { name: 'N06, Saltmarsh Library' }).waitFor()
  expect(await page.getByRole('link', { name: 'Laid out' }).getAttribute('aria-current')).toBe('page')
  await page.getByLabel('Panel', { exact: true }).selectOption('Saltmarsh Library/B01')
  await page.getByRole('heading', { name: 'B01, Saltmarsh Library' }).waitFor()
  const laps = page.getByRole('region', { name: 'Laps' })
  await laps.getByRole('button', { name: /mm$/ }).first().click()
  await laps.locator('svg').first().waitFor()
  await laps.getByText(/^Middles along/).waitFor()
  await clean(page)
  await keep(page, 'laps')
  expect(page.url()).toContain('B01')
  expect(faults).toEqual([])
  await page.context().close()
})

it('goes by keyboard alone: a layer, a mark, the cage', async () => {
  const { page } = await openPage(DESK)
  const press = async (want: RegExp): Promise<void> => {
    for (let i = 0; i < 120; i += 1) {
      const text = await page.evaluate(() => document.activeElement?.textContent ?? '')
      if (want.test(text)) break
      await page.keyboard.press('Tab')
    }
    await page.keyboard.press('Enter')
  }
  await press(/^Section along x$/)
  expect(await page.getByRole('button', { name: 'Section along x' }).getAttribute('aria-pressed')).toBe(
    'true',
  )
  await press(/^Open the cage$/)
  await page.locator('canvas').waitFor()
  await press(/^[MT]Y1$/)
  expect(await page.locator('.laid-choice[aria-pressed=true]').last().textContent()).toMatch(/^[MT]Y1$/)
  await page.context().close()
})
