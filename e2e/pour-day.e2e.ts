import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { DEMO_CLOCK } from '@castwright/demo'
import type { StoredEntry } from '@castwright/record'
import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { type App, PHONE, startApp, startBrowser, watchFaults } from './app.ts'
import { answerAll, closeStep, decideAll, openStep, signHold, signIn, stillMissing } from './hands.ts'

/** A panel of the invented job whose cage is tied and whose mould is next. */
const JOB = 'Saltmarsh Library'
const MARK = 'T04'
const PANEL = `${JOB}/${MARK}`
const ADDRESS = `${encodeURIComponent(JOB)}/${MARK}`

let app: App
let browser: Browser
let context: BrowserContext
let page: Page

beforeAll(async () => {
  browser = await startBrowser()
  app = await startApp({ verb: 'demo', clock: DEMO_CLOCK })
})

afterAll(async () => {
  await browser.close()
  await app.stop()
})

afterEach(async ({ task }) => {
  if (task.result?.state === 'fail')
    await page.screenshot({ path: join(tmpdir(), 'castwright-e2e-pour-day.png'), fullPage: true })
})

/** One step that is no hold: everything answered, what is not good decided with a reason, closed. */
async function workStep(step: string): Promise<void> {
  await openStep(page, app.address, ADDRESS, step)
  await answerAll(page)
  await decideAll(page)
  expect(await stillMissing(page), step).toEqual([])
  await closeStep(page)
}

async function enterPour(): Promise<void> {
  await page.getByRole('button', { name: 'Enter the pour' }).click()
  const bed = page.getByLabel('Bed', { exact: true })
  await bed.selectOption({ index: 1 })
  await page.getByLabel('Mix', { exact: true }).selectOption({ index: 1 })
  await page.getByRole('button', { name: 'Record the pour' }).click()
  await page.getByRole('button', { name: 'Correct the pour' }).waitFor()
}

async function enterDocket(): Promise<void> {
  await page.getByRole('button', { name: 'Enter a docket' }).click()
  const form = page.locator('form').filter({ hasText: 'Record the docket' })
  await form.getByLabel('Number', { exact: true }).fill('D-9001')
  await form.getByLabel('Truck', { exact: true }).fill('44')
  await form.getByRole('button', { name: /^Now.*Batched/ }).click()
  await form.getByLabel('Slump measured').fill('120')
  await form.getByRole('button', { name: 'Record the docket' }).click()
  await page.getByText('D-9001').first().waitFor()
}

/** The chute beside the panel, on its left. */
async function settlePlacing(): Promise<void> {
  await page.getByRole('button', { name: 'Say where it stands' }).click()
  await page.getByLabel('From the left, x').fill('-400')
  await page.getByRole('button', { name: 'Record the place' }).click()
  await page.getByText(/^At -400, \d+ mm\. Said by/).waitFor()
  await page.getByText(/^Next is 1 of/).waitFor()
}

/** Six seconds and a tap at each insertion until none is left or `most` were done; the clock of the device is moved on. */
async function walk(most: number): Promise<void> {
  const onward = page.getByRole('button', { name: /^(Vibrator in|In at the next|Out, on to the next)$/ })
  for (let done = 0; done < most && (await onward.isEnabled()); done += 1) {
    await onward.click()
    await page.clock.fastForward(6000)
  }
}

async function recordZones(): Promise<number> {
  const count = await page.locator('.walk-zones li').count()
  for (let zone = 1; zone <= count; zone += 1) {
    await page.getByRole('button', { name: `Record zone ${zone}`, exact: true }).click()
    await page.getByText(new RegExp(`Zone ${zone}:.*recorded as reached`)).waitFor()
  }
  return count
}

/** The night of a logger, as far as it went: a few hours. */
async function enterLog(): Promise<void> {
  await page.getByRole('button', { name: 'Bring in a log' }).click()
  await page.getByLabel('Logger file').setInputFiles({
    name: 'log.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from('hours,celsius\n0,19\n1,20\n2,22\n3,25\n'),
  })
  await page.getByRole('button', { name: 'Record the log' }).click()
  await page.getByRole('button', { name: 'Bring in a log' }).waitFor()
}

