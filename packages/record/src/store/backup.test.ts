import { mkdtemp, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { InputError } from '@castwright/engine/working'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { ExampleDevice, YARD_NAME } from '../example-entries.ts'
import { restoreFolder } from './backup.ts'
import { sha256OfFile } from './files.ts'
import { DATABASE_FILE, KEY_FILE, openStore } from './open.ts'
import { openSqlite } from './sqlite-driver.ts'
import type { Backup } from './store.ts'

const PICTURE = new TextEncoder().encode('a picture of the cage')
const PICTURE_SHA = sha256OfFile(PICTURE)
const NOW = '2026-03-02T06:00:00.000Z'

let root: string
let count = 0
let at: { readonly data: string; readonly copy: string; readonly back: string }
let backup: Backup

beforeAll(async () => {
  root = await mkdtemp(join(tmpdir(), 'castwright-backup-'))
})
afterAll(() => rm(root, { recursive: true, force: true }))

beforeEach(async () => {
  count++
  at = {
    data: join(root, `data-${count}`),
    copy: join(root, `copy-${count}`),
    back: join(root, `back-${count}`),
  }
  const device = new ExampleDevice('d1')
  const store = await openStore({ folder: at.data, yard: YARD_NAME })
  await store.append(Array.from({ length: 40 }, (_, index) => device.value(`c${index}`, index)))
  await store.files.put(PICTURE_SHA, PICTURE, 'image/jpeg')
  await store.people.add({ id: 'p1', name: 'Rua Hale', role: 'lead', pinHash: 'argon', active: true })
  // Writing goes on while the copy is made; what is acknowledged before stays in it.
  const more = store.append([device.value('later', 1)])
  backup = await store.backup(at.copy)
  await more
  await store.close()
})

describe('backup and restore', () => {
  it('restores entries, files, accounts and the key that signs them', async () => {
    const restored = await restoreFolder({ from: at.copy, folder: at.back })
    expect(restored).toEqual({ ...backup, folder: at.back })
    expect(backup.size).toBeGreaterThanOrEqual(40)
    expect(backup.files).toBe(1)
    const [before, after] = [await openStore({ folder: at.data }), await openStore({ folder: at.back })]
    const { size } = backup
    expect(await after.head({ now: NOW })).toEqual(await before.head({ size, now: NOW }))
    expect((await after.files.get(PICTURE_SHA))?.bytes).toEqual(Buffer.from(PICTURE))
    expect(await after.people.list()).toEqual(await before.people.list())
    expect(await after.check()).toEqual([])
    await before.close()
    await after.close()
  })

  it('keeps the key in the copy to its owner', async () => {
    expect((await stat(join(at.copy, KEY_FILE))).mode & 0o777).toBe(0o600)
    expect((await readdir(at.copy)).sort()).toEqual(['backup.json', 'files', DATABASE_FILE, KEY_FILE].sort())
  })

  it('does not write over a folder that holds something', async () => {
    const store = await openStore({ folder: at.data })
    await expect(store.backup(at.copy)).rejects.toThrow(InputError)
    await store.close()
    await expect(restoreFolder({ from: at.copy, folder: at.data })).rejects.toThrow(/new or empty/)
  })

  it('refuses a folder that is no backup', async () => {
    await expect(restoreFolder({ from: at.data, folder: at.back })).rejects.toThrow(/backup\.json/)
  })

  const broken: readonly [string, () => Promise<void>, RegExp][] = [
    ['a picture that changed', () => writeFile(pictureAt(), 'another picture'), /files\/[0-9a-f]{64}/],
    ['a picture that is gone', () => rm(pictureAt()), /no such file/],
    ['a database that is gone', () => rm(join(at.copy, DATABASE_FILE)), /record\.sqlite/],
    [
      'a database that is none',
      () => writeFile(join(at.copy, DATABASE_FILE), 'x'.repeat(5000)),
      /record\.sqlite/,
    ],
    [
      'a changed entry',
      () => run(`update entries set body = replace(body, '"value":7', '"value":8')`),
      /entry 7/,
    ],
    ['an entry that is no JSON', () => run(`update entries set body = 'x' where position = 3`), /entry 3/],
    ['a lost entry', () => run('delete from entries where position = 39'), /entry 39 is missing/],
    ['another root', () => manifest((text) => text.replace(/"root": "../, '"root": "00')), /root/],
    [
      'a manifest of another format',
      () => manifest((text) => text.replace('backup/1', 'backup/9')),
      /format/,
    ],
    ['the key of another yard', async () => rm(join(at.copy, KEY_FILE)), /yard-key\.pem/],
  ]
  it.each(broken)('refuses %s and writes nothing', async (_, spoil, message) => {
    await spoil()
    const act = restoreFolder({ from: at.copy, folder: at.back })
    await expect(act).rejects.toThrow(InputError)
    await expect(act).rejects.toThrow(message)
    expect(await readdir(root)).not.toContain(`back-${count}`)
  })
})

function pictureAt(): string {
  return join(at.copy, 'files', PICTURE_SHA.slice(0, 2), PICTURE_SHA)
}

async function run(statement: string): Promise<void> {
  const database = openSqlite(join(at.copy, DATABASE_FILE), 'delete')
  database.prepare(statement).run([])
  database.close()
}

async function manifest(change: (text: string) => string): Promise<void> {
  const path = join(at.copy, 'backup.json')
  await writeFile(path, change(await readFile(path, 'utf8')))
}
