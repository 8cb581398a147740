import { mkdirSync, mkdtempSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { brotliDecompressSync, gunzipSync } from 'node:zlib'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { routesOf } from './app.ts'
import { LEAD, PIN, type TestVisitor, type TestYard, testYard } from './testing.ts'

let yard: TestYard
let lead: TestVisitor
let web = ''
const SCRIPT = `export const words = ${JSON.stringify('concrete '.repeat(500))}\n`

beforeAll(async () => {
  web = mkdtempSync(join(tmpdir(), 'castwright-web-'))
  mkdirSync(join(web, 'assets'))
  writeFileSync(join(web, 'index.html'), '<!doctype html><title>Castwright</title>')
  writeFileSync(join(web, 'sw.js'), 'self.skipWaiting()')
  writeFileSync(join(web, 'assets/app-1a2b.js'), SCRIPT)
  writeFileSync(join(web, 'assets/font.woff2'), new Uint8Array([1, 2, 3]))
  yard = await testYard({ web, loopbackOnly: true })
  lead = await yard.enter(LEAD)
})
afterAll(async () => {
  await yard.end()
  rmSync(web, { recursive: true, force: true })
})

describe('problems', () => {
  it('are RFC 9457 documents: 404', async () => {
    const { status, body, headers } = await lead.get('/api/nothing/here')
    expect(status).toBe(404)
    expect(headers.get('content-type')).toBe('application/problem+json')
    expect(body).toEqual({
      type: 'urn:castwright:problem:not-found',
      title: 'There is nothing here',
      status: 404,
      detail: 'No such address: /api/nothing/here.',
    })
  })

  it.each([
    ['PUT', '/api/session', 'DELETE, GET, POST'],
    ['DELETE', '/api/entries', 'GET, POST'],
    ['GET', '/api/sign', 'POST'],
    ['GET', '/api/people/someone', 'PATCH'],
    ['POST', '/api/files/abc', 'GET, PUT'],
    ['POST', '/api/openapi.json', 'GET'],
  ])('%s %s gives 405 with what is allowed', async (method, path, allow) => {
    const headers = { 'content-type': 'application/json' }
    const answer = await lead.ask(method, path, method === 'GET' ? {} : { body: '{}', headers })
    expect(answer.status).toBe(405)
    expect(answer.headers.get('allow')).toBe(allow)
    expect(answer.headers.get('content-type')).toBe('application/problem+json')
  })

  it('give nothing away of a defect, and report it', async () => {
    const broken = await testYard({
      makeCard: () => {
        throw new Error('secret inside at /home/yard')
      },
    })
    try {
      const visitor = await broken.enter(LEAD)
      const subject = { kind: 'panel', id: 'J1/W1' } as const
      const close = visitor.entry({ kind: 'close', subject, step: 'finish', value: null })
      const response = await broken.app.request('http://localhost/api/entries', {
        method: 'POST',
        headers: { cookie: visitor.cookie, origin: 'http://localhost', 'content-type': 'application/json' },
        body: JSON.stringify({ entries: [close] }),
      })
      expect(response.status).toBe(500)
      const text = await response.text()
      expect(text).not.toMatch(/secret|\.ts|at /i)
      expect(JSON.parse(text)).toMatchObject({ status: 500, title: 'A defect of ours' })
      expect(broken.defects).toEqual([expect.objectContaining({ message: expect.stringMatching(/secret/) })])
    } finally {
      await broken.end()
    }
  })
})

describe('other sites', () => {
  it.each([
    ['', 'missing'],
    ['https://evil.example', 'other'],
    ['null', 'null'],
    ['http://localhost:9999', 'another port'],
    ['https://localhost', 'another scheme'],
  ])('cannot write here: origin %j (%s)', async (origin) => {
    const { status, body } = await lead.post('/api/session', { person: LEAD.id, pin: PIN }, { origin })
    expect(status).toBe(403)
    expect(body.type).toBe('urn:castwright:problem:wrong-origin')
  })

  it('cannot lend their name to this machine', async () => {
    const ask = (host: string) => yard.app.request('http://localhost/api/session', { headers: { host } })
    expect((await ask('evil.example')).status).toBe(421)
    expect((await ask('localhost:4870')).status).toBe(200)
    expect((await ask('127.0.0.1:4870')).status).toBe(200)
    expect((await ask('[::1]:4870')).status).toBe(200)
  })

  it('may not frame the app nor run script in it', async () => {
    for (const path of ['/', '/api/session', '/assets/app-1a2b.js', '/nothing.js']) {
      const { headers } = await lead.get(path)
      const policy = headers.get('content-security-policy') ?? ''
      expect(policy).toMatch(/frame-ancestors 'none'/)
      expect(policy).not.toMatch(/unsafe-inline|unsafe-eval'(?<!wasm-unsafe-eval')|https?:|\*/)
      expect(headers.get('x-content-type-options')).toBe('nosniff')
      expect(headers.get('strict-transport-security')).toBeNull()
    }
  })
})

