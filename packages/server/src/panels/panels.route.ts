import { makeSheet, SHEET_NAMES } from '@castwright/documents'
import { passportSchema } from '@castwright/record'
import { createRoute, z } from '@hono/zod-openapi'
import type { Context } from 'hono'
import { fileName } from '../bring/bring.route.ts'
import { storedForm } from '../entries/entries.schema.ts'
import type { YardLog } from '../entries/yard-log.ts'
import { personOf, type ServerEnv } from '../env.ts'
import { SHEET_POLICY } from '../guard/headers.ts'
import { anyJson, type Router, refusals, router } from '../router.ts'
import { passportFile, sheetInput } from './panels.service.ts'

const word = z.string().min(1).max(40)

const passportForm = passportSchema
  .extend({
    entries: z.array(storedForm),
    plan: passportSchema.shape.plan.extend({ figures: z.record(z.string(), anyJson) }),
  })
  .openapi('Passport')

const getPassport = createRoute({
  method: 'get',
  path: '/api/panels/{job}/{mark}/passport',
  summary: 'The passport file of a panel, as of now',
  request: { params: z.strictObject({ job: word, mark: word }) },
  responses: {
    200: {
      description: 'RFC 8785 bytes exactly, signed; check with `castwright verify`',
      content: { 'application/json': { schema: passportForm } },
    },
    ...refusals('not-signed-in', 'not-found', 'conflict', 'wrong-input'),
  },
})

const getSheet = createRoute({
  method: 'get',
  path: '/api/panels/{job}/{mark}/sheets/{sheet}',
  summary: 'A sheet as PDF, as of now',
  request: {
    params: z.strictObject({ job: word, mark: word, sheet: z.enum(SHEET_NAMES) }),
    query: z.strictObject({ paper: z.enum(['a4', 'letter']).default('a4') }),
  },
  responses: {
    200: {
      description: 'PDF',
      content: { 'application/pdf': { schema: z.string().openapi({ format: 'binary' }) } },
    },
    ...refusals('not-signed-in', 'not-found', 'conflict', 'wrong-input'),
  },
})

export interface PanelRoutesInput {
  readonly log: YardLog
  /** Where the app is seen: the codes on sheets lead there. */
  readonly seenAt: (c: Context<ServerEnv>) => string
}

export function panelRoutes({ log, seenAt }: PanelRoutesInput): Router {
  return router()
    .openapi(getPassport, async (c) => {
      personOf(c)
      const { job, mark } = c.req.valid('param')
      const bytes = await passportFile(log, job, mark)
      // The cast: what goes out is bytes, exactly as signed, and not an object to be written again.
      return c.body(new Uint8Array(bytes), 200, {
        'content-type': 'application/json',
        'content-disposition': `attachment; filename="${fileName(`${job}-${mark}`)}.passport.json"`,
      }) as never
    })
    .openapi(getSheet, async (c) => {
      personOf(c)
      const { job, mark, sheet } = c.req.valid('param')
      const { paper } = c.req.valid('query')
      const bytes = await makeSheet(sheet, await sheetInput(log, { job, mark, paper, address: seenAt(c) }))
      return c.body(new Uint8Array(bytes), 200, {
        'content-type': 'application/pdf',
        'content-disposition': `inline; filename="${fileName(`${job}-${mark}-${sheet}`)}.pdf"`,
        'content-security-policy': SHEET_POLICY,
      })
    })
}
