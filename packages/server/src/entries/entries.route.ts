import { InputError } from '@castwright/engine/working'
import { type Entry, parseEntry } from '@castwright/record'
import { createRoute, type z } from '@hono/zod-openapi'
import type { Context } from 'hono'
import { personOf, type ServerEnv } from '../env.ts'
import type { PinCheck } from '../people/pin-check.ts'
import { Problem } from '../problem.ts'
import { jsonAnswer, jsonBody, type Router, refusals, router } from '../router.ts'
import {
  entryForm,
  pageQuery,
  pageSchema,
  type resultSchema,
  sendSchema,
  sentSchema,
  signedSchema,
  signSchema,
} from './entries.schema.ts'
import { acceptEntries, type EntryResult, signRequest } from './entries.service.ts'
import type { YardLog } from './yard-log.ts'

const getEntries = createRoute({
  method: 'get',
  path: '/api/entries',
  summary: 'Entries after an index, in order',
  request: { query: pageQuery },
  responses: {
    200: jsonAnswer(pageSchema, 'One page; there are more while the last index is below size − 1'),
    ...refusals('not-signed-in', 'wrong-input'),
  },
})

const postEntries = createRoute({
  method: 'post',
  path: '/api/entries',
  summary: 'Put entries into the record; sending twice is harmless',
  request: { body: jsonBody(sendSchema) },
  responses: {
    200: jsonAnswer(sentSchema, 'One result an entry, in their order; what is stored is on the disk'),
    ...refusals('bad-request', 'not-signed-in', 'wrong-origin', 'wrong-type', 'wrong-input'),
  },
})

const postSign = createRoute({
  method: 'post',
  path: '/api/sign',
  summary: 'Sign with your own PIN, also on a device where somebody else is signed in',
  request: { body: jsonBody(signSchema) },
  responses: {
    200: jsonAnswer(signedSchema, 'The request is in the record; the hold opened if every condition is met'),
    ...refusals(
      'bad-request',
      'not-signed-in',
      'wrong-pin',
      'not-entitled',
      'conflict',
      'wrong-origin',
      'wrong-type',
      'wrong-input',
      'too-many-tries',
    ),
  },
})

export interface EntryRoutesInput {
  readonly log: YardLog
  readonly pins: PinCheck
  readonly addressOf: (c: Context<ServerEnv>) => string
}

export function entryRoutes({ log, pins, addressOf }: EntryRoutesInput): Router {
  const { store } = log
  const routes = router()
  routes.openAPIRegistry.register('Entry', entryForm)
  return routes
    .openapi(getEntries, async (c) => {
      personOf(c)
      const { after, limit } = c.req.valid('query')
      const entries = await store.read({ after, limit })
      const head = await store.head({ now: log.now() })
      return c.json({ entries, size: head.size, head, now: log.now() }, 200)
    })
    .openapi(postEntries, async (c) => {
      const person = personOf(c)
      const results = await acceptEntries(log, person, c.req.valid('json').entries)
      const head = await store.head({ now: log.now() })
      return c.json({ results: results.map(resultForm), size: head.size, head, now: log.now() }, 200)
    })
    .openapi(postSign, async (c) => {
      personOf(c)
      const { entry: sent, pin } = c.req.valid('json')
      const entry = requestOf(sent)
      const { person } = entry
      const account = await pins.check({ person: person.id, pin, address: addressOf(c) })
      if (account.name !== person.name || account.role !== person.role) {
        throw new Problem(
          'conflict',
          `The entry is by ${person.name} (${person.role}); the account is ${account.name} (${account.role}).`,
        )
      }
      const { result, opened, opening, missing } = await signRequest(log, entry)
      if (result.index === undefined) {
        const code = result.issues ? 'wrong-input' : 'not-entitled'
        throw new Problem(code, `Not stored: ${result.reason ?? 'no reason given'}.`, {
          issues: result.issues ?? [],
        })
      }
      const answer = { request: result.index, opened, missing: [...missing] }
      return c.json(opening === null ? answer : { ...answer, opening }, 200)
    })
}

function resultForm({ issues, missing, ...result }: EntryResult): z.output<typeof resultSchema> {
  return {
    ...result,
    ...(issues === undefined ? {} : { issues: [...issues] }),
    ...(missing === undefined ? {} : { missing: [...missing] }),
  }
}

/** @throws Problem 422 where it is no request to open a hold. */
function requestOf(sent: unknown): Entry {
  try {
    const entry = parseEntry(sent)
    if (entry.kind === 'request') return entry
    throw new InputError([{ path: 'kind', found: JSON.stringify(entry.kind), expected: '"request"' }])
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    const issues = error.issues.map((issue) => ({ ...issue, path: `entry.${issue.path}`.replace(/\.$/, '') }))
    throw new Problem('wrong-input', 'The entry is no request that can be signed.', { issues })
  }
}
