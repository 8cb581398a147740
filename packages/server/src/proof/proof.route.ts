import { signedHeadSchema } from '@castwright/record'
import type { Store } from '@castwright/record/store'
import { createRoute, z } from '@hono/zod-openapi'
import { type Clock, instantOf } from '../door/clock.ts'
import { personOf } from '../env.ts'
import { Problem } from '../problem.ts'
import { jsonAnswer, type Router, refusals, router } from '../router.ts'

export const headSchema = signedHeadSchema.extend({}).openapi('SignedHead')

const count = z
  .string()
  .regex(/^\d{1,15}$/, 'a whole number not below 0')
  .transform(Number)
  .openapi({ type: 'integer', minimum: 0 })
const hashes = z
  .array(z.string().regex(/^[0-9a-f]{64}$/))
  .openapi({ description: 'Hex, in the order of RFC 9162' })

const inclusionSchema = z
  .strictObject({ index: z.number().int(), size: z.number().int(), proof: hashes })
  .openapi('InclusionProof')
const consistencySchema = z
  .strictObject({ from: z.number().int(), to: z.number().int(), proof: hashes })
  .openapi('ConsistencyProof')

const getHead = createRoute({
  method: 'get',
  path: '/api/head',
  summary: 'Signed tree head of the log',
  responses: { 200: jsonAnswer(headSchema, 'Signed now'), ...refusals('not-signed-in') },
})

const getKey = createRoute({
  method: 'get',
  path: '/api/key',
  summary: 'Public key of the yard; needs no session',
  responses: {
    200: jsonAnswer(
      z.strictObject({ publicKey: z.string().regex(/^[0-9a-f]{64}$/), yard: z.string() }).openapi('YardKey'),
      'Ed25519, hex. Compare it with what the yard gives out by its own way',
    ),
    ...refusals(),
  },
})

const getInclusion = createRoute({
  method: 'get',
  path: '/api/proof/inclusion',
  summary: 'Proof that the log of a size holds the entry of an index',
  request: { query: z.strictObject({ index: count, size: count }) },
  responses: {
    200: jsonAnswer(inclusionSchema, 'RFC 9162, 2.1.3'),
    ...refusals('not-signed-in', 'wrong-input'),
  },
})

const getConsistency = createRoute({
  method: 'get',
  path: '/api/proof/consistency',
  summary: 'Proof that the log of one size is the beginning of the log of another',
  request: { query: z.strictObject({ from: count, to: count }) },
  responses: {
    200: jsonAnswer(consistencySchema, 'RFC 9162, 2.1.4'),
    ...refusals('not-signed-in', 'wrong-input'),
  },
})

export function proofRoutes({ store, clock }: { readonly store: Store; readonly clock: Clock }): Router {
  return router()
    .openapi(getHead, async (c) => {
      personOf(c)
      return c.json(await store.head({ now: instantOf(clock) }), 200)
    })
    .openapi(getKey, (c) => c.json({ publicKey: store.publicKey, yard: store.yard }, 200))
    .openapi(getInclusion, async (c) => {
      personOf(c)
      const { index, size } = c.req.valid('query')
      const proof = await withinLog(() => store.inclusion(index, size), { index, size })
      return c.json({ index, size, proof }, 200)
    })
    .openapi(getConsistency, async (c) => {
      personOf(c)
      const { from, to } = c.req.valid('query')
      const proof = await withinLog(() => store.consistency(from, to), { from, to })
      return c.json({ from, to, proof }, 200)
    })
}

async function withinLog<T>(ask: () => Promise<T>, asked: Readonly<Record<string, number>>): Promise<T> {
  try {
    return await ask()
  } catch (error) {
    if (!(error instanceof RangeError)) throw error
    throw new Problem('wrong-input', 'The log has no such proof.', {
      issues: Object.entries(asked).map(([path, found]) => ({
        path,
        found: String(found),
        expected: 'a place within the log, in order',
      })),
    })
  }
}
