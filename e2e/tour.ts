import { execFileSync, spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { DEMO_CLOCK } from '@castwright/demo'
import type { Page } from 'playwright-core'
import { DESK, PHONE, startApp, startBrowser } from './app.ts'

const FOLDER = fileURLToPath(new URL('../docs/tour/', import.meta.url))
const PANEL = '/panel/Saltmarsh%20Library'

/** Every screen by the name of its picture. */
const SCREENS: readonly (readonly [name: string, path: string])[] = [
  ['day', '/'],
  ['panels', '/panels'],
  ['card-steel', `${PANEL}/C03?step=cut-bend`],
  ['card-mould', `${PANEL}/T04?step=mould`],
  ['card-set', `${PANEL}/N06?step=set`],
  ['card-deliver', `${PANEL}/E03?step=deliver`],
  ['card-place', `${PANEL}/E03?step=place`],
  ['card-finish', `${PANEL}/S06?step=finish`],
  ['card-cure', `${PANEL}/C02?step=cure`],
  ['card-strip', `${PANEL}/C02?step=strip`],
  ['card-as-built', `${PANEL}/B03?step=as-built`],
  ['card-load', `${PANEL}/G01?step=load`],
  ['drawing', '/drawing/Saltmarsh%20Library/E03'],
  ['bundles', '/steel/in'],
  ['bar-list', '/steel/list'],
  ['cuts', '/steel'],
  ['bends', '/steel/bend'],
  ['laid', '/steel/laid?panel=Saltmarsh%20Library%2FC03'],
  ['pours', '/pours'],
  ['pour', '/pours/Saltmarsh%20Library/E03'],
  ['strengths', '/strength'],
  ['strength', '/strength/Saltmarsh%20Library/C02'],
  ['specimens', '/strength/specimens'],
  ['results', '/strength/results'],
  ['weather', '/weather'],
  ['lifts', '/lifts'],
  ['lift', '/lifts/Saltmarsh%20Library/N06'],
  ['lift-edge', '/lifts/Saltmarsh%20Library/S06'],
  ['proof', '/proof'],
  ['yard', '/yard'],
  ['verify', '/verify'],
]
const SHEETS = [
  'mould-card',
  'pour-card',
  'steel-schedule',
  'bar-tags',
  'tie-plan',
  'bend-gauge',
  'lift-card',
  'label',
  'passport',
] as const
const WIDTHS = [
  ['1440', DESK],
  ['360', PHONE],
] as const

/** Renders every screen and every sheet of the invented job at its fixed clock; looking at them is part of every change. */
async function tour(): Promise<void> {
  mkdirSync(FOLDER, { recursive: true })
  const app = await startApp({ verb: 'demo', clock: DEMO_CLOCK })
  const browser = await startBrowser()
  try {
    const lead = app.people.find(({ role }) => role === 'lead')
    for (const [width, options] of WIDTHS) {
      for (const colorScheme of ['light', 'dark'] as const) {
        const context = await browser.newContext({ ...options, colorScheme, reducedMotion: 'reduce' })
        const page = await context.newPage()
        await page.clock.setFixedTime(new Date(DEMO_CLOCK))
        await page.goto(app.address)
        await page.getByRole('button', { name: /lead/ }).first().waitFor()
        await picture(page, `sign-in-${width}-${colorScheme}`)
        await context.request.post(`${app.address}/api/session`, {
          data: { person: lead?.id, pin: lead?.pin },
          headers: { origin: app.address },
        })
        for (const [name, path] of SCREENS) {
          await page.goto(`${app.address}${path}`)
          await settled(page)
          if (name === 'cuts') await planned(page)
          await picture(page, `${name}-${width}-${colorScheme}`)
        }
        if (width === '1440' && colorScheme === 'light') await sheets(app.address, page)
        await context.close()
      }
    }
  } finally {
    await browser.close()
    await app.stop()
  }
}

async function settled(page: Page): Promise<void> {
  await page.locator('main h1, main h2').first().waitFor()
  for (let turn = 0; turn < 60; turn += 1) {
    const text = await page.evaluate(() => document.body.textContent ?? '')
    if (!/Reading the record|Computing|computing|Planning \d+/.test(text)) return
    await page.waitForTimeout(250)
  }
  throw new Error(`${page.url()} still computes`)
}

/** One list cut, so that the picture shows bars. */
async function planned(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Plan the cuts' }).nth(2).click()
  await page.locator('.cut-sum').first().waitFor()
}

/** The first screens of a page are enough to look at; the whole of a long card is not. */
async function picture(page: Page, name: string): Promise<void> {
  const width = page.viewportSize()?.width ?? 1440
  const whole = await page.evaluate(() => document.documentElement.scrollHeight)
  const most = width < 500 ? 2200 : 1500
  await page.screenshot({
    path: join(FOLDER, `${name}.png`),
    fullPage: true,
    clip: { x: 0, y: 0, width, height: Math.min(whole, most) },
  })
}

async function sheets(address: string, page: Page): Promise<void> {
  if (spawnSync('pdftoppm', ['-v']).error !== undefined) {
    process.stderr.write('pdftoppm is missing (poppler-utils): the sheets are not pictured\n')
    return
  }
  const folder = mkdtempSync(join(tmpdir(), 'castwright-tour-'))
  for (const sheet of SHEETS) {
    const mark = sheet === 'passport' ? 'N01' : 'E03'
    const answer = await page
      .context()
      .request.get(`${address}/api/panels/Saltmarsh%20Library/${mark}/sheets/${sheet}`)
    const file = join(folder, `${sheet}.pdf`)
    writeFileSync(file, await answer.body())
    execFileSync('pdftoppm', ['-r', '80', '-png', '-singlefile', file, join(FOLDER, `sheet-${sheet}`)])
  }
  rmSync(folder, { recursive: true, force: true })
}

await tour()
