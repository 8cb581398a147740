import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { cli } from './testing.ts'
import type { Verb } from './verb.ts'
import { VERBS } from './verbs.ts'

/** Verbs that serve or write into a folder: their words are checked, they are not run. */
const NOT_RUN = new Set(['melt', 'serve', 'demo', 'import', 'export', 'backup', 'restore'])
const ALWAYS = ['--json', '--explain', '--code', '--help']
const PAGES = ['README.md', ...pagesOf('docs')]

function pagesOf(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((item) => {
    const path = join(folder, item.name)
    if (item.isDirectory()) return pagesOf(path)
    return item.name.endsWith('.md') ? [path] : []
  })
}

/** Command lines that stand alone on a line of prose, and those inside back quotes. */
function examplesOf(page: string): string[] {
  const text = readFileSync(page, 'utf8')
  return [...text.matchAll(/(?:^ {4}|`)npx castwright (\S[^`\n]*?)(?:`|$)/gm)].map(([, line]) => line ?? '')
}

const EXAMPLES = PAGES.flatMap((page) => examplesOf(page).map((line) => [page, line] as const))

async function verbOf(name: string): Promise<Verb | undefined> {
  return VERBS[name]?.()
}

/** Options of a command line that the verb does not have. */
function strangers(verb: Verb, words: readonly string[]): string[] {
  const has = new Set([...ALWAYS, ...verb.options.map(({ flags }) => flags.split(' ')[0] ?? '')])
  return words.filter((word) => word.startsWith('--') && !has.has(word))
}

describe('command lines in the prose', () => {
  it('are found', () => {
    expect(EXAMPLES.length).toBeGreaterThan(25)
  })

  it.each(EXAMPLES)('%s: castwright %s', async (_, line) => {
    const words = line.split(' ')
    const [name = ''] = words
    if (name === 'VERB' || name === '--help') return
    const verb = await verbOf(name)
    expect(verb, name).toBeDefined()
    if (verb === undefined) return
    expect(strangers(verb, words)).toEqual([])
    // A word in capitals stands for the reader's own file or key.
    if (NOT_RUN.has(name) || words.some((word) => /^[A-Z]{3,}$/.test(word))) return
    const ran = await cli(words)
    expect(ran.err).toBe('')
    expect([0, 1]).toContain(ran.code)
    expect(ran.out).not.toBe('')
  })

  it('give an example of every verb on the page of the command line', () => {
    const shown = examplesOf('docs/guide/command-line.md').map((line) => line.split(' ')[0])
    expect(Object.keys(VERBS).filter((name) => !shown.includes(name))).toEqual([])
  })
})

describe('the example of each verb’s help', () => {
  it.each(Object.keys(VERBS))('%s', async (name) => {
    const verb = await verbOf(name)
    const words = (verb?.example ?? '').split(' ')
    expect(words.slice(0, 2)).toEqual(['castwright', name])
    if (verb === undefined) return
    expect(strangers(verb, words)).toEqual([])
    if (NOT_RUN.has(name)) return
    const ran = await cli(words.slice(1))
    expect(ran.err).toBe('')
    expect([0, 1]).toContain(ran.code)
  })
})
