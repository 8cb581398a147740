import 'fake-indexeddb/auto'
import { checkChain } from '@castwright/record'
import { afterEach, describe, expect, it } from 'vitest'
import { DeviceDatabase } from './database.ts'
import type { EntryDraft } from './device.ts'
import { ANNA, BEN, FakeServer, sharedLock, YARD } from './fake-server.ts'
import { RecordStore } from './record-store.ts'

let count = 0
const open: { stop(): void; db: DeviceDatabase }[] = []

afterEach(async () => {
  for (const store of open.splice(0)) {
    store.stop()
    store.db.close()
  }
})

function newName(): string {
  count += 1
  return `device ${count}`
}

async function tab(server: FakeServer, name: string, lock = sharedLock()): Promise<RecordStore> {
  const store = new RecordStore({
    db: new DeviceDatabase(name),
    api: server.api,
    lock,
    now: () => server.now,
  })
  open.push(store)
  await store.askSession()
  await store.refresh()
  return store
}

function slump(value: number): EntryDraft {
  return {
    kind: 'value',
    subject: { kind: 'panel', id: 'J/W1' },
    step: 'deliver',
    check: 'slump',
    value,
    unit: 'mm',
    verdict: 'pass',
  }
}

async function settle(store: RecordStore): Promise<void> {
  await store.sync.wake()
  await store.sync.wake()
  await store.refresh()
}

const slumpIn = (store: RecordStore) => store.snapshot().state?.panels.get('J/W1')?.steps.deliver.values.slump

describe('an entry made with a network', () => {
  it('is kept here first and then in the record, once', async () => {
    const server = new FakeServer()
    const store = await tab(server, newName())
    const entry = await store.add(slump(110))
    await settle(store)
    expect(server.log.map(({ id }) => id)).toEqual([entry.id])
    expect(store.snapshot().kept).toEqual([])
    expect(slumpIn(store)).toMatchObject({ entry: entry.id, value: 110, stored: server.log[0]?.stored })
  })

  it('of a wrong form is refused before it takes a number', async () => {
    const server = new FakeServer()
    const store = await tab(server, newName())
    await expect(store.add({ ...slump(110), check: '' })).rejects.toThrow(/check/)
    const entry = await store.add(slump(110))
    expect(entry.device).toMatchObject({ counter: 1, previous: null })
  })
})

describe('without a network', () => {
  it('entries are kept here, counted in the state, and go out when it is back', async () => {
    const server = new FakeServer()
    const store = await tab(server, newName())
    server.cutBefore = () => true
    await store.add(slump(110))
    await store.add(slump(120))
    await settle(store)
    expect(server.log).toEqual([])
    expect(store.snapshot().sync.online).toBe(false)
    expect(store.snapshot().kept).toHaveLength(2)
    expect(slumpIn(store)).toMatchObject({ value: 120, stored: null })

    server.cutBefore = () => false
    await settle(store)
    expect(server.log.map(({ device }) => device.counter)).toEqual([1, 2])
    expect(store.snapshot().kept).toEqual([])
    expect(store.snapshot().sync.online).toBe(true)
  })

  it('an answer that is lost leads to the same entry sent again, and stored once', async () => {
    const server = new FakeServer()
    const store = await tab(server, newName())
    server.cutAfter = (call) => call === 'push'
    const entry = await store.add(slump(110))
    await settle(store)
    expect(server.log).toHaveLength(1)
    server.cutAfter = () => false
    await settle(store)
    expect(server.log.map(({ id }) => id)).toEqual([entry.id])
    expect(store.snapshot().kept).toEqual([])
  })

  it('cut in the middle of many batches, every entry arrives once', async () => {
    const server = new FakeServer()
    const store = await tab(server, newName())
    server.cutBefore = () => true
    for (let i = 0; i < 230; i += 1) await store.add(slump(80 + (i % 40)))
    let pushes = 0
    server.cutBefore = (call) => {
      if (call === 'push') pushes += 1
      return call === 'push' && pushes === 2
    }
    await settle(store)
    server.cutBefore = () => false
    await settle(store)
    expect(server.log).toHaveLength(230)
    expect(new Set(server.log.map(({ id }) => id)).size).toBe(230)
    expect(store.snapshot().kept).toEqual([])
  }, 30_000)

  it('a signature is kept, and says so', async () => {
    const server = new FakeServer()
    const store = await tab(server, newName())
    server.cutBefore = () => true
    const outcome = await store.sign(request(), ANNA, server.pin)
    expect(outcome).toEqual({ kind: 'kept' })
    expect(store.snapshot().kept).toHaveLength(1)
    const kept = JSON.stringify(await store.db.kept.toArray())
    expect(kept).not.toContain(server.pin)
  })
})