async function entriesOfPanel(): Promise<StoredEntry[]> {
  const found: StoredEntry[] = []
  for (let after = -1; ; ) {
    const { entries } = (await page.evaluate(
      (address) => fetch(address).then((answer) => answer.json()),
      `/api/entries?after=${after}&limit=1000`,
    )) as { entries: StoredEntry[] }
    if (entries.length === 0) break
    found.push(...entries.filter(({ subject }) => subject.id === PANEL))
    after = entries.at(-1)?.index ?? after
  }
  return found
}

describe('a pour day, worked through on a phone of 360 px', () => {
  it('from the mould to the covered panel, the network cut from the truck on', async () => {
    context = await browser.newContext({ ...PHONE, colorScheme: 'light', reducedMotion: 'reduce' })
    await context.clock.install({ time: new Date(DEMO_CLOCK) })
    const faults = watchFaults(context)
    page = await context.newPage()
    page.setDefaultTimeout(30_000)
    const lead = app.people.find(({ name }) => name.startsWith('Orla')) ?? app.people[0]
    if (lead === undefined) throw new Error('nobody to sign in')
    await page.goto(app.address)
    await signIn(page, lead.name, lead.pin)

    await workStep('mould')
    await openStep(page, app.address, ADDRESS, 'set')
    await answerAll(page)
    expect(await stillMissing(page)).toEqual([])
    await signHold(page, lead.name, lead.pin)
    await page.getByText('The hold is open').first().waitFor()
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => true))
    const before = (await entriesOfPanel()).length

    await context.setOffline(true)
    await openStep(page, app.address, ADDRESS, 'deliver')
    await enterPour()
    await enterDocket()
    await page.getByRole('button', { name: 'Enter specimens' }).click()
    await page.getByRole('button', { name: 'Record the specimens' }).click()
    await page.getByText(`${MARK}-S1`).first().waitFor()
    await answerAll(page)
    await decideAll(page)
    expect(await stillMissing(page)).toEqual([])
    await closeStep(page)

    await page.goto(`${app.address}/pours/${ADDRESS}`)
    await page.getByText(/^Next is 1 of/).waitFor()
    await settlePlacing()
    await walk(20)
    await page.reload()
    await page.getByText(/^Insertion 20 of/).waitFor()
    await walk(2000)
    await page.getByText('Every insertion is reached.').waitFor()
    const zones = await recordZones()
    expect(zones).toBeGreaterThan(0)

    await workStep('place')
    await workStep('finish')
    await openStep(page, app.address, ADDRESS, 'cure')
    await enterLog()
    expect(await page.getByText(/kept here/i).count()).toBeGreaterThan(0)

    await context.setOffline(false)
    await page.goto(`${app.address}/strength/${ADDRESS}`)
    await page.getByText('all in the record').first().waitFor({ timeout: 60_000 })
    const entries = (await entriesOfPanel()).slice(before)
    const kinds = new Set(entries.map(({ kind }) => kind))
    for (const kind of ['cast', 'docket', 'specimen-set', 'temperature', 'close', 'value'])
      expect([...kinds], kind).toContain(kind)
    expect(new Set(entries.map(({ id }) => id)).size).toBe(entries.length)
    expect(entries.filter(({ kind }) => kind === 'close').map(({ step }) => step)).toEqual([
      'deliver',
      'place',
      'finish',
    ])
    const values = (start: string) => entries.filter(({ check }) => check?.startsWith(start))
    expect(values('stand').map(({ value }) => value)).toEqual([{ x: -400, y: expect.any(Number) }])
    expect(values('zone:').map(({ value }) => value)).toEqual(Array(zones).fill(true))
    expect(values('walk:')).toHaveLength(zones)
    expect(values('left:').map(({ verdict }) => verdict)).toEqual(
      values('left:').map(({ value }) => (Number(value) > 15 ? 'fail' : 'pass')),
    )
    expect(values('left:')).toHaveLength(zones)
    expect(values('cover-on')).toHaveLength(1)
    // Every visit is in the record, by its place.
    const visits = values('walk:').flatMap(({ value }) => value as number[][])
    expect(visits.length).toBeGreaterThan(20)
    expect(visits.every((row) => row.length === 7)).toBe(true)

    // The strength of the panel goes along the log that was brought in without a network.
    await page.getByText('this pour’s own temperatures').waitFor()
    await page.goto(`${app.address}/strength/specimens`)
    await page.getByText(`${MARK}-S1`, { exact: false }).first().waitFor()
    expect(faults).toEqual([])
    await context.close()
  }, 480_000)
})
