import AxeBuilder from '@axe-core/playwright'
import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type App, DESK, PHONE, startApp, startBrowser, watchFaults } from './app.ts'
import { signIn } from './hands.ts'
import { TEST_YARD } from './yard.ts'

const BASE = {
  format: 'castwright.drawing/1',
  job: 'Edge cases',
  outline: [
    [0, 0],
    [6000, 0],
    [6000, 3000],
    [0, 3000],
  ],
  thickness: 160,
  concrete: { strength: 40, aggregate: 16 },
}
const CORNERS = [
  [1242, 621],
  [4758, 621],
  [4758, 2379],
  [1242, 2379],
]
const inserts = CORNERS.map((at, i) => ({ mark: 'ABCD'[i], at, kind: 'face', type: 'F75' }))

const DRAWINGS = [
  { ...BASE, mark: 'D1', rigging: 'R4', inserts },
  { ...BASE, mark: 'BARE' },
  { ...BASE, mark: 'NONE', inserts: [] },
  // A spike that no mesh of the plate can follow.
  {
    ...BASE,
    mark: 'SPIKE',
    outline: [
      [0, 0],
      [6000, 0],
      [6000, 3000],
      [3000.02, 3000],
      [3000.01, 6000],
      [3000, 3000],
      [0, 3000],
    ],
    inserts,
  },
  { ...BASE, mark: 'ODD', inserts: inserts.map((insert) => ({ ...insert, type: 'not in the yard' })) },
  { ...BASE, mark: 'FAR', code: 'nz', rigging: 'R4', inserts },
]

const REFUSED: readonly (readonly [mark: string, says: RegExp])[] = [
  ['BARE', /proposed/i],
  ['NONE', /insert/i],
  ['SPIKE', /too narrow|spike/i],
  ['ODD', /not in the yard/i],
  ['FAR', /not known|unknown/i],
]

let app: App
let browser: Browser

beforeAll(async () => {
  browser = await startBrowser()
  app = await startApp({ verb: 'serve', bring: [TEST_YARD, ...DRAWINGS] })
})

afterAll(async () => {
  await browser.close()
  await app.stop()
})

async function open(context: BrowserContext): Promise<Page> {
  const page = await context.newPage()
  page.setDefaultTimeout(40_000)
  const [first] = app.people
  if (first === undefined) throw new Error('nobody to sign in')
  await page.goto(`${app.address}/lifts`)
  await signIn(page, first.name, first.pin)
  return page
}

async function expectNoFaultsOfAxe(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze()
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`)).toEqual([])
}

describe.each([
  ['a phone', { ...PHONE, colorScheme: 'dark' }],
  ['a desk', { ...DESK, colorScheme: 'light' }],
] as const)('Lifts on %s', (_, options) => {
  it('says why where a panel cannot be lifted as drawn, and never draws nothing without a word', async () => {
    const context = await browser.newContext({ ...options, reducedMotion: 'reduce' })
    const faults = watchFaults(context)
    const page = await open(context)
    for (const [mark, says] of REFUSED) {
      await page.goto(`${app.address}/lifts/Edge%20cases/${mark}`)
      await page.getByText(says).first().waitFor()
      await expectNoFaultsOfAxe(page)
    }
    expect(faults).toEqual([])
    await context.close()
  })

  it('works offline, also after it was opened anew', async () => {
    const context = await browser.newContext({ ...options, reducedMotion: 'reduce' })
    const page = await open(context)
    await page.goto(`${app.address}/lifts/Edge%20cases/D1`)
    await page.getByText('Full: mesh refined at each insert.').waitFor()
    await page.evaluate(async () => void (await navigator.serviceWorker.ready))
    await context.setOffline(true)
    await page.reload()
    await page.getByText('Full: mesh refined at each insert.').waitFor()
    const insert = page.getByRole('button', { name: /^Insert A,/ })
    const drawn = await insert.getAttribute('aria-label')
    await insert.focus()
    await page.keyboard.press('ArrowRight')
    await expect.poll(() => insert.getAttribute('aria-label'), { timeout: 30_000 }).not.toBe(drawn)
    await page.getByText('Full: mesh refined at each insert.').waitFor()
    await context.close()
  })
})
