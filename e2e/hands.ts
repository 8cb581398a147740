import type { Locator, Page } from 'playwright-core'
import { expect } from 'vitest'

/** What a person does on the screens of the app, in the words that the screens use. */

export async function signIn(page: Page, name: string, pin: string): Promise<void> {
  await page.getByRole('button', { name: new RegExp(name) }).click()
  await enterPin(page, pin, 'Sign in')
  await page.getByRole('navigation', { name: 'Rooms' }).waitFor()
}

export async function enterPin(page: Page, pin: string, word: string): Promise<void> {
  await page.getByLabel('PIN', { exact: true }).fill(pin)
  await page.getByRole('button', { name: word, exact: true }).click()
}

/** Signs out and somebody else in. */
export async function changePerson(page: Page, name: string, pin: string): Promise<void> {
  await page.getByRole('button', { name: /change/ }).click()
  await page.getByRole('button', { name: 'Sign out' }).click()
  await signIn(page, name, pin)
}

export async function addPerson(page: Page, name: string, role: string, pin: string): Promise<void> {
  const opener = page.getByText('Add a person')
  const field = page.getByLabel('Name', { exact: true })
  if (!(await field.isVisible())) await opener.click()
  await field.fill(name)
  await page.getByLabel('Role', { exact: true }).selectOption(role)
  await page.getByLabel('First PIN').fill(pin)
  await page.getByRole('button', { name: 'Add', exact: true }).click()
  await page.getByRole('cell', { name, exact: true }).waitFor()
}

/** A wall with a door and a window, by typed dimensions alone. */
export async function typeDrawing(page: Page, job: string, mark: string): Promise<void> {
  await page.getByLabel('Job', { exact: true }).fill(job)
  await page.getByLabel('Mark', { exact: true }).first().fill(mark)
  await page.getByLabel('Length', { exact: true }).fill('6000')
  await page.getByLabel('Width', { exact: true }).first().fill('3000')
  await page.getByLabel('Thickness').fill('160')
  await opening(page, 'Add a door', 0, { x: 900, y: 0, width: 1000, height: 2100 })
  await opening(page, 'Add a window', 1, { x: 3200, y: 900, width: 1400, height: 1200 })
  await page.getByLabel('Strength', { exact: true }).fill('40')
  await page.getByLabel('Largest aggregate').fill('16')
  for (const cover of ['Cover, mould', 'Cover, top', 'Cover, edges']) await page.getByLabel(cover).fill('35')
  for (const index of [0, 1]) {
    await page.getByRole('button', { name: 'Add a mat' }).click()
    const mat = page.getByRole('group', { name: `Mat ${index + 1}` })
    await mat.getByLabel('Diameter').fill('10')
    await mat.getByLabel('Spacing').fill('200')
    await mat.getByLabel('Grade').fill('B500B')
  }
  const inserts = [
    [500, 700],
    [5400, 700],
    [5400, 2500],
    [500, 2500],
  ] as const
  for (const [index, [x, y]] of inserts.entries()) {
    await page.getByRole('button', { name: 'Add an insert' }).click()
    const insert = page.getByRole('group', { name: `Insert ${'ABCD'[index]}` })
    await insert.getByLabel('From the left, x').fill(String(x))
    await insert.getByLabel('From below, y').fill(String(y))
    await insert.getByLabel('Kind of insert').fill('F75')
  }
  await page.getByLabel('Rigging', { exact: true }).fill('R4')
  await page.getByLabel('Reference').fill('LD-7')
  await page.getByLabel('By', { exact: true }).fill('designer')
  await page.getByLabel('Least strength at lift').fill('15')
  await page.getByLabel('Greatest insert load').fill('40')
  await page.getByRole('button', { name: 'Record this drawing' }).click()
  await page.getByRole('heading', { name: 'Is this the steel that was ordered?' }).waitFor()
}

async function opening(
  page: Page,
  button: string,
  index: number,
  {
    x,
    y,
    width,
    height,
  }: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
): Promise<void> {
  await page.getByRole('button', { name: button }).click()
  const part = page.getByRole('group', { name: /^Opening / }).nth(index)
  await part.getByLabel('From the left, x').fill(String(x))
  await part.getByLabel('From below, y').fill(String(y))
  await part.getByLabel('Width', { exact: true }).fill(String(width))
  await part.getByLabel('Height').fill(String(height))
}

/** Goes to the card of a step and waits until the plan is there. */
export async function openStep(page: Page, address: string, panel: string, step: string): Promise<void> {
  await page.goto(`${address}/panel/${panel}?step=${step}`)
  await page.locator('#card-question').first().waitFor()
  await page
    .getByRole('status')
    .filter({ hasText: /condition|asked here|Waits|closed|opened/ })
    .first()
    .waitFor()
}