function request(): EntryDraft {
  return { kind: 'request', subject: { kind: 'panel', id: 'J/W1' }, step: 'set', value: null, revision: '1' }
}

describe('a signature', () => {
  it('with a wrong PIN leaves nothing behind, and the chain goes on without a gap', async () => {
    const server = new FakeServer()
    const store = await tab(server, newName())
    await store.add(slump(110))
    const outcome = await store.sign(request(), ANNA, '000000')
    expect(outcome).toEqual({ kind: 'refused', why: 'Wrong PIN.' })
    await store.add(slump(115))
    await settle(store)
    expect(server.log.map(({ device }) => device.counter)).toEqual([1, 2])
    expect(checkChain(server.log)).toEqual([])
  })

  it('that the record holds while the hold stays shut says what is missing', async () => {
    const server = new FakeServer()
    const store = await tab(server, newName())
    const outcome = await store.sign(request(), ANNA, server.pin)
    expect(outcome).toEqual({ kind: 'shut', missing: ['Slump: not known'] })
    expect(store.snapshot().kept).toEqual([])
  })
})

describe('an entry that the record refuses', () => {
  it('is kept with the reason, counts no longer in the state, and holds nothing else up', async () => {
    const server = new FakeServer()
    const store = await tab(server, newName())
    server.refuse = (entry) => (entry.value === 300 ? 'Slump above what the docket allows.' : null)
    const bad = await store.add(slump(300))
    await settle(store)
    await store.add(slump(110))
    await settle(store)
    expect(server.log).toHaveLength(1)
    expect(store.snapshot().kept).toMatchObject([
      { id: bad.id, state: 'refused', fault: 'Slump above what the docket allows.' },
    ])
    expect(slumpIn(store)).toMatchObject({ value: 110 })
  })
})

describe('a device that changes hands', () => {
  it('sends the entries of each person only while that person is signed in', async () => {
    const server = new FakeServer()
    const store = await tab(server, newName())
    server.cutBefore = () => true
    await store.add(slump(110))
    server.cutBefore = () => false
    await store.signIn('ben', server.pin)
    await store.add(slump(120))
    await settle(store)
    expect(server.log.map(({ person }) => person.id)).toEqual([BEN.id])
    expect(store.snapshot().kept).toMatchObject([{ state: 'waiting', entry: { person: { id: ANNA.id } } }])
    await store.signIn('anna', server.pin)
    await settle(store)
    expect(server.log.map(({ person }) => person.id)).toEqual([BEN.id, ANNA.id])
    expect(store.snapshot().kept).toEqual([])
  })

  it('asks for a sign-in where the server forgot who it is, and keeps what was made', async () => {
    const server = new FakeServer()
    const store = await tab(server, newName())
    server.person = null
    await store.add(slump(110))
    await settle(store)
    expect(store.snapshot().sync.halt).toBe('sign-in')
    expect(store.snapshot().kept).toMatchObject([{ state: 'waiting' }])
  })
})

describe('a sign-out without a network', () => {
  it('stays one: the server is told before it says who is signed in', async () => {
    const server = new FakeServer()
    const store = await tab(server, newName())
    server.cutBefore = () => true
    await store.signOut()
    await store.askSession()
    expect(store.snapshot().session?.person).toBeNull()
    server.cutBefore = () => false
    await store.askSession()
    expect(server.person).toBeNull()
    expect(store.snapshot().session).toMatchObject({ person: null, yard: YARD, leaving: false })
  })

  it('a sign-in after it counts at once', async () => {
    const server = new FakeServer()
    const store = await tab(server, newName())
    server.cutBefore = (call) => call === 'signOut'
    await store.signOut()
    await store.signIn('ben', server.pin)
    expect(store.snapshot().session).toMatchObject({ person: BEN, leaving: false })
  })
})

