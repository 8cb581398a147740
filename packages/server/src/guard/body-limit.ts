import type { MiddlewareHandler } from 'hono'
import { bodyLimit } from 'hono/body-limit'
import type { ServerEnv } from '../env.ts'
import { MOST_FILE_BYTES } from '../files/file-types.ts'
import { Problem } from '../problem.ts'

const MB = 1024 * 1024

/** Largest bodies by address, bytes; the first that fits counts. */
const LIMITS: readonly (readonly [path: RegExp, bytes: number])[] = [
  [/^\/api\/files\//, MOST_FILE_BYTES],
  [/^\/api\/entries$/, 8 * MB],
  // A job carries its drawings: 20,000 plain ones.
  [/^\/api\/import$/, 32 * MB],
  [/^\/api\/sign$/, MB],
  [/^\/api\/readings$/, MB],
]
const OTHERWISE = 64 * 1024

/** Refuses a body over its address's limit, by its length or while it comes in. */
export function bodyLimits(): MiddlewareHandler<ServerEnv> {
  const guards = [...LIMITS, [/^/, OTHERWISE] as const].map(
    ([path, bytes]) =>
      [
        path,
        bodyLimit({
          maxSize: bytes,
          onError: () => {
            throw new Problem('too-large', `At most ${bytes} bytes are taken here.`)
          },
        }),
      ] as const,
  )
  return async (c, next) => {
    const guard = guards.find(([path]) => path.test(c.req.path))
    return guard === undefined ? next() : guard[1](c, next)
  }
}

/** Refuses a body that is not called JSON, where a body is taken and it is no file. */
export function jsonOnly(): MiddlewareHandler<ServerEnv> {
  return async (c, next) => {
    const takesJson = ['POST', 'PATCH', 'PUT'].includes(c.req.method) && !c.req.path.startsWith('/api/files/')
    const type = (c.req.header('content-type') ?? '').split(';')[0]?.trim().toLowerCase()
    if (takesJson && type !== 'application/json') {
      throw new Problem(
        'wrong-type',
        `Found ${type === '' ? 'no content type' : type}; expected application/json.`,
      )
    }
    await next()
  }
}
