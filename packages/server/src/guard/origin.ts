import type { MiddlewareHandler } from 'hono'
import type { ServerEnv } from '../env.ts'
import { Problem } from '../problem.ts'
import { isKeyed } from './keyed.ts'

export interface OriginOptions {
  /** The one origin that the app is seen under, behind a proxy; null: the host that was asked. */
  readonly origin: string | null
  readonly tls: boolean
  /** Only names of this machine are answered: keeps another site's name from being pointed here. */
  readonly loopbackOnly: boolean
}

const LOOPBACK = new Set(['localhost', '127.0.0.1', '[::1]'])

/** Whether a host name or address is this machine and nothing else. */
export function isLoopback(host: string): boolean {
  const bare = host.toLowerCase().replace(/^\[|\]$/g, '')
  return bare === '::1' || bare === 'localhost' || /^127(\.\d{1,3}){3}$/.test(bare)
}

/**
 * Refuses what another site sends in a signed-in person's name: anything but reading must carry the origin of this app.
 * Browsers put it there and no page can change it; a program that is no browser sets it itself.
 */
export function sameOrigin({ origin, tls, loopbackOnly }: OriginOptions): MiddlewareHandler<ServerEnv> {
  return async (c, next) => {
    const url = new URL(c.req.url)
    const host = c.req.header('host') ?? url.host
    const name = host.replace(/:\d+$/, '').toLowerCase()
    if (loopbackOnly && !LOOPBACK.has(name) && !isLoopback(name)) {
      throw new Problem('wrong-host', `This server answers on this machine only, not as ${name}.`)
    }
    const { method, path } = c.req
    if (!['GET', 'HEAD', 'OPTIONS'].includes(method) && !isKeyed(method, path)) {
      const expected = origin ?? `${tls ? 'https' : 'http'}://${host.toLowerCase()}`
      const found = c.req.header('origin')
      if (found?.toLowerCase() !== expected) {
        throw new Problem(
          'wrong-origin',
          `Origin ${found === undefined ? 'is missing' : 'is not this app'}; expected ${expected}.`,
        )
      }
    }
    await next()
  }
}
