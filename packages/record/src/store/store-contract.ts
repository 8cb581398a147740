import { randomBytes } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { canonicalBytes } from '../canonical.ts'
import { ExampleDevice, FLOOR, PANEL, YARD_NAME } from '../example-entries.ts'
import { fromHex } from '../hash.ts'
import { verifyHead, verifySignature } from '../head.ts'
import { leafHash, rootOfLeaves, verifyConsistency, verifyInclusion } from '../merkle.ts'
import { HashError, sha256OfFile } from './files.ts'
import type { Store } from './store.ts'

const NOW = '2026-03-02T06:00:00.000Z'

/** What every store must do, on whatever engine. `open` gives an empty one of the yard `example`. */
export function storeContract(engine: string, open: () => Promise<Store>): void {
  const using = async (act: (store: Store) => Promise<void>): Promise<void> => {
    const store = await open()
    try {
      await act(store)
    } finally {
      await store.close()
    }
  }

  describe(`record on ${engine}: entries`, () => {
    it('takes entries in and gives them back in order with index and time stored', () =>
      using(async (store) => {
        const device = new ExampleDevice('d1')
        const entries = Array.from({ length: 7 }, (_, index) => device.value(`c${index}`, index))
        const results = await store.append(entries, { now: NOW })
        expect(results.map(({ status }) => status)).toEqual(Array(7).fill('stored'))
        const read = await store.read({ after: -1, limit: 100 })
        expect(read).toEqual(entries.map((entry, index) => ({ ...entry, stored: NOW, index })))
        expect(await store.read({ after: 4, limit: 1 })).toEqual(read.slice(5, 6))
        expect(await store.size()).toBe(7)
      }))

    it('answers known for what it has, in the same call or a later one, and stores it once', () =>
      using(async (store) => {
        const entry = new ExampleDevice('d1').value('slump', 100)
        const first = await store.append([entry, entry], { now: NOW })
        const second = await store.append([entry], { now: '2026-03-02T07:00:00.000Z' })
        expect([...first, ...second].map(({ status }) => status)).toEqual(['stored', 'known', 'known'])
        expect(second[0]).toMatchObject({ index: 0, stored: { stored: NOW } })
        expect(await store.size()).toBe(1)
      }))

    it('refuses another entry under an id that is taken', () =>
      using(async (store) => {
        const entry = new ExampleDevice('d1').value('slump', 100)
        await store.append([entry])
        const [result] = await store.append([{ ...entry, value: 90 }])
        expect(result).toMatchObject({ status: 'refused', issues: [{ path: 'id' }] })
        expect((await store.find([entry.id]))[0]?.value).toBe(100)
      }))

    it('refuses one wrong entry and keeps the good ones beside it', () =>
      using(async (store) => {
        const device = new ExampleDevice('d1')
        const good = device.value('slump', 100)
        const results = await store.append([
          { ...good, kind: 'song' },
          good,
          'nonsense',
          { ...good, yard: 'other' },
        ])
        expect(results.map(({ status }) => status)).toEqual(['refused', 'stored', 'refused', 'refused'])
        expect(results[0]).toMatchObject({ issues: [{ path: 'kind' }] })
        expect(results[3]).toMatchObject({ issues: [{ path: 'yard', expected: '"example"' }] })
      }))

    it('refuses alone what has no exact bytes or could not be kept as it is', () =>
      using(async (store) => {
        const device = new ExampleDevice('d1')
        const good = device.value('slump', 100)
        const at = (change: object) => ({ ...good, id: '00000000000000000000000001', ...change })
        let deep: unknown = 1
        for (let level = 0; level < 20_000; level++) deep = [deep]
        const bad = [
          at({ value: 'x\ud800' }),
          at({ reason: '\udc00' }),
          at({ subject: { kind: 'bed', id: 'B\u0000' } }),
          at({ device: { ...good.device, id: 'd\u0007' } }),
          at({ kind: 'correction', about: good.id, reason: 'x', value: deep }),
        ]
        const results = await Promise.all([...bad, good].map((entry) => store.append([entry])))
        expect(results.map(([result]) => result?.status)).toEqual([...bad.map(() => 'refused'), 'stored'])
        const nul = device.value('note', 'a\u0000b')
        await store.append([nul])
        expect((await store.find([nul.id]))[0]?.value).toBe('a\u0000b')
        expect(await store.check()).toEqual([])
      }))

    it('says where a device skipped an entry and where its chain forks', () =>
      using(async (store) => {
        const device = new ExampleDevice('d1')
        const [a, b, c] = [device.value('a', 1), device.value('b', 2), device.value('c', 3)]
        const twin = new ExampleDevice('d1').at(Date.parse(NOW)).value('z', 9)
        const other = { ...twin, id: '00000000000000000000000009' }
        const chains = async (entries: unknown[]) =>
          (await store.append(entries)).map((result) => ('chain' in result ? result.chain : result.status))
        expect(await chains([a, c])).toEqual(['follows', 'gap'])
        expect(await chains([b])).toEqual(['follows'])
        expect(await chains([c])).toEqual(['follows'])
        expect(
          await chains([
            other,
            { ...b, id: '0000000000000000000000000A', device: { ...b.device, counter: 4 } },
          ]),
        ).toEqual(['follows', 'fork'])
      }))

    it('numbers without gaps when many append at once, each answered with its own', () =>
      using(async (store) => {
        const devices = Array.from({ length: 20 }, (_, index) => new ExampleDevice(`dev${index}`))
        const answers = await Promise.all(
          devices.flatMap((device) =>
            Array.from({ length: 10 }, (_, index) => {
              const entry = device.value(`c${index}`, index)
              return store.append([entry]).then(([result]) => ({ entry, result }))
            }),
          ),
        )
        for (const { entry, result } of answers)
          expect(result).toMatchObject({ id: entry.id, status: 'stored' })
        const read = await store.read({ after: -1, limit: 1000 })
        expect(read.map(({ index }) => index)).toEqual(Array.from({ length: 200 }, (_, index) => index))
        expect(await store.check()).toEqual([])
      }))
  })

  describe(`record on ${engine}: tree`, () => {
    it('signs a head whose root is that of the RFC 8785 bytes of its entries, at every size', () =>
      using(async (store) => {
        const device = new ExampleDevice('d1')
        expect((await store.head()).root).toBe(sha256OfFile(new Uint8Array(0)))
        for (let size = 1; size <= 20; size++) {
          await store.append([device.value(`c${size}`, size)], { now: NOW })
          const leaves = (await store.read({ after: -1, limit: 100 })).map((entry) =>
            leafHash(canonicalBytes(entry)),
          )
          const head = await store.head({ now: NOW })
          expect(head).toMatchObject({ yard: YARD_NAME, size, time: NOW })
          expect(fromHex(head.root)).toEqual(rootOfLeaves(leaves))
          expect(verifyHead(head, store.publicKey)).toBe(true)
          expect(verifyHead({ ...head, size: size + 1 }, store.publicKey)).toBe(false)
        }
      }))

    it('proves every entry in every head, and each head from every earlier one', () =>
      using(async (store) => {
        const device = new ExampleDevice('d1')
        await store.append(Array.from({ length: 13 }, (_, index) => device.value(`c${index}`, index)))
        const leaves = (await store.read({ after: -1, limit: 100 })).map((entry) =>
          leafHash(canonicalBytes(entry)),
        )
        for (let size = 1; size <= 13; size++) {
          const root = fromHex((await store.head({ size })).root)
          for (let index = 0; index < size; index++) {
            const proof = (await store.inclusion(index, size)).map(fromHex)
            expect(verifyInclusion({ index, size, leaf: leaves[index] as Uint8Array, proof, root })).toBe(
              true,
            )
          }
          const fromRoot = root
          const toRoot = fromHex((await store.head()).root)
          const proof = (await store.consistency(size, 13)).map(fromHex)
          expect(verifyConsistency({ from: size, to: 13, fromRoot, toRoot, proof })).toBe(true)
        }
        await expect(store.inclusion(13, 13)).rejects.toThrow(RangeError)
        await expect(store.inclusion(0, 14)).rejects.toThrow(RangeError)
        await expect(store.consistency(3, 14)).rejects.toThrow(RangeError)
        await expect(store.head({ size: 14 })).rejects.toThrow(RangeError)
      }))

    it('signs other bytes with the same key', () =>
      using(async (store) => {
        const bytes = canonicalBytes({ a: 1 })
        const signature = Buffer.from(store.sign(bytes)).toString('hex')
        expect(verifySignature(signature, bytes, store.publicKey)).toBe(true)
      }))
  })

  describe(`record on ${engine}: files`, () => {
    it('keeps bytes under their hash, once', () =>
      using(async (store) => {
        const bytes = randomBytes(3000)
        const sha256 = sha256OfFile(bytes)
        expect(await store.files.has(sha256)).toBe(false)
        expect(await store.files.get(sha256)).toBeNull()
        expect(await store.files.put(sha256, bytes, 'image/jpeg')).toBe('stored')
        expect(await store.files.put(sha256, bytes, 'image/jpeg')).toBe('known')
        const got = await store.files.get(sha256)
        expect(got).toMatchObject({ sha256, size: 3000, type: 'image/jpeg' })
        expect(Buffer.compare(got?.bytes ?? new Uint8Array(), bytes)).toBe(0)
        expect(await store.files.list()).toEqual([{ sha256, size: 3000, type: 'image/jpeg' }])
      }))

    it('refuses bytes of another hash', () =>
      using(async (store) => {
        await expect(store.files.put('0'.repeat(64), randomBytes(10), 'image/png')).rejects.toThrow(HashError)
        expect(await store.files.list()).toEqual([])
      }))
  })

  describe(`record on ${engine}: people`, () => {
    const account = { id: 'p1', name: 'Rua Hale', role: 'lead', pinHash: 'argon', active: true } as const

    it('adds, changes and closes accounts', () =>
      using(async ({ people }) => {
        expect(await people.add(account)).toBe(true)
        expect(await people.add({ ...account, name: 'Another' })).toBe(false)
        await people.add({ ...account, id: 'p2', name: 'Ann Cole', role: 'floor', pinHash: null })
        expect((await people.list()).map(({ name }) => name)).toEqual(['Ann Cole', 'Rua Hale'])
        expect(await people.change('p1', { pinHash: 'new', active: false })).toBe(true)
        expect(await people.find('p1')).toEqual({ ...account, pinHash: 'new', active: false })
        expect(await people.change('p9', { active: false })).toBe(false)
        expect(await people.find('p9')).toBeNull()
      }))

    it('holds a session until it expires, is signed out or swept', () =>
      using(async ({ people }) => {
        const session = (tokenHash: string, person: string) => ({
          tokenHash,
          person,
          created: NOW,
          expires: '2026-03-02T18:00:00.000Z',
        })
        await people.add(account)
        for (const hash of ['a', 'b', 'c']) await people.signIn(session(hash, 'p1'))
        await people.signIn(session('d', 'p2'))
        expect(await people.session('a', NOW)).toEqual(session('a', 'p1'))
        expect(await people.session('a', '2026-03-02T18:00:00.000Z')).toBeNull()
        await people.signOut('a')
        expect(await people.session('a', NOW)).toBeNull()
        await people.signOutAll('p1')
        expect(await people.session('b', NOW)).toBeNull()
        expect(await people.sweep(NOW)).toBe(0)
        expect(await people.sweep('2026-03-03T00:00:00.000Z')).toBe(1)
      }))
  })

  describe(`record on ${engine}: loggers`, () => {
    const logger = {
      id: 'l1',
      name: 'North wall',
      keyHash: 'a'.repeat(64),
      panel: null,
      since: null,
      active: true,
      madeBy: 'p1',
    } as const

    it('adds, moves and closes them, and finds one by the hash of its key', () =>
      using(async ({ loggers }) => {
        expect(await loggers.list()).toEqual([])
        expect(await loggers.add(logger)).toBe(true)
        expect(await loggers.add({ ...logger, name: 'Another', keyHash: 'f'.repeat(64) })).toBe(false)
        await loggers.add({ ...logger, id: 'l2', name: 'Bed 1', keyHash: 'b'.repeat(64), panel: 'J1/W1' })
        expect((await loggers.list()).map(({ name }) => name)).toEqual(['Bed 1', 'North wall'])
        expect(await loggers.byKey('a'.repeat(64))).toMatchObject(logger)
        expect((await loggers.find('l1'))?.created).toMatch(/^\d{4}-\d\d-\d\dT[\d:.]+Z$/)
        expect(await loggers.change('l1', { panel: 'J1/W2', since: NOW })).toBe(true)
        expect(await loggers.change('l1', { keyHash: 'c'.repeat(64), active: false })).toBe(true)
        expect(await loggers.byKey('a'.repeat(64))).toBeNull()
        const changed = { ...logger, panel: 'J1/W2', since: NOW, active: false, keyHash: 'c'.repeat(64) }
        expect(await loggers.byKey('c'.repeat(64))).toMatchObject(changed)
        await loggers.change('l1', { panel: null })
        expect(await loggers.find('l1')).toMatchObject({ panel: null, since: NOW })
        expect(await loggers.change('l1', {})).toBe(true)
        expect(await loggers.change('l9', { active: false })).toBe(false)
        expect(await loggers.find('l9')).toBeNull()
      }))

    it('never gives two of them one key', () =>
      using(async ({ loggers }) => {
        await loggers.add(logger)
        await expect(loggers.add({ ...logger, id: 'l2' })).rejects.toThrow()
        expect(await loggers.list()).toHaveLength(1)
      }))
  })

  describe(`record on ${engine}: a yard`, () => {
    it('takes a panel’s entries of every kind of value that JSON has', () =>
      using(async (store) => {
        const device = new ExampleDevice('d1')
        const values = [true, 0.1, -0, 1e21, 'é\u2028"\\', [1, 2.5], { a: null, b: 'x' }]
        await store.append(
          values.map((value, index) =>
            device.make(FLOOR, { kind: 'value', subject: PANEL, step: 'set', check: `c${index}`, value }),
          ),
        )
        expect(await store.check()).toEqual([])
      }))
  })
}
