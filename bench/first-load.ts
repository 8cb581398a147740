import { readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { gzipSync } from 'node:zlib'
import type { BenchLine } from './line.ts'

const DIST = fileURLToPath(new URL('../packages/web/dist/app', import.meta.url))

/** Bytes of the app's first load: the page, its styles, its script and every chunk that those import at once. */
export function firstLoad(): BenchLine[] {
  const page = readFileSync(join(DIST, 'index.html'), 'utf8')
  const named = [...page.matchAll(/(?:src|href)="(\/[^"]+\.(?:js|css))"/g)].map(([, path]) => path ?? '')
  const seen = new Map<string, number>()
  const visit = (path: string): void => {
    if (seen.has(path)) return
    const text = readFileSync(join(DIST, path))
    seen.set(path, gzipSync(text, { level: 9 }).length)
    if (!path.endsWith('.js')) return
    for (const [, target] of text.toString('utf8').matchAll(/(?:from|import)\s*["'](\.[^"']+\.js)["']/g)) {
      visit(join(dirname(path), target ?? ''))
    }
  }
  for (const path of named) visit(path)
  const total = [...seen.values()].reduce((sum, size) => sum + size, gzipSync(page).length)
  return [
    {
      what: 'first load of the app, gzip',
      value: `${(total / 1000).toFixed(0)} kB`,
      beside: `${seen.size} files, fonts and what is loaded later left out; goal 250 kB`,
    },
  ]
}
