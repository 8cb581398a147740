import AxeBuilder from '@axe-core/playwright'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'

/** Nothing that axe finds, and nothing that goes beyond the side of the screen. */
export async function expectNoFaultsOfAxe(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze()
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`)).toEqual([])
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true)
}
