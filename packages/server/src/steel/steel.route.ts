import { cuttingSheet } from '@castwright/documents'
import { createRoute, z } from '@hono/zod-openapi'
import type { Context } from 'hono'
import { fileName } from '../bring/bring.route.ts'
import type { YardLog } from '../entries/yard-log.ts'
import { personOf, type ServerEnv } from '../env.ts'
import { SHEET_POLICY } from '../guard/headers.ts'
import { type Router, refusals, router } from '../router.ts'
import { planSheet } from './steel.service.ts'

const getPlanSheet = createRoute({
  method: 'get',
  path: '/api/steel/plans/{plan}/sheet',
  summary: 'The cutting sheet of a plan at the shear as PDF',
  request: {
    params: z.strictObject({ plan: z.string().regex(/^[0-7][0-9A-HJKMNP-TV-Z]{25}$/, 'a ULID') }),
    query: z.strictObject({ paper: z.enum(['a4', 'letter']).default('a4') }),
  },
  responses: {
    200: {
      description: 'PDF',
      content: { 'application/pdf': { schema: z.string().openapi({ format: 'binary' }) } },
    },
    ...refusals('not-signed-in', 'not-found', 'wrong-input'),
  },
})

export interface SteelRoutesInput {
  readonly log: YardLog
  /** Where the app is seen: the code on the sheet leads there. */
  readonly seenAt: (c: Context<ServerEnv>) => string
}

export function steelRoutes({ log, seenAt }: SteelRoutesInput): Router {
  return router().openapi(getPlanSheet, async (c) => {
    personOf(c)
    const { plan } = c.req.valid('param')
    const { paper } = c.req.valid('query')
    const input = await planSheet(log, { plan, paper, address: seenAt(c) })
    return c.body(new Uint8Array(await cuttingSheet(input)), 200, {
      'content-type': 'application/pdf',
      'content-disposition': `inline; filename="${fileName(`cutting-${input.name}`)}.pdf"`,
      'content-security-policy': SHEET_POLICY,
    })
  })
}
