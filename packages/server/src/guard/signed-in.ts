import type { MiddlewareHandler } from 'hono'
import type { ServerEnv } from '../env.ts'
import { Problem } from '../problem.ts'
import { isKeyed } from './keyed.ts'

/** What anybody may ask. Everything else of the API needs a session, before its body is even read. */
const OPEN: readonly string[] = [
  'GET /api/session',
  'POST /api/session',
  'DELETE /api/session',
  'GET /api/people',
  'GET /api/key',
  'GET /api/openapi.json',
]

/** Lets nobody past without a session, but for the few open addresses. */
export function signedInOnly(): MiddlewareHandler<ServerEnv> {
  return async (c, next) => {
    const method = c.req.method === 'HEAD' ? 'GET' : c.req.method
    const open = OPEN.includes(`${method} ${c.req.path}`) || isKeyed(method, c.req.path)
    if (c.get('signedIn') === null && !open) {
      throw new Problem('not-signed-in', 'Sign in first.')
    }
    await next()
  }
}
