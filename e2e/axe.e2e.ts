import AxeBuilder from '@axe-core/playwright'
import { DEMO_CLOCK } from '@castwright/demo'
import type { Browser, BrowserContext, Page } from 'playwright-core'
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

const PANEL = '/panel/Saltmarsh%20Library'

/** Every screen of the app; the cards on panels that stand at them. */
const SCREENS: readonly (readonly [name: string, path: string])[] = [
  ['Day', '/'],
  ['Panels', '/panels'],
  ['a card that is done', `${PANEL}/N01?step=steel-in`],
  ['cut and bend', `${PANEL}/C03?step=cut-bend`],
  ['cage', `${PANEL}/G02?step=cage`],
  ['mould', `${PANEL}/T04?step=mould`],
  ['the set hold, waiting', `${PANEL}/N06?step=set`],
  ['set, with formers and ducts to hold down', `${PANEL}/T04?step=set`],
  ['deliver', `${PANEL}/E03?step=deliver`],
  ['place', `${PANEL}/E03?step=place`],
  ['finish', `${PANEL}/S06?step=finish`],
  ['cure', `${PANEL}/C02?step=cure`],
  ['the strip hold, shut', `${PANEL}/C02?step=strip`],
  ['as built, with a fail', `${PANEL}/B03?step=as-built`],
  ['store', `${PANEL}/N03?step=store`],
  ['load, with a defect', `${PANEL}/G01?step=load`],
  ['hand over', `${PANEL}/S02?step=hand-over`],
  ['a new drawing', '/drawing/new'],
  ['a new revision', '/drawing/Saltmarsh%20Library/E03'],
  ['a drawing with a void former and a duct', '/drawing/Saltmarsh%20Library/T04'],
  ['bundles', '/steel/in'],
  ['cuts', '/steel'],
  ['bends', '/steel/bend'],
  ['laid out', '/steel/laid?panel=Saltmarsh%20Library%2FN06'],
  ['bar lists', '/steel/list'],
  ['Pours', '/pours'],
  ['a pour', '/pours/Saltmarsh%20Library/E03'],
  ['Strength', '/strength'],
  ['the strength of a panel', '/strength/Saltmarsh%20Library/C02'],
  ['specimens', '/strength/specimens'],
  ['results', '/strength/results'],
  ['Lifts', '/lifts'],
  ['the lift of a panel', '/lifts/Saltmarsh%20Library/N06'],
  ['the lift of a panel turned by its edge', '/lifts/Saltmarsh%20Library/S06'],
  ['Proof', '/proof'],
  ['Yard', '/yard'],
  ['Weather', '/weather'],
  ['verify', '/verify'],
  ['an address that leads nowhere', '/nowhere'],
]

const WIDTHS = [
  { name: 'a phone in daylight', options: { ...PHONE, colorScheme: 'light' } },
  { name: 'a desk at night', options: { ...DESK, colorScheme: 'dark' } },
] as const

describe.each(WIDTHS)('on $name', ({ options }) => {
  let context: BrowserContext
  let page: Page
  let faults: readonly string[]

  beforeAll(async () => {
    context = await browser.newContext({ ...options, reducedMotion: 'reduce' })
    faults = watchFaults(context)
    page = await context.newPage()
    page.setDefaultTimeout(30_000)
    await page.clock.setFixedTime(new Date(DEMO_CLOCK))
  })

  afterAll(async () => {
    await context.close()
  })

  it('the sign-in has no fault that axe finds', async () => {
    await page.goto(app.address)
    await page.getByRole('button', { name: /lead/ }).first().waitFor()
    await inspect(page)
    const lead = app.people.find(({ role }) => role === 'lead')
    if (lead === undefined) throw new Error('no lead')
    await page.getByRole('button', { name: new RegExp(lead.name) }).click()
    await inspect(page)
    await page.getByRole('button', { name: 'Somebody else' }).click()
    await signIn(page, lead.name, lead.pin)
  })

  it.each(SCREENS)(
    '%s has no fault that axe finds, nothing cut at the side, targets for gloves',
    async (_, path) => {
      await page.goto(`${app.address}${path}`)
      await settled(page)
      await inspect(page)
      const how = page.getByText(/^(how|source)$/).first()
      if (path.startsWith('/panel/') && (await how.count()) > 0) {
        await how.click()
        await inspect(page)
      }
    },
  )

  it('shows what is wrong with a drawing without a fault that axe finds', async () => {
    await page.goto(`${app.address}/drawing/new`)
    await page.getByLabel('Length', { exact: true }).fill('-5')
    await page.getByRole('button', { name: 'Record this drawing' }).click()
    await page.getByRole('alert').first().waitFor()
    await inspect(page)
  })

  it('reports no error', () => {
    expect(faults).toEqual([])
  })
})

/** Waits until no screen says that it is still reading or computing. */
async function settled(page: Page): Promise<void> {
  await page.locator('main h1, main h2').first().waitFor()
  // The content policy of the app keeps a page from polling by itself.
  await expect
    .poll(() => page.evaluate(() => document.body.textContent ?? ''), { timeout: 20_000 })
    .not.toMatch(/Reading the record|Computing|computing/)
}

async function inspect(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze()
  expect(
    violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(' | ')}`),
  ).toEqual([])
  expect(
    await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth),
  ).toBeLessThanOrEqual(0)
  expect(await page.evaluate(tooSmall)).toEqual([])
}

/** Targets under 48 px that are not links in running text, a file picker's own button, or hidden until they have the focus. */
function tooSmall(): string[] {
  const targets = document.querySelectorAll<HTMLElement>(
    'button, input:not([type=hidden]), select, textarea, summary, a[href]',
  )
  return [...targets].flatMap((target) => {
    const box = target.getBoundingClientRect()
    if (
      box.width <= 1 ||
      box.height <= 1 ||
      target.closest('[hidden], .only-read, .skip, dialog:not([open]), svg') !== null
    )
      return []
    const inText =
      target.tagName === 'A' && target.closest('p, li, dd, td, .strip-note') !== null && !target.className
    const ticked = target.closest('label')?.getBoundingClientRect()
    const high = Math.max(box.height, ticked?.height ?? 0)
    return inText || high >= 47.5
      ? []
      : [`${target.tagName} ${target.className} ${target.textContent?.slice(0, 30)} ${Math.round(high)} px`]
  })
}
