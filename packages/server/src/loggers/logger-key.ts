import { createHash, randomBytes } from 'node:crypto'
import type { Logger, Loggers } from '@castwright/record/store'
import type { Context, MiddlewareHandler } from 'hono'
import type { Clock } from '../door/clock.ts'
import type { ServerEnv } from '../env.ts'
import { isKeyed } from '../guard/keyed.ts'
import { Tries } from '../guard/tries.ts'
import { Problem } from '../problem.ts'

const BEARER = /^Bearer +([A-Za-z0-9_-]{43})$/i
const SECOND = 1000
const MINUTE = 60 * SECOND

/** Wrong keys from one address: twenty free, then 5 s, 10 s, 20 s … up to a quarter of an hour. */
const BY_ADDRESS = { free: 20, first: 5 * SECOND, most: 15 * MINUTE, forget: 60 * MINUTE }

/** A new key: 32 bytes at random. It is told once; only `keyHash` is kept. */
export function randomKey(): string {
  return randomBytes(32).toString('base64url')
}

export function keyHash(key: string): string {
  return createHash('sha256').update(key).digest('hex')
}

/** Whose key a request carries, with a limit on tries by address. */
export class KeyCheck {
  private readonly loggers: Loggers
  private readonly byAddress: Tries

  constructor({ loggers, clock }: { readonly loggers: Loggers; readonly clock: Clock }) {
    this.loggers = loggers
    this.byAddress = new Tries(clock, BY_ADDRESS)
  }

  /**
   * The logger of the `authorization` header, also a closed one.
   *
   * A right key never waits: 256 bits at random are not found by trying, and a device with an old key must not shut out the good ones
   * behind the same gateway.
   *
   * @throws Problem 401 where no logger has that key; 429 after tries.
   */
  async check(authorization: string | undefined, address: string): Promise<Logger> {
    const key = BEARER.exec(authorization ?? '')?.[1]
    const logger = key === undefined ? null : await this.loggers.byKey(keyHash(key))
    if (logger !== null) return logger
    const wait = this.byAddress.wait(address)
    if (wait > 0) {
      const seconds = Math.ceil(wait / SECOND)
      throw new Problem('too-many-tries', `Try again in ${seconds} s.`, {
        headers: { 'retry-after': String(seconds) },
      })
    }
    this.byAddress.count(address)
    throw wrongKey()
  }
}

/** Lets nobody past to the addresses that take keys without the key of a logger, before the body is even read. */
export function keyedOnly(
  keys: KeyCheck,
  addressOf: (c: Context<ServerEnv>) => string,
): MiddlewareHandler<ServerEnv> {
  return async (c, next) => {
    if (isKeyed(c.req.method, c.req.path)) {
      c.set('logger', await keys.check(c.req.header('authorization'), addressOf(c)))
    }
    await next()
  }
}

export function wrongKey(): Problem {
  return new Problem(
    'wrong-key',
    'Send `authorization: Bearer <key>` with the key of a logger of this yard.',
    {
      headers: { 'www-authenticate': 'Bearer' },
    },
  )
}
