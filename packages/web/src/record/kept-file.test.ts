import 'fake-indexeddb/auto'
import { afterEach, describe, expect, it } from 'vitest'
import { DeviceDatabase } from './database.ts'
import { FakeServer, sharedLock } from './fake-server.ts'
import { readKept, writeKept } from './kept-file.ts'
import { RecordStore } from './record-store.ts'

const open: RecordStore[] = []
afterEach(() => {
  for (const store of open.splice(0)) {
    store.stop()
    store.db.close()
  }
})

async function device(server: FakeServer, name: string): Promise<RecordStore> {
  const store = new RecordStore({
    db: new DeviceDatabase(`kept ${name}`),
    api: server.api,
    lock: sharedLock(),
    now: () => server.now,
  })
  open.push(store)
  await store.askSession()
  return store
}

async function savedFile(server: FakeServer, name: string): Promise<string> {
  const store = await device(server, name)
  server.cutBefore = () => true
  const photo = await store.addFile(new Blob(['bytes of a photo'], { type: 'image/x-test' }), 'photo.jpg')
  await store.add({
    kind: 'photo',
    subject: { kind: 'panel', id: 'J/W1' },
    value: null,
    attachments: [photo],
  })
  await store.sync.wake()
  return writeKept(store.snapshot().kept, await store.db.files.toArray())
}

describe('unsent entries as a file', () => {
  it('are read back on another device and go to the record with their photo, once', async () => {
    const server = new FakeServer()
    const text = await savedFile(server, 'one')
    const read = await readKept(text)
    const other = await device(server, 'two')
    expect(await other.takeIn(read.entries, read.files)).toBe(1)
    expect(await other.takeIn(read.entries, read.files)).toBe(0)
    server.cutBefore = () => false
    await other.signIn('anna', server.pin)
    await other.sync.wake()
    expect(server.log).toHaveLength(1)
    expect(server.files.size).toBe(1)
    await other.refresh()
    expect(await other.takeIn(read.entries, read.files)).toBe(0)
  })

  it.each([
    ['not JSON', 'half a {', /not JSON/],
    ['another format', '{"format":"castwright.yard/1"}', /format: found "castwright.yard\/1"/],
    ['an entry that is none', '{"format":"castwright.kept/1","entries":[{}],"files":[]}', /entries\[0\]/],
    [
      'bytes that do not fit their hash',
      `{"format":"castwright.kept/1","entries":[],"files":[{"sha256":"${'0'.repeat(64)}","base64":"AAAA"}]}`,
      /files\[0\]: found bytes of/,
    ],
  ])('%s is refused with the place', async (_name, text, message) => {
    await expect(readKept(text)).rejects.toThrow(message)
  })
})