describe('the app’s files', () => {
  it('give the page for each of the app’s own addresses', async () => {
    for (const path of ['/', '/index.html', '/panel/J1/W1', '/day', '/panel/J1/W.1-a']) {
      const { status, bytes, headers } = await lead.get(path)
      expect(status).toBe(200)
      expect(new TextDecoder().decode(bytes)).toMatch(/<title>Castwright/)
      expect(headers.get('cache-control')).toBe('no-cache')
      expect(headers.get('content-type')).toBe('text/html; charset=utf-8')
    }
  })

  it('are kept for good where their name changes with them, and asked for again where not', async () => {
    const asset = await lead.get('/assets/app-1a2b.js')
    expect(asset.headers.get('cache-control')).toBe('public, max-age=31536000, immutable')
    const worker = await lead.get('/sw.js')
    expect(worker.headers.get('cache-control')).toBe('no-cache')
    const again = await lead.get('/sw.js', { 'if-none-match': worker.headers.get('etag') ?? '' })
    expect(again.status).toBe(304)
    expect(again.bytes.length).toBe(0)
  })

  it('come compressed to whoever takes it', async () => {
    const asked = async (coding: string) => lead.get('/assets/app-1a2b.js', { 'accept-encoding': coding })
    const [br, gzip, none, refused] = await Promise.all(['gzip, br', 'gzip', 'identity', 'br;q=0'].map(asked))
    expect(br?.headers.get('content-encoding')).toBe('br')
    expect(brotliDecompressSync(br?.bytes ?? new Uint8Array()).toString()).toBe(SCRIPT)
    expect(gzip?.headers.get('content-encoding')).toBe('gzip')
    expect(gunzipSync(gzip?.bytes ?? new Uint8Array()).toString()).toBe(SCRIPT)
    expect(none?.headers.get('content-encoding')).toBeNull()
    expect(refused?.headers.get('content-encoding')).toBeNull()
    expect(new Set([br, gzip, none].map((answer) => answer?.headers.get('etag'))).size).toBe(3)
    expect(
      (await lead.get('/assets/font.woff2', { 'accept-encoding': 'br' })).headers.get('content-encoding'),
    ).toBeNull()
  })

  it('that are not there are not the page', async () => {
    for (const path of ['/assets/gone-1.js', '/../package.json', '/%2e%2e/secret.txt', '/x.css']) {
      expect((await lead.get(path)).status).toBe(404)
    }
    expect((await lead.ask('POST', '/day')).status).toBe(405)
  })

  it('are those of a new build once its page is there', async () => {
    await lead.get('/')
    writeFileSync(join(web, 'assets/app-9z.js'), 'export {}')
    expect((await lead.get('/assets/app-9z.js')).status).toBe(404)
    const later = new Date(Date.now() + 5000)
    writeFileSync(join(web, 'index.html'), '<!doctype html><title>Castwright</title><p>new')
    utimesSync(join(web, 'index.html'), later, later)
    await lead.get('/')
    expect((await lead.get('/assets/app-9z.js')).status).toBe(200)
  })

  it('are missing where the app is not built, and the API still answers', async () => {
    const bare = await testYard()
    try {
      expect((await bare.visitor().get('/')).status).toBe(404)
      expect((await bare.visitor().get('/api/session')).status).toBe(200)
    } finally {
      await bare.end()
    }
  })
})

describe('the document', () => {
  it('is OpenAPI 3.1 and can be read by anyone', async () => {
    const { status, body } = await yard.visitor().get('/api/openapi.json')
    expect(status).toBe(200)
    expect(body.openapi).toBe('3.1.0')
  })

  it('lists every route that the server answers, and no other', async () => {
    const served = yard.app.routes
      .filter(({ method, path }) => method !== 'ALL' && path.startsWith('/api/'))
      .map(({ method, path }) => `${method} ${path.replace(/:(\w+)(\{[^}]*\})?/g, '{$1}')}`)
    const listed = routesOf(yard.app).map(({ method, path }) => `${method} ${path}`)
    expect(new Set(served)).toEqual(new Set(listed))
  })

  it('holds every route of the agreement', () => {
    const listed = routesOf(yard.app).map(({ method, path }) => `${method} ${path}`)
    expect(new Set(listed)).toEqual(
      new Set([
        'GET /api/session',
        'POST /api/session',
        'DELETE /api/session',
        'GET /api/people',
        'POST /api/people',
        'PATCH /api/people/{id}',
        'GET /api/entries',
        'POST /api/entries',
        'POST /api/sign',
        'PUT /api/files/{sha256}',
        'GET /api/files/{sha256}',
        'GET /api/head',
        'GET /api/key',
        'GET /api/proof/inclusion',
        'GET /api/proof/consistency',
        'GET /api/events',
        'GET /api/panels/{job}/{mark}/passport',
        'GET /api/panels/{job}/{mark}/sheets/{sheet}',
        'GET /api/steel/plans/{plan}/sheet',
        'GET /api/loggers',
        'POST /api/loggers',
        'PATCH /api/loggers/{id}',
        'POST /api/readings',
        'POST /api/weather',
        'POST /api/import',
        'GET /api/export/{job}',
        'GET /api/openapi.json',
      ]),
    )
  })

  it('is told in docs/api.md, address by address', () => {
    const text = readFileSync(new URL('../../../docs/api.md', import.meta.url), 'utf8')
    for (const { path } of routesOf(yard.app)) expect(text).toContain(path)
  })

  it('points at nothing that it does not hold, and gives each answer of an error a problem', async () => {
    const { body } = await lead.get('/api/openapi.json')
    const text = JSON.stringify(body)
    const schemas = (body.components as { schemas: Record<string, unknown> }).schemas
    for (const [, name = ''] of text.matchAll(/"#\/components\/schemas\/([^"]+)"/g)) {
      expect(Object.keys(schemas)).toContain(name)
    }
    const paths = body.paths as Record<
      string,
      Record<string, { responses: Record<string, { content?: object }> }>
    >
    for (const methods of Object.values(paths)) {
      for (const { responses } of Object.values(methods)) {
        for (const [status, { content }] of Object.entries(responses)) {
          if (Number(status) >= 400) expect(Object.keys(content ?? {})).toEqual(['application/problem+json'])
        }
      }
    }
  })
})
