import { createHash } from 'node:crypto'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { FLOOR, type TestVisitor, type TestYard, testYard, VIEWER } from '../testing.ts'

let yard: TestYard
let floor: TestVisitor
beforeAll(async () => {
  yard = await testYard()
  floor = await yard.enter(FLOOR)
})
afterAll(() => yard.end())

const photo = new Uint8Array([0xff, 0xd8, 0xff, 1, 2, 3])
const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex')
const put = (bytes: Uint8Array<ArrayBuffer>, type = 'image/jpeg', hash = sha256(bytes), visitor = floor) =>
  visitor.ask('PUT', `/api/files/${hash}`, { body: bytes, headers: { 'content-type': type } })

describe('attachments', () => {
  it('are kept once under their hash and come back as they were', async () => {
    const first = await put(photo)
    expect(first.status).toBe(201)
    expect(first.body).toEqual({ sha256: sha256(photo), size: 6, status: 'stored' })
    expect((await put(photo)).body).toEqual({ sha256: sha256(photo), size: 6, status: 'known' })
    const back = await floor.get(`/api/files/${sha256(photo)}`)
    expect(back.bytes).toEqual(photo)
    expect(back.headers.get('content-type')).toBe('image/jpeg')
    expect(back.headers.get('content-disposition')).toMatch(/^inline; filename="[0-9a-f]{12}\.jpg"$/)
    expect(back.headers.get('x-content-type-options')).toBe('nosniff')
    expect(back.headers.get('content-security-policy')).toMatch(/sandbox/)
    expect(back.headers.get('cache-control')).toMatch(/private.*immutable/)
  })

  it('that no browser should draw are saved, not shown', async () => {
    const bytes = new TextEncoder().encode('hours,celsius\n0,20\n')
    expect((await put(bytes, 'text/csv; charset=utf-8')).status).toBe(201)
    const back = await floor.get(`/api/files/${sha256(bytes)}`)
    expect(back.headers.get('content-disposition')).toMatch(/^attachment; filename="[0-9a-f]{12}\.csv"$/)
  })

  it('with another hash are refused and not kept', async () => {
    const other = sha256(new Uint8Array([1]))
    const { status, body } = await put(photo, 'image/jpeg', other)
    expect(status).toBe(422)
    expect(body.issues).toEqual([{ path: 'sha256', found: sha256(photo), expected: other }])
    expect((await floor.get(`/api/files/${other}`)).status).toBe(404)
  })

  it.each(['image/svg+xml', 'text/html', 'application/javascript', ''])(
    'of type %j are refused',
    async (type) => {
      expect((await put(photo, type)).status).toBe(415)
    },
  )

  it('over 20 MB are refused, by their length and while they come', async () => {
    const big = new Uint8Array(20 * 1024 * 1024 + 1)
    expect((await put(big)).status).toBe(413)
    const most = big.subarray(1)
    expect((await put(most)).status).toBe(201)
    const stream = new ReadableStream<Uint8Array>({
      start(controller) {
        for (let i = 0; i < 21; i++) controller.enqueue(new Uint8Array(1024 * 1024))
        controller.close()
      },
    })
    const response = await yard.app.request(`http://localhost/api/files/${sha256(big)}`, {
      method: 'PUT',
      headers: { origin: 'http://localhost', cookie: floor.cookie, 'content-type': 'image/png' },
      body: stream,
      // Node asks for it with a stream; the platform's type does not know it.
      ...({ duplex: 'half' } as object),
    })
    expect(response.status).toBe(413)
  })

  it('need a hash, somebody signed in, and more than a viewer to add', async () => {
    expect((await floor.get('/api/files/xyz')).status).toBe(422)
    expect((await floor.get(`/api/files/${'A'.repeat(64)}`)).status).toBe(422)
    expect((await yard.visitor().get(`/api/files/${sha256(photo)}`)).status).toBe(401)
    expect((await put(photo, 'image/jpeg', sha256(photo), yard.visitor())).status).toBe(401)
    const viewer = await yard.enter(VIEWER)
    expect((await put(photo, 'image/jpeg', sha256(photo), viewer)).status).toBe(403)
    expect((await viewer.get(`/api/files/${sha256(photo)}`)).status).toBe(200)
  })
})
