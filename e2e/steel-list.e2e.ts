import { readFile } from 'node:fs/promises'
import AxeBuilder from '@axe-core/playwright'
import { DEMO_CLOCK } from '@castwright/demo'
import { barsOf, readTable } from '@castwright/documents/bar-list'
import { codeFamily } from '@castwright/engine/codes'
import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core'
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

const JOB = 'Saltmarsh Library'
/** Where pictures go that somebody wants to look at; nowhere unless it is said. */
const PICTURES = process.env.CASTWRIGHT_PICTURES

async function open(
  options: BrowserContextOptions,
): Promise<{ page: Page; context: BrowserContext; faults: readonly string[] }> {
  const context = await browser.newContext({ ...options, reducedMotion: 'reduce', acceptDownloads: true })
  const faults = watchFaults(context)
  const page = await context.newPage()
  page.setDefaultTimeout(30_000)
  await page.clock.setFixedTime(new Date(DEMO_CLOCK))
  const lead = app.people.find(({ role }) => role === 'lead')
  if (lead === undefined) throw new Error('no lead')
  await page.goto(`${app.address}/steel/list`)
  await signIn(page, lead.name, lead.pin)
  await page.getByRole('heading', { name: 'A list comes in' }).waitFor()
  return { page, context, faults }
}

