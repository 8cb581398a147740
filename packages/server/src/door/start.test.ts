import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { request as httpsRequest } from 'node:https'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { selfSigned } from '../self-signed.ts'
import { type Running, type StartOptions, startServer } from './start.ts'

let folder = ''
let running: Running[] = []
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'castwright-start-'))
})
afterEach(async () => {
  for (const one of running) await one.close()
  running = []
  rmSync(folder, { recursive: true, force: true })
})

async function start(more: Partial<StartOptions> = {}): Promise<Running> {
  const started = await startServer({
    host: '127.0.0.1',
    port: 0,
    tls: null,
    origin: null,
    folder: join(folder, 'data'),
    web: null,
    ...more,
  })
  running.push(started)
  return started
}

async function stop(one: Running): Promise<void> {
  running = running.filter((other) => other !== one)
  await one.close()
}

async function signIn({ address }: Running, person: string, pin: string): Promise<Response> {
  return fetch(`${address}api/session`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', origin: address.replace(/\/$/, '') },
    body: JSON.stringify({ person, pin }),
  })
}

describe('start', () => {
  it('makes a lead with a PIN of eight digits at random, told once', async () => {
    const first = await start()
    expect(first.firstSignIn).toEqual([
      { id: 'lead', name: 'Lead', role: 'lead', pin: expect.stringMatching(/^\d{8}$/) },
    ])
    const pin = first.firstSignIn[0]?.pin ?? ''
    expect((await signIn(first, 'lead', pin)).status).toBe(200)
    await stop(first)
    const second = await start()
    expect(second.firstSignIn).toEqual([])
    expect(second.yard).toBe(first.yard)
    expect((await signIn(second, 'lead', pin)).status).toBe(200)
    const other = await start({ folder: join(folder, 'other') })
    expect(other.firstSignIn[0]?.pin).not.toBe(pin)
    expect(other.yard).not.toBe(first.yard)
  })

  it('gives a new PIN to one who lost theirs, and to nobody who is not there', async () => {
    const first = await start()
    const old = first.firstSignIn[0]?.pin ?? ''
    await stop(first)
    await expect(start({ resetPin: 'nobody' })).rejects.toThrow(
      /--reset-pin: found nobody, expected one of lead/,
    )
    const second = await start({ resetPin: 'lead' })
    const pin = second.firstSignIn[0]?.pin ?? ''
    expect((await signIn(second, 'lead', old)).status).toBe(401)
    expect((await signIn(second, 'lead', pin)).status).toBe(200)
  })

  it('takes a data folder for itself, and gives it back when it cannot go on', async () => {
    const first = await start()
    await expect(start()).rejects.toThrow(/in use by process/)
    await stop(first)
    await expect(
      start({
        prepare: async () => {
          throw new Error('no')
        },
      }),
    ).rejects.toThrow('no')
    await start()
  })

  it('says which port is taken, and keeps the first PINs for the next start', async () => {
    const taken = createServer()
    await new Promise<void>((done) => taken.listen(0, '127.0.0.1', done))
    const { port } = taken.address() as { port: number }
    try {
      await expect(start({ port })).rejects.toThrow(
        new RegExp(`--port: found ${port}, which another program`),
      )
    } finally {
      await new Promise((done) => taken.close(done))
    }
    expect((await start()).firstSignIn.length).toBe(1)
  })

  it('refuses a host that is not this machine without TLS, before it opens anything', async () => {
    await expect(start({ host: '0.0.0.0' })).rejects.toThrow(/without TLS/)
    await expect(start({ host: '192.0.2.1', origin: 'https://yard.example' })).rejects.toThrow(
      /--host: found 192/,
    )
  })

  it('refuses a certificate that is none, or is not the key’s', async () => {
    const [one, two] = [selfSigned(), selfSigned()]
    await expect(start({ tls: { cert: 'x', key: one.key } })).rejects.toThrow(/--cert, --key/)
    await expect(start({ tls: { cert: one.cert, key: two.key } })).rejects.toThrow(/--cert, --key/)
  })

  it('serves over TLS with its own certificate: secure cookie, HSTS', async () => {
    const tls = selfSigned()
    const secure = await start({ host: '0.0.0.0', tls })
    expect(secure.address).toBe(`https://localhost:${secure.port}/`)
    const pin = secure.firstSignIn[0]?.pin ?? ''
    const body = JSON.stringify({ person: 'lead', pin })
    const answer = await new Promise<{ status: number; headers: Record<string, unknown> }>(
      (resolve, reject) => {
        const asked = httpsRequest(
          {
            host: '127.0.0.1',
            servername: 'localhost',
            port: secure.port,
            path: '/api/session',
            method: 'POST',
            ca: tls.cert,
            headers: {
              host: `yard-office:${secure.port}`,
              origin: `https://yard-office:${secure.port}`,
              'content-type': 'application/json',
              'content-length': body.length,
            },
          },
          (response) => {
            response.resume()
            response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers }))
          },
        )
        asked.on('error', reject)
        asked.end(body)
      },
    )
    expect(answer.status).toBe(200)
    expect(String(answer.headers['set-cookie'])).toMatch(/; Secure/)
    expect(answer.headers['strict-transport-security']).toBe('max-age=31536000')
  })

  it('answers only as this machine when it listens only here', async () => {
    const plain = await start()
    const evil = await new Promise<number>((resolve, reject) => {
      import('node:http').then(({ get }) =>
        get(
          { port: plain.port, host: '127.0.0.1', path: '/api/session', headers: { host: 'evil.example' } },
          (response) => {
            response.resume()
            resolve(response.statusCode ?? 0)
          },
        ).on('error', reject),
      )
    })
    expect(evil).toBe(421)
  })

  it('serves the app where it is built', async () => {
    const web = join(folder, 'web')
    mkdirSync(web)
    writeFileSync(join(web, 'index.html'), '<!doctype html><title>Castwright</title>')
    const { address } = await start({ web })
    expect(await (await fetch(address)).text()).toMatch(/<title>Castwright/)
  })

  it('stops with devices listening, and keeps what was written', async () => {
    const first = await start()
    const answer = await signIn(first, 'lead', first.firstSignIn[0]?.pin ?? '')
    const cookie = answer.headers.get('set-cookie')?.split(';')[0] ?? ''
    const events = await fetch(`${first.address}api/events`, { headers: { cookie } })
    const reader = events.body?.getReader()
    await reader?.read()
    const yardFile = { format: 'castwright.yard/1', name: 'Mill End', code: 'eu', timezone: 'Europe/Dublin' }
    const brought = await fetch(`${first.address}api/import`, {
      method: 'POST',
      headers: { cookie, 'content-type': 'application/json', origin: first.address.replace(/\/$/, '') },
      body: JSON.stringify(yardFile),
    })
    expect(brought.status).toBe(200)
    const began = Date.now()
    await stop(first)
    expect(Date.now() - began).toBeLessThan(4000)
    const second = await start()
    const session = (await (await fetch(`${second.address}api/session`)).json()) as { needsSetup: boolean }
    expect(session.needsSetup).toBe(false)
  })
})