/** Answers every row that is still open, with a good value of its kind. */
export async function answerAll(page: Page): Promise<number> {
  let answered = 0
  for (; answered < 80; answered += 1) {
    const row = page
      .locator('li.check-row')
      .filter({ has: page.locator('.answer') })
      .first()
    if ((await row.count()) === 0) break
    const what = (await row.getByRole('heading').textContent()) ?? ''
    await answerRow(row)
    const same = page
      .locator('li.check-row')
      .filter({ has: page.getByRole('heading', { name: what, exact: true }) })
    await expect.poll(() => same.locator('.answer').count(), { message: what, timeout: 15_000 }).toBe(0)
  }
  return answered
}

async function answerRow(row: Locator): Promise<void> {
  const tick = row.getByRole('button', { name: /^As it should be/ })
  if ((await tick.count()) > 0) return tick.click()
  const choice = row.getByRole('combobox')
  const box = row.getByRole('textbox')
  if ((await choice.count()) > 0) {
    const words = await choice.getByRole('option').allTextContents()
    await choice.selectOption(words[1] ?? '')
  } else {
    const notes = [
      ...(await row.locator('.field-note').allTextContents()),
      ...(await row.locator('.check-note').allTextContents()),
    ]
    await box.fill(goodValue(notes.join(' ')))
  }
  await row.getByRole('button', { name: /^Record/ }).click()
}

/** A value inside what the note says is wanted; where nothing is said, a plain number. */
export function goodValue(note: string): string {
  const band = /Wanted: (-?[\d.]+) to (-?[\d.]+)/.exec(note)
  if (band) return String((Number(band[1]) + Number(band[2])) / 2)
  // Readings: one a line, as many as are asked for.
  const each = /Wanted each: (-?[\d.]+) to (-?[\d.]+)\D+(\d+) readings/.exec(note)
  if (each)
    return Array(Number(each[3]))
      .fill((Number(each[1]) + Number(each[2])) / 2)
      .join('\n')
  const least = /Wanted: at least (-?[\d.]+)/.exec(note)
  if (least) return String(Number(least[1]) + 1)
  const most = /Wanted: at most (-?[\d.]+)/.exec(note)
  if (most) return String(Number(most[1]) / 2)
  const exact = /Wanted: (-?[\d.]+)/.exec(note)
  // A length that is judged with others: as drawn.
  const drawn = /Drawn (-?[\d.]+) mm/.exec(note)
  return exact?.[1] ?? drawn?.[1] ?? '12'
}

/** Decides what fails or is not known, with a reason. */
export async function decideAll(page: Page): Promise<number> {
  let decided = 0
  for (; decided < 40; decided += 1) {
    const button = page.getByRole('button', { name: /^decide/ }).first()
    if ((await button.count()) === 0) break
    const before = await page.getByText(/^Decided: /).count()
    await button.click()
    await page.getByLabel('Why it goes on all the same').fill('seen and accepted in the test')
    await page.getByRole('button', { name: /^Record the decision/ }).click()
    await expect.poll(() => page.getByText(/^Decided: /).count(), { timeout: 15_000 }).toBe(before + 1)
  }
  return decided
}

/** The engineer signs each of our own results that does not pass where the lifting design holds; every one wants a reason. */
export async function signDifferences(page: Page): Promise<number> {
  let count = 0
  for (; count < 20; count += 1) {
    const button = page.getByRole('button', { name: /^Sign this difference/ }).first()
    if ((await button.count()) === 0) break
    const before = await page.getByText(/^Difference signed, not passed/).count()
    await button.click()
    const sign = page.getByRole('button', { name: /^Sign the difference/ })
    await sign.click()
    await page.getByText('Write the reason: it stands in the record with your name.').waitFor()
    await page.getByLabel('Why the lifting design may govern here').fill('bars as drawn, by hand, sheet 3')
    await sign.click()
    await expect
      .poll(() => page.getByText(/^Difference signed, not passed/).count(), { timeout: 15_000 })
      .toBe(before + 1)
  }
  return count
}

export async function closeStep(page: Page): Promise<void> {
  await page.getByRole('button', { name: /^Close .* as / }).click()
  await page.getByText('This step is closed').waitFor()
}

/** What still keeps a card shut, as it says itself. */
export async function stillMissing(page: Page): Promise<readonly string[]> {
  const list = page.locator('details.missing li')
  return list.allTextContents()
}

export async function signHold(page: Page, name: string, pin: string): Promise<void> {
  await page.getByRole('button', { name: /^Sign: opens/ }).click()
  await page
    .locator('.people')
    .getByRole('button', { name: new RegExp(name) })
    .click()
  await enterPin(page, pin, `Sign as ${name}`)
}