async function look(page: Page, name: string): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze()
  expect(
    violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(' | ')}`),
  ).toEqual([])
  expect(
    await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth),
  ).toBeLessThanOrEqual(0)
  if (PICTURES !== undefined) await page.screenshot({ path: `${PICTURES}/list-${name}.png`, fullPage: true })
}

function csv(text: string, name = 'list.csv'): { name: string; mimeType: string; buffer: Buffer } {
  return { name, mimeType: 'text/csv', buffer: Buffer.from(text) }
}

const HEAD = 'Ref;Ø, mm;Steel;Qty;Cut length;A;B;Bend diameter\r\n'
const GOOD = `${HEAD}P1;12;B500B;24;873;600,0;300,0;60\r\nP2;16;B500B;4;2500;2500;;\r\n`
const BAD = `${HEAD}P1;12;B500B;24;1000;600,0;300,0;60\r\nP2;16;500E;4;2500;2500;;\r\nP3;12;B500B;zwei;600;600;;\r\nP4;12;B500B;1;641;600;41;60\r\n`

async function mapMark(page: Page): Promise<void> {
  await page.getByLabel('Mark, needed').selectOption({ label: 'A Ref' })
}

describe.each([
  ['1440', DESK],
  ['360', PHONE],
] as const)('at %s px', (width, options) => {
  it('a list with faults is shown row by row, mapped, mended, and goes into a drawing as a new revision', async () => {
    const { page, context, faults } = await open(options)
    const mark = width === '360' ? 'N05' : 'N06'
    await look(page, `empty-${width}`)

    await page.getByLabel('Bar list, CSV or XLSX').setInputFiles(csv(BAD))
    await page.getByText('"Ref", "Ø, mm"').first().waitFor()
    await look(page, `columns-${width}`)
    await mapMark(page)
    await page.getByText('4 rows with a bar, 3 wrong, 3 things wrong in all.').waitFor()
    const table = page.getByRole('region', { name: 'Rows of the list' })
    for (const words of [
      'row 3, column C (Steel): found "500E", expected one of B500A, B500B, B500C.',
      'row 4, column D (Qty): found "zwei", expected a whole number from 1 to 100000.',
      'row 5, column G (B): found 41 mm, expected at least 42.0 mm for its bends.',
      'found 1000 mm stated, expected 872.5 mm as computed',
    ])
      await table.getByText(words).waitFor()
    await look(page, `faults-${width}`)
    const record = page.getByRole('button', { name: /Nothing is taken|Record revision|Choose a panel/ })
    expect(await record.getAttribute('aria-disabled')).toBe('true')
    await page.getByLabel('Take the 1 good row and leave out rows 3, 4, 5').check()
    await page.getByLabel('Drawing of').selectOption({ label: `${mark}, ${JOB}` })
    expect(await record.textContent()).toMatch(new RegExp(`of ${mark} with 1 bar mark`))

    // The columns are known again for a list with the same names.
    await page.getByLabel('Bar list, CSV or XLSX').setInputFiles(csv(GOOD))
    await page.getByText('2 rows with a bar, none of them wrong.').waitFor()
    await page.getByLabel('Drawing of').selectOption({ label: `${mark}, ${JOB}` })
    await look(page, `good-${width}`)
    await record.click()
    await page.getByText('Recorded.').waitFor()
    await record.click()
    await page.getByText(/Found "P1", which is in the list too/).waitFor()

    // What went in comes out again.
    await page.getByLabel('Bars of').selectOption({ label: mark })
    const [saved] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save as CSV' }).click(),
    ])
    expect(saved.suggestedFilename()).toBe(`Saltmarsh-Library-${mark}-bars.csv`)
    const bytes = new Uint8Array(await readFile(await saved.path()))
    const list = barsOf({
      table: await readTable({ bytes, name: 'saved.csv' }),
      rules: codeFamily('eu').steel,
    })
    expect(
      list.rows.flatMap(({ bar }) => (bar?.bar.startsWith('P') ? [[bar.bar, bar.legs, bar.count]] : [])),
    ).toEqual([
      ['P1', [600, 300], 24],
      ['P2', [2500], 4],
    ])
    expect(faults).toEqual([])
    await context.close()
  })
})

it('the list of a whole job is saved as XLSX, and one of its panels is read back from it', async () => {
  const { page, context, faults } = await open(DESK)
  const [saved] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as XLSX' }).click(),
  ])
  expect(saved.suggestedFilename()).toMatch(/bars\.xlsx$/)
  await page.getByText(/panels written\./).waitFor()
  const buffer = await readFile(await saved.path())
  await page
    .getByLabel('Bar list, CSV or XLSX')
    .setInputFiles({ name: 'job.xlsx', mimeType: 'application/octet-stream', buffer })
  await page.getByText(/panels: ".*expected the bars of one panel/).waitFor()
  await page.getByLabel('Panel of the list').selectOption({ label: 'N06' })
  await page.getByText(/job\.xlsx: \d+ rows with a bar, none of them wrong\./).waitFor()
  await look(page, 'job-1440')
  expect(faults).toEqual([])
  await context.close()
})

it('a file that is none is refused in words, and a large list is read under the app’s content policy', async () => {
  const { page, context, faults } = await open(DESK)
  const field = page.getByLabel('Bar list, CSV or XLSX')
  await field.setInputFiles({ name: 'photo.xlsx', mimeType: '', buffer: Buffer.from([0x50, 0x4b, 3, 4, 0]) })
  await page.getByText(/photo\.xlsx: found a file that does not unpack/).waitFor()
  const rows = Array.from({ length: 10_000 }, (_, row) => `B${row},12,B500B,2,${600 + row / 10}`)
  await field.setInputFiles(csv(['Mark,Dia,Grade,Count,A', ...rows].join('\n'), 'large.csv'))
  await page.getByText('large.csv: 10000 rows with a bar, none of them wrong.').waitFor()
  await page.getByRole('button', { name: 'Show more: 100 of 10000 rows are shown' }).waitFor()
  expect(faults).toEqual([])
  await context.close()
})

it('all of it goes by keys alone', async () => {
  const { page, context, faults } = await open(DESK)
  const tabTo = async (name: string | RegExp, role: 'button' | 'combobox' | 'checkbox'): Promise<void> => {
    const target = page.getByRole(role, { name, exact: true })
    for (let presses = 0; presses < 80; presses += 1) {
      if (await target.evaluateAll((all) => all.includes(document.activeElement as never))) return
      await page.keyboard.press('Tab')
    }
    throw new Error(`${name} is not reached by keys`)
  }
  const chooser = page.waitForEvent('filechooser')
  const field = page.getByLabel('Bar list, CSV or XLSX')
  for (let presses = 0; presses < 80; presses += 1) {
    if (await field.evaluate((node) => node === document.activeElement)) break
    await page.keyboard.press('Tab')
  }
  await page.keyboard.press('Enter')
  await (await chooser).setFiles(
    csv(GOOD.replace('Ref', 'Reference').replaceAll('P1', 'K1').replaceAll('P2', 'K2')),
  )
  await tabTo('Mark, needed', 'combobox')
  await page.keyboard.type('A Reference')
  await page.getByText('2 rows with a bar, none of them wrong.').waitFor()
  await tabTo('Drawing of', 'combobox')
  await page.keyboard.type('E03')
  await tabTo(/^Record revision .* of E03 with 2 bar marks$/, 'button')
  await page.keyboard.press('Enter')
  await page.getByText('Recorded.').waitFor()
  expect(faults).toEqual([])
  await context.close()
})
