import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { makeEntry, newDevice, type Passport, panelSubject } from '@castwright/record'
import { issuePassport, openStore } from '@castwright/record/store'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { cli } from '../testing.ts'

const DRAWING = {
  format: 'castwright.drawing/1',
  mark: 'W1',
  outline: [
    [0, 0],
    [3000, 0],
    [3000, 2000],
    [0, 2000],
  ],
  thickness: 120,
  concrete: { strength: 40 },
}
const NOW = Date.parse('2026-03-02T06:00:00.000Z')

let root: string
let data: string
let passport: string
let key: string

beforeAll(async () => {
  root = await mkdtemp(join(tmpdir(), 'castwright-cli-'))
  data = join(root, 'data')
  const store = await openStore({ folder: data, yard: 'example', clock: () => NOW })
  const { entry } = makeEntry({
    device: newDevice('desk'),
    person: { id: 'p1', name: 'Rua Hale', role: 'lead' },
    yard: 'example',
    now: NOW,
    draft: { kind: 'drawing', subject: panelSubject('J1', 'W1'), revision: 'A', value: DRAWING },
  })
  await store.append([entry])
  key = store.publicKey
  const bytes = await issuePassport({
    store,
    panel: { job: 'J1', mark: 'W1', revision: 'A' },
    drawing: DRAWING as unknown as Passport['drawing'],
    plan: { engine: '0.1.0', family: 'eu', editions: [], figures: { mass: 1800 } },
    entries: await store.read({ after: -1, limit: 10 }),
    now: new Date(NOW).toISOString(),
  })
  passport = new TextDecoder().decode(bytes)
  await store.close()
})
afterAll(() => rm(root, { recursive: true, force: true }))
afterEach(() => {
  delete process.env.DATABASE_URL
  delete process.env.CASTWRIGHT_FILES
})

describe('castwright verify', () => {
  it('passes with the yard’s key, given as digits or in a file', async () => {
    const files = { 'w1.json': passport, 'yard.key': `${key}\n` }
    const ran = await cli(['verify', 'w1.json', '--key', key, '--json'], files)
    expect(ran.json()).toEqual({ verdict: 'pass', problems: [] })
    expect(ran.code).toBe(0)
    expect((await cli(['verify', 'w1.json', '--key', 'yard.key'], files)).code).toBe(0)
  })

  it('is not known without the key, and asks whose it is', async () => {
    const ran = await cli(['verify', '-', '--json'], { '-': passport })
    expect(ran.code).toBe(1)
    expect(ran.json()).toMatchObject({
      verdict: 'unknown',
      problems: [],
      unknown: [expect.stringContaining('whose key')],
    })
  })

  it('fails where one byte was changed and says where', async () => {
    const ran = await cli(['verify', 'w1.json', '--key', key, '--json'], {
      'w1.json': passport.replace('"mass":1800', '"mass":1700'),
    })
    expect(ran.code).toBe(1)
    expect(ran.json()).toMatchObject({
      verdict: 'fail',
      problems: [{ at: 'plan.figures.mass' }, { at: 'signature' }],
    })
  })

  it('prints for reading, and never that a panel is safe', async () => {
    const { out } = await cli(['verify', 'w1.json'], { 'w1.json': passport })
    expect(out).toContain('J1/W1, revision A')
    expect(out).toContain('Verdict: unknown')
    expect(out).not.toMatch(/safe/i)
  })

  it('takes --explain and --help', async () => {
    expect((await cli(['verify', 'w1.json', '--explain'], { 'w1.json': passport })).out).toContain(
      'Working: none',
    )
    const help = await cli(['verify', '--help'])
    expect(help.code).toBe(0)
    expect(help.out).toContain('--key')
  })

  it.each<[string, string[], string, RegExp]>([
    ['no file', ['verify'], '', /PASSPORT/],
    ['a file that is not there', ['verify', 'none.json'], '', /none\.json/],
    ['no JSON', ['verify', '-'], 'hello', /standard input: found text that is not JSON/],
    ['a drawing', ['verify', '-'], JSON.stringify(DRAWING), /format: found "castwright\.drawing\/1"/],
    ['a passport that was written anew', ['verify', '-'], 'PRETTY', /byte 1/],
    ['a key that is none', ['verify', '-', '--key', 'abc'], 'PASSPORT', /option --key/],
    ['an option that is none', ['verify', '-', '--keys', 'abc'], 'PASSPORT', /--keys/],
  ])('refuses %s', async (_, args, text, message) => {
    const given =
      text === 'PRETTY'
        ? JSON.stringify(JSON.parse(passport), null, 2)
        : text === 'PASSPORT'
          ? passport
          : text
    const ran = await cli(args, text === '' ? {} : { '-': given })
    expect(ran.code).toBe(2)
    expect(ran.err).toMatch(message)
    expect(ran.out).toBe('')
  })
})

