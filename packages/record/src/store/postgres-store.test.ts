import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import pg from 'pg'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { ExampleDevice, YARD_NAME } from '../example-entries.ts'
import { openStore, StoreError } from './open.ts'
import { openPostgres } from './postgres-store.ts'
import { storeContract } from './store-contract.ts'

const URL = process.env.TEST_DATABASE_URL

if (URL === undefined || URL === '') {
  describe('record on PostgreSQL', () => {
    it('was not run: TEST_DATABASE_URL names no server, an empty database that the tests may clear', () => {
      expect(URL ?? '').toBe('')
    })
  })
} else {
  onPostgres(URL)
}

function onPostgres(url: string): void {
  let folder: string
  let count = 0

  const clear = async () => {
    const client = new pg.Client({ connectionString: url })
    await client.connect()
    await client.query(
      'drop table if exists migrations, yards, entries, nodes, files, people, sessions, loggers',
    )
    await client.end()
  }
  const fresh = () => join(folder, `store-${++count}`)

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'castwright-postgres-'))
  })
  beforeEach(clear)
  afterAll(async () => {
    await clear()
    await rm(folder, { recursive: true, force: true })
  })

  storeContract('PostgreSQL', () => openPostgres({ url, folder: fresh(), yard: YARD_NAME }))

  describe('record on PostgreSQL: several processes', () => {
    it('numbers one log when several stores append at once', async () => {
      const at = fresh()
      const stores = [await openPostgres({ url, folder: at, yard: YARD_NAME })]
      stores.push(
        ...(await Promise.all([1, 2, 3].map(() => openPostgres({ url, folder: at, yard: YARD_NAME })))),
      )
      await Promise.all(
        stores.flatMap((store, which) => {
          const device = new ExampleDevice(`dev${which}`)
          return Array.from({ length: 25 }, (_, index) => store.append([device.value(`c${index}`, index)]))
        }),
      )
      const [first] = stores
      expect(await first?.size()).toBe(100)
      expect(await first?.check()).toEqual([])
      await Promise.all(stores.map((store) => store.close()))
    })

    it('keeps two yards apart', async () => {
      const [a, b] = [
        await openPostgres({ url, folder: fresh(), yard: YARD_NAME }),
        await openPostgres({ url, folder: fresh(), yard: 'other' }),
      ]
      await a?.append([new ExampleDevice('d1').value('x', 1)])
      expect([await a?.size(), await b?.size()]).toEqual([1, 0])
      await a?.close()
      await b?.close()
      await expect(openStore({ databaseUrl: url, folder: fresh() })).rejects.toThrow(/say which/)
    })

    it('does not open a yard with a key that did not sign it', async () => {
      await (await openPostgres({ url, folder: fresh(), yard: YARD_NAME })).close()
      await expect(openPostgres({ url, folder: fresh(), yard: YARD_NAME })).rejects.toThrow(StoreError)
    })
  })
}
