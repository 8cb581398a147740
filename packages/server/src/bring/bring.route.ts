import { drawingSchema } from '@castwright/engine/panel'
import { jobSchema, yardSchema } from '@castwright/engine/yard'
import { createRoute, z } from '@hono/zod-openapi'
import type { YardLog } from '../entries/yard-log.ts'
import { entitledPerson, personOf } from '../env.ts'
import { Problem } from '../problem.ts'
import { jsonAnswer, jsonBody, type Router, refusals, router } from '../router.ts'
import { bring, jobFile } from './bring.service.ts'

// Made anew here: only a schema made after the document's generator has loaded can be named.
const drawingForm = drawingSchema.extend({}).openapi('Drawing')
const yardForm = yardSchema.extend({}).openapi('Yard')
const jobForm = jobSchema.extend({ drawings: z.array(drawingForm) }).openapi('Job')

/** Read by format and field by field in the service, so that each fault has its path. */
const broughtBody = z.unknown().openapi({
  oneOf: ['Drawing', 'Yard', 'Job'].map((name) => ({ $ref: `#/components/schemas/${name}` })),
} as never)

const broughtSchema = z
  .strictObject({
    stored: z.number().int(),
    known: z.number().int().openapi({ description: 'Parts that were in the record just so' }),
    ids: z.array(z.string()),
    assumed: z.array(
      z.strictObject({ field: z.string(), value: z.string(), unit: z.string(), why: z.string() }),
    ),
  })
  .openapi('Brought')

const postImport = createRoute({
  method: 'post',
  path: '/api/import',
  summary: 'Bring in a drawing, a yard or a job: all of it or nothing',
  request: { body: jsonBody(broughtBody) },
  responses: {
    200: jsonAnswer(broughtSchema, 'In the record'),
    ...refusals('bad-request', 'not-signed-in', 'not-entitled', 'wrong-origin', 'wrong-type', 'wrong-input'),
  },
})

const getExport = createRoute({
  method: 'get',
  path: '/api/export/{job}',
  summary: 'A job with its drawings in force',
  request: { params: z.strictObject({ job: z.string().min(1).max(40) }) },
  responses: {
    200: jsonAnswer(jobForm, 'A file of format castwright.job/1'),
    ...refusals('not-signed-in', 'not-found', 'wrong-input'),
  },
})

export function bringRoutes(log: YardLog): Router {
  const routes = router()
  routes.openAPIRegistry.register('Drawing', drawingForm)
  routes.openAPIRegistry.register('Yard', yardForm)
  return routes
    .openapi(postImport, async (c) => {
      const person = entitledPerson(c, ['lead', 'engineer'], 'Bringing in drawings, yards and jobs')
      const { stored, known, ids, assumed } = await bring(log, person, c.req.valid('json'))
      return c.json({ stored, known, ids: [...ids], assumed: [...assumed] }, 200)
    })
    .openapi(getExport, async (c) => {
      personOf(c)
      const { job } = c.req.valid('param')
      const file = jobFile(await log.state(), job)
      if (file === null) throw new Problem('not-found', `No job ${job} is in the record.`)
      return c.json(file as never, 200, {
        'content-disposition': `attachment; filename="${fileName(job)}.json"`,
      })
    })
}

/** A name that every system takes. */
export function fileName(text: string): string {
  return (
    text
      .replace(/[^A-Za-z0-9._-]+/g, '-')
      .replace(/^[.-]+/, '')
      .slice(0, 80) || 'file'
  )
}