describe('two tabs of one device', () => {
  it('take numbers in turn, fork no chain, and send each entry once', async () => {
    const server = new FakeServer()
    const name = newName()
    const lock = sharedLock()
    const [one, two] = await Promise.all([tab(server, name, lock), tab(server, name, lock)])
    await Promise.all(Array.from({ length: 20 }, (_, i) => (i % 2 ? one : two).add(slump(80 + i))))
    await Promise.all([settle(one), settle(two)])
    expect(server.log.map(({ device }) => device.counter).sort((a, b) => a - b)).toEqual(
      Array.from({ length: 20 }, (_, i) => i + 1),
    )
    expect(new Set(server.log.map(({ device }) => device.id)).size).toBe(1)
    expect(checkChain(server.log)).toEqual([])
    expect(one.snapshot().state?.flags).toEqual([])
    expect(two.snapshot().size).toBe(20)
  })
})

describe('after a restart', () => {
  it('what was kept is there, goes out, and the chain goes on', async () => {
    const server = new FakeServer()
    const name = newName()
    const before = await tab(server, name)
    server.cutBefore = () => true
    await before.add(slump(110))
    await before.add(slump(112))
    before.stop()
    before.db.close()

    const after = await tab(server, name) // still no network: the person signed in here stays
    expect(after.snapshot().session).toMatchObject({ person: ANNA, yard: YARD })
    expect(after.snapshot().kept).toHaveLength(2)
    expect(slumpIn(after)).toMatchObject({ value: 112, stored: null })
    await after.add(slump(114))
    server.cutBefore = () => false
    await settle(after)
    expect(server.log.map(({ device }) => device.counter)).toEqual([1, 2, 3])
    expect(checkChain(server.log)).toEqual([])
  })
})

describe('entries of other devices', () => {
  it('are read without gaps, also when more than one page came while away', async () => {
    const server = new FakeServer()
    const store = await tab(server, newName())
    for (let i = 0; i < 2300; i += 1) server.addFromElsewhere('slump', 80 + (i % 50))
    await settle(store)
    expect(store.snapshot().size).toBe(2300)
    expect(slumpIn(store)).toMatchObject({ value: 80 + (2299 % 50) })
  }, 30_000)

  it('of a shorter record than was read stop everything until a person decides', async () => {
    const server = new FakeServer()
    const store = await tab(server, newName())
    for (let i = 0; i < 5; i += 1) server.addFromElsewhere('slump', 100)
    await settle(store)
    server.log.splice(2)
    server.cutBefore = (call) => call === 'push'
    await store.add(slump(110))
    await settle(store)
    expect(store.snapshot().sync.halt).toBe('other-record')
    server.cutBefore = () => false
    await store.sync.readAgain()
    await settle(store)
    expect(store.snapshot().sync.halt).toBeNull()
    expect(server.log).toHaveLength(3)
    expect(store.snapshot().size).toBe(3)
  })
})

describe('clocks and files', () => {
  it('the difference of the clocks stands in the entries made after it was seen', async () => {
    const server = new FakeServer()
    let late = 0
    const store = new RecordStore({
      db: new DeviceDatabase(newName()),
      api: server.api,
      lock: sharedLock(),
      now: () => server.now + late,
    })
    open.push(store)
    await store.askSession()
    const first = await store.add(slump(100))
    expect(first.device.clockOffset).toBeNull()
    await settle(store)
    late = 180_000
    await settle(store)
    const later = await store.add(slump(101))
    expect(later.device.clockOffset).toBe(180_000)
  })

  it('a photo goes out with its entry and stays on the device', async () => {
    const server = new FakeServer()
    const store = await tab(server, newName())
    const attachment = await store.addFile(
      new Blob(['not a real picture'], { type: 'text/plain' }),
      'note.txt',
    )
    await store.add({
      kind: 'photo',
      subject: { kind: 'panel', id: 'J/W1' },
      value: null,
      attachments: [attachment],
    })
    await settle(store)
    expect([...server.files]).toEqual([[attachment.sha256, 18]])
    expect(server.calls.indexOf('putFile')).toBeLessThan(server.calls.indexOf('push'))
    expect(await store.db.files.get(attachment.sha256)).toMatchObject({ state: 'sent' })
  })

  it('a file that the record refuses is shown and holds no entry up', async () => {
    const server = new FakeServer()
    const store = await tab(server, newName())
    const { Refused } = await import('./api.ts')
    server.api.putFile = () => Promise.reject(new Refused(413, 'Too large.'))
    await store.addFile(new Blob(['x']), 'x.bin')
    await store.add(slump(110))
    await settle(store)
    expect(server.log).toHaveLength(1)
    expect(store.snapshot().files).toMatchObject([{ state: 'refused', fault: 'Too large.' }])
  })
})
