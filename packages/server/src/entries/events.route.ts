import { createRoute, z } from '@hono/zod-openapi'
import { streamSSE } from 'hono/streaming'
import { personOf } from '../env.ts'
import { Problem } from '../problem.ts'
import { type Router, refusals, router } from '../router.ts'
import type { Notices } from './notices.ts'

const HEARTBEAT = 20_000
/** More than any yard has devices; keeps one broken client from taking every socket. */
const MOST_LISTENERS = 500

const events = createRoute({
  method: 'get',
  path: '/api/events',
  summary: 'Server-sent events: `entries` with the size of the log whenever it has grown',
  responses: {
    200: {
      description: 'A stream that stays open; a comment every 20 s keeps it alive',
      content: { 'text/event-stream': { schema: z.string() } },
    },
    ...refusals('not-signed-in', 'not-available'),
  },
})

export interface EventRoutesInput {
  readonly notices: Notices
  readonly size: () => Promise<number>
}

export function eventRoutes({ notices, size }: EventRoutesInput): Router {
  return router().openapi(events, (c) => {
    personOf(c)
    if (notices.count >= MOST_LISTENERS)
      throw new Problem('not-available', 'Too many devices listen already.')
    // The cast: the document's body is text, what goes out is a stream of it.
    return streamSSE(c, async (stream) => {
      let ended = (): void => undefined
      const over = new Promise<void>((done) => {
        ended = done
      })
      const send = (grown: number): void => {
        void stream.writeSSE({ event: 'entries', data: JSON.stringify({ size: grown }) })
      }
      const quiet = notices.listen(send, () => ended())
      const beat = setInterval(() => void stream.write(': still here\n\n'), HEARTBEAT)
      stream.onAbort(() => ended())
      try {
        send(await size())
        await over
      } finally {
        clearInterval(beat)
        quiet()
      }
    }) as never
  })
}
