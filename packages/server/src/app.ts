import { InputError } from '@castwright/engine/working'
import { HashError, type Store } from '@castwright/record/store'
import type { Context } from 'hono'
import { compress } from 'hono/compress'
import { getCookie } from 'hono/cookie'
import { HTTPException } from 'hono/http-exception'
import { bringRoutes } from './bring/bring.route.ts'
import type { Clock } from './door/clock.ts'
import type { CardMaker } from './entries/cards.ts'
import { entryRoutes } from './entries/entries.route.ts'
import { eventRoutes } from './entries/events.route.ts'
import { Notices } from './entries/notices.ts'
import { YardLog } from './entries/yard-log.ts'
import type { ServerEnv } from './env.ts'
import { fileRoutes, hashProblem } from './files/files.route.ts'
import { bodyLimits, jsonOnly } from './guard/body-limit.ts'
import { guardingHeaders } from './guard/headers.ts'
import { type ListedRoute, methodsAt } from './guard/methods.ts'
import { sameOrigin } from './guard/origin.ts'
import { signedInOnly } from './guard/signed-in.ts'
import { KeyCheck, keyedOnly } from './loggers/logger-key.ts'
import { loggerRoutes } from './loggers/loggers.route.ts'
import { panelRoutes } from './panels/panels.route.ts'
import { peopleRoutes } from './people/people.route.ts'
import { PinCheck } from './people/pin-check.ts'
import { SESSION_COOKIE, sessionOf } from './people/sessions.service.ts'
import { Problem, problemResponse } from './problem.ts'
import { proofRoutes } from './proof/proof.route.ts'
import { type Router, router } from './router.ts'
import { steelRoutes } from './steel/steel.route.ts'
import { AppFiles } from './web/app-files.ts'
import { webRoute } from './web/web.route.ts'

export interface AppInput {
  readonly store: Store
  readonly clock: Clock
  /** The invented job is loaded here. */
  readonly demo?: boolean
  /** TLS ends in this process. */
  readonly tls?: boolean
  /** Where browsers see the app, behind a proxy that ends TLS. */
  readonly origin?: string | null
  /** Only this machine itself is answered. */
  readonly loopbackOnly?: boolean
  /** Folder of the built app; null where there is none. */
  readonly web?: string | null
  readonly makeCard?: CardMaker
  /** Address of the one who asks, for the limit on tries. */
  readonly addressOf?: (c: Context<ServerEnv>) => string
  /** Told of defects; the answer says nothing of them. */
  readonly report?: (error: unknown) => void
}

export interface CastwrightApp {
  readonly app: Router
  readonly log: YardLog
  readonly notices: Notices
}

/** The server without a port: what `startServer` listens with and tests ask in process. */
export function createApp(input: AppInput): CastwrightApp {
  const { store, clock } = input
  const tls = input.tls ?? false
  const origin = input.origin ?? null
  const notices = new Notices()
  const log = new YardLog({
    store,
    clock,
    notices,
    ...(input.makeCard === undefined ? {} : { makeCard: input.makeCard }),
  })
  const pins = new PinCheck({ people: store.people, clock })
  const addressOf = input.addressOf ?? ((c) => addressBy(c, origin !== null))
  const app = router()

  app.use(guardingHeaders({ tls: tls || origin !== null }))
  app.use(sameOrigin({ origin, tls, loopbackOnly: input.loopbackOnly ?? false }))
  app.use('/api/*', async (c, next) => {
    c.set('signedIn', await sessionOf({ people: store.people, clock }, getCookie(c, SESSION_COOKIE)))
    await next()
  })
  app.use('/api/*', signedInOnly())
  app.use('/api/*', keyedOnly(new KeyCheck({ loggers: store.loggers, clock }), addressOf))
  app.use('/api/*', compress())
  app.use('/api/*', jsonOnly())
  app.use('/api/*', bodyLimits())

  app.route(
    '/',
    peopleRoutes({
      store,
      clock,
      pins,
      addressOf,
      secure: tls || origin !== null,
      demo: input.demo ?? false,
      hasYard: async () => (await log.state()).yard.yard !== null,
    }),
  )
  app.route('/', entryRoutes({ log, pins, addressOf }))
  app.route('/', eventRoutes({ notices, size: () => store.size() }))
  app.route('/', fileRoutes(store.files))
  app.route('/', proofRoutes({ store, clock }))
  app.route('/', bringRoutes(log))
  const seenAt = (c: Context<ServerEnv>): string => origin ?? new URL(c.req.url).origin
  app.route('/', panelRoutes({ log, seenAt }))
  app.route('/', steelRoutes({ log, seenAt }))
  app.route('/', loggerRoutes(log))
  app.doc31('/api/openapi.json', DOCUMENT)

  const listed = routesOf(app)
  app.all('/api/*', (c) => {
    const methods = methodsAt(c.req.path, listed)
    if (methods.length === 0) throw new Problem('not-found', `No such address: ${c.req.path}.`)
    throw wrongMethod(c.req.method, methods)
  })
  app.get('*', webRoute(input.web ? new AppFiles(input.web) : null))
  app.notFound((c) => problemResponse(wrongMethod(c.req.method, ['GET', 'HEAD'])))
  app.onError((error) => problemResponse(problemOf(error, input.report ?? (() => undefined))))
  return { app, log, notices }
}

const DOCUMENT = {
  openapi: '3.1.0',
  info: {
    title: 'Castwright',
    version: '1',
    description:
      'The record of one precast yard: people, entries, files, proofs. Cookie session, same origin; loggers by a key of their own; errors are problem details (RFC 9457).',
  },
} as const

/** Every route of the document, and the document itself. */
export function routesOf(app: Router): ListedRoute[] {
  const paths = app.getOpenAPI31Document(DOCUMENT).paths ?? {}
  return [
    { method: 'GET', path: '/api/openapi.json' },
    ...Object.entries(paths).flatMap(([path, methods]) =>
      Object.keys(methods ?? {}).map((method) => ({ method: method.toUpperCase(), path })),
    ),
  ]
}

function wrongMethod(method: string, allowed: readonly string[]): Problem {
  return new Problem('wrong-method', `Found ${method}; expected ${allowed.join(' or ')}.`, {
    headers: { allow: allowed.join(', ') },
  })
}

function problemOf(error: unknown, report: (error: unknown) => void): Problem {
  if (error instanceof Problem) return error
  if (error instanceof InputError) {
    return new Problem('wrong-input', 'Some fields do not fit.', { issues: error.issues })
  }
  if (error instanceof HashError) return hashProblem(error.found, error.expected)
  if (error instanceof HTTPException && error.status === 400) {
    return new Problem('bad-request', 'The body is not JSON.')
  }
  report(error)
  return new Problem('defect', 'Something went wrong here; it has been written to the log of the server.')
}

/** The socket's address; behind a proxy the last one that the proxy added. */
function addressBy(c: Context<ServerEnv>, proxied: boolean): string {
  const forwarded = proxied ? c.req.header('x-forwarded-for')?.split(',').at(-1)?.trim() : undefined
  return forwarded || c.env?.incoming?.socket?.remoteAddress || 'in process'
}
