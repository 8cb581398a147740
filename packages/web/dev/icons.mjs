// Draws the app's icons from public/icon.svg: `node packages/web/dev/icons.mjs`. The pictures are committed.
import { readFileSync, writeFileSync } from 'node:fs'
import { chromium } from 'playwright-core'

const folder = new URL('../public/', import.meta.url)
const mark = readFileSync(new URL('icon.svg', folder), 'utf8')
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
  args: ['--no-sandbox'],
})
for (const [name, size, inset] of [
  ['icon-192.png', 192, 0],
  ['icon-512.png', 512, 0],
  ['icon-mask-512.png', 512, 56], // a mask may cut the outer tenth on every side
]) {
  const page = await browser.newPage({ viewport: { width: size, height: size } })
  await page.setContent(
    `<style>body{margin:0;background:#fffdf8}svg{display:block;margin:${inset}px;width:${size - 2 * inset}px}</style>${mark}`,
  )
  writeFileSync(new URL(name, folder), await page.screenshot())
  await page.close()
}
await browser.close()
