import { mkdtemp, rm, stat } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { ExampleDevice, YARD_NAME } from '../example-entries.ts'
import { HistoryError } from './migrations.ts'
import { DATABASE_FILE, KEY_FILE, openStore, StoreError } from './open.ts'
import { bindable, openSqlite } from './sqlite-driver.ts'
import { storeContract } from './store-contract.ts'

let folder: string
let count = 0
const fresh = () => join(folder, `store-${++count}`)

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'castwright-store-'))
})
afterAll(() => rm(folder, { recursive: true, force: true }))

storeContract('SQLite', () => openStore({ folder: fresh(), yard: YARD_NAME }))

describe('embedded record', () => {
  it('is the same after closing and opening again', async () => {
    const at = fresh()
    const device = new ExampleDevice('d1')
    const first = await openStore({ folder: at, yard: YARD_NAME })
    await first.append([device.value('a', 1), device.value('b', 2)])
    const head = await first.head({ now: '2026-03-02T06:00:00.000Z' })
    await first.close()
    const second = await openStore({ folder: at })
    expect(second.yard).toBe(YARD_NAME)
    expect(await second.head({ now: '2026-03-02T06:00:00.000Z' })).toEqual(head)
    await second.append([device.value('c', 3)])
    expect(await second.check()).toEqual([])
    await second.close()
  })

  it('gives a new record a name of its own where none is given', async () => {
    const store = await openStore({ folder: fresh() })
    expect(store.yard).toMatch(/^yard-[0-9a-f]{10}$/)
    await store.close()
  })

  it('keeps the key to its owner', async () => {
    const at = fresh()
    await (await openStore({ folder: at, yard: YARD_NAME })).close()
    expect((await stat(join(at, KEY_FILE))).mode & 0o777).toBe(0o600)
  })

  it('does not open with a key that did not sign it', async () => {
    const at = fresh()
    await (await openStore({ folder: at, yard: YARD_NAME })).close()
    await rm(join(at, KEY_FILE))
    await expect(openStore({ folder: at, yard: YARD_NAME })).rejects.toThrow(StoreError)
  })

  it('does not open a database of another history', async () => {
    const at = fresh()
    await (await openStore({ folder: at, yard: YARD_NAME })).close()
    const database = openSqlite(join(at, DATABASE_FILE))
    database.prepare('insert into migrations values (?, ?)').run(['2031-01-01-of-a-later-version', 'then'])
    database.close()
    await expect(openStore({ folder: at })).rejects.toThrow(HistoryError)
  })

  it('brings a database of before the loggers up to date and keeps what is in it', async () => {
    const at = fresh()
    const before = await openStore({ folder: at, yard: YARD_NAME })
    await before.append([new ExampleDevice('d1').value('a', 1)])
    await before.close()
    const database = openSqlite(join(at, DATABASE_FILE))
    database.prepare('drop table loggers').run([])
    database.prepare(`delete from migrations where name = '2026-11-29-loggers'`).run([])
    database.close()
    const after = await openStore({ folder: at })
    expect(await after.loggers.list()).toEqual([])
    expect(await after.size()).toBe(1)
    await after.close()
  })

  it('finds one changed byte in an entry', async () => {
    const at = fresh()
    const device = new ExampleDevice('d1')
    const store = await openStore({ folder: at, yard: YARD_NAME })
    await store.append([device.value('a', 1), device.value('b', 2), device.value('c', 3)])
    await store.close()
    const database = openSqlite(join(at, DATABASE_FILE))
    database.prepare(`update entries set body = replace(body, '"value":2', '"value":7')`).run([])
    database.close()
    const again = await openStore({ folder: at })
    expect(await again.check()).toEqual([
      'entry 1 has another hash than was stored',
      'entry 1 has another leaf hash than was stored',
      'node 0 of level 1 does not fit its leaves',
    ])
    await again.close()
  })

  it('syncs the disk at every commit and keeps a write-ahead log', () => {
    const database = openSqlite(join(folder, 'pragmas.sqlite'))
    expect(database.prepare('pragma synchronous').all([])).toEqual([{ synchronous: 2 }])
    expect(database.prepare('pragma journal_mode').all([])).toEqual([{ journal_mode: 'wal' }])
    database.close()
  })

  it('binds nothing that the driver would store as something else', () => {
    for (const value of [true, new Date(0), undefined, Number.NaN, Number.POSITIVE_INFINITY, {}, 'a\0b']) {
      expect(() => bindable(value)).toThrow(TypeError)
    }
    for (const value of [null, 1, 'a', 2n, new Uint8Array(1)]) expect(bindable(value)).toBe(value)
  })
})