describe('castwright backup and restore', () => {
  it('copies a record and brings it back whole', async () => {
    const [copy, back] = [join(root, 'copy'), join(root, 'back')]
    const backup = await cli(['backup', copy, '--data', data, '--json'])
    expect(backup.err).toBe('')
    expect(backup.json()).toMatchObject({ folder: copy, yard: 'example', size: 1, files: 0 })
    const restore = await cli(['restore', copy, '--data', back])
    expect(restore.code).toBe(0)
    expect(restore.out).toContain('Every entry, node and file was read and fits.')
    const store = await openStore({ folder: back, existing: true })
    expect(await store.size()).toBe(1)
    expect(store.publicKey).toBe(key)
    await store.close()
  })

  it.each<[string, () => string[], RegExp]>([
    ['no folder', () => ['backup'], /FOLDER/],
    ['standard output', () => ['backup', '-', '--data', data], /FOLDER: found -/],
    ['a folder that holds something', () => ['backup', data, '--data', data], /new or empty/],
    [
      'a data folder that is not there',
      () => ['backup', join(root, 'n1'), '--data', join(root, 'none')],
      /option --data.*no record/,
    ],
    ['a data folder without a record', () => ['backup', join(root, 'n2'), '--data', root], /option --data/],
    ['an empty data folder name', () => ['backup', join(root, 'n3'), '--data', ''], /option --data/],
    ['an option that is none', () => ['backup', join(root, 'n4'), '--deep'], /--deep/],
  ])('backup refuses %s and writes nothing', async (_, args, message) => {
    const before = await readdir(root)
    const ran = await cli(args())
    expect(ran.code).toBe(2)
    expect(ran.err).toMatch(message)
    expect(await readdir(root)).toEqual(before)
  })

  it.each<[string, (copy: string, back: string) => Promise<string[]>, RegExp]>([
    ['no folder', async () => ['restore'], /FOLDER/],
    [
      'a folder that is not there',
      async (copy) => ['restore', `${copy}-none`, '--data', copy],
      /backup\.json/,
    ],
    ['a data folder that holds something', async (copy) => ['restore', copy, '--data', data], /new or empty/],
    [
      'a backup of a later format',
      async (copy, back) => {
        await writeFile(
          join(copy, 'backup.json'),
          (await readFile(join(copy, 'backup.json'), 'utf8')).replace('backup/1', 'backup/2'),
        )
        return ['restore', copy, '--data', back]
      },
      /format/,
    ],
    [
      'a backup that lost its database',
      async (copy, back) => {
        await rm(join(copy, 'record.sqlite'))
        return ['restore', copy, '--data', back]
      },
      /record\.sqlite/,
    ],
    [
      'a backup with another root',
      async (copy, back) => {
        const manifest = JSON.parse(await readFile(join(copy, 'backup.json'), 'utf8')) as object
        await writeFile(join(copy, 'backup.json'), JSON.stringify({ ...manifest, root: '0'.repeat(64) }))
        return ['restore', copy, '--data', back]
      },
      /root/,
    ],
  ])('restore refuses %s and writes nothing', async (name, make, message) => {
    const copy = join(root, `copy of ${name}`)
    const back = join(root, `back of ${name}`)
    await cli(['backup', copy, '--data', data])
    const ran = await cli(await make(copy, back))
    expect(ran.code).toBe(2)
    expect(ran.err).toMatch(message)
    expect(await readdir(root)).not.toContain(`back of ${name}`)
  })

  it('refuses a record in PostgreSQL and files behind an address, and says what to do', async () => {
    process.env.DATABASE_URL = 'postgres://example/yard'
    for (const verb of ['backup', 'restore']) {
      const ran = await cli([verb, join(root, 'n5'), '--data', data])
      expect([ran.code, ran.err]).toEqual([2, expect.stringContaining('DATABASE_URL')])
    }
    delete process.env.DATABASE_URL
    process.env.CASTWRIGHT_FILES = 's3://bucket'
    const ran = await cli(['backup', join(root, 'n6'), '--data', data])
    expect([ran.code, ran.err]).toEqual([2, expect.stringContaining('CASTWRIGHT_FILES')])
  })
})
