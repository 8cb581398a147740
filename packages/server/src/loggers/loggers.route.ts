import { createRoute, z } from '@hono/zod-openapi'
import type { YardLog } from '../entries/yard-log.ts'
import { entitledPerson, personOf } from '../env.ts'
import { jsonAnswer, jsonBody, type Router, refusals, router } from '../router.ts'
import { wrongKey } from './logger-key.ts'
import {
  keyedLoggerSchema,
  loggerChangeSchema,
  loggerSchema,
  newLoggerSchema,
  readingsSchema,
  takenSchema,
} from './loggers.schema.ts'
import { addLogger, changeLogger, listLoggers } from './loggers.service.ts'
import { takeReadings } from './readings.service.ts'
import { takenWeatherSchema, weatherReadingsSchema } from './weather.schema.ts'
import { takeWeather } from './weather.service.ts'

const getLoggers = createRoute({
  method: 'get',
  path: '/api/loggers',
  summary: 'Loggers of the yard with the last reading of each',
  responses: { 200: jsonAnswer(z.array(loggerSchema), 'In order of names'), ...refusals('not-signed-in') },
})

const postLoggers = createRoute({
  method: 'post',
  path: '/api/loggers',
  summary: 'Make a logger; its key is told once',
  request: { body: jsonBody(newLoggerSchema) },
  responses: {
    201: jsonAnswer(keyedLoggerSchema, 'Made'),
    ...refusals(
      'bad-request',
      'not-signed-in',
      'not-entitled',
      'wrong-origin',
      'wrong-type',
      'wrong-input',
      'conflict',
    ),
  },
})

const patchLogger = createRoute({
  method: 'patch',
  path: '/api/loggers/{id}',
  summary: 'Move a logger to a panel, close or open it, give it a new key',
  request: {
    params: z.strictObject({ id: z.string().min(1).max(200) }),
    body: jsonBody(loggerChangeSchema),
  },
  responses: {
    200: jsonAnswer(keyedLoggerSchema, 'Changed'),
    ...refusals(
      'bad-request',
      'not-signed-in',
      'not-entitled',
      'not-found',
      'conflict',
      'wrong-origin',
      'wrong-type',
      'wrong-input',
    ),
  },
})

const postReadings = createRoute({
  method: 'post',
  path: '/api/readings',
  summary: 'Readings of a logger, by its own key and without a session; sending twice is harmless',
  security: [{ loggerKey: [] }],
  request: { body: jsonBody(readingsSchema) },
  responses: {
    200: jsonAnswer(takenSchema, 'In the record, on the disk: all of them'),
    ...refusals(
      'bad-request',
      'wrong-key',
      'closed-logger',
      'conflict',
      'wrong-type',
      'wrong-input',
      'too-many-tries',
    ),
  },
})

const postWeather = createRoute({
  method: 'post',
  path: '/api/weather',
  summary: 'Weather of a station, by the key of a logger and without a session; sending twice is harmless',
  security: [{ loggerKey: [] }],
  request: { body: jsonBody(weatherReadingsSchema) },
  responses: {
    200: jsonAnswer(takenWeatherSchema, 'In the record, on the disk: all of them'),
    ...refusals('bad-request', 'wrong-key', 'closed-logger', 'wrong-type', 'wrong-input', 'too-many-tries'),
  },
})

export function loggerRoutes(log: YardLog): Router {
  const routes = router()
  routes.openAPIRegistry.registerComponent('securitySchemes', 'loggerKey', { type: 'http', scheme: 'bearer' })
  return routes
    .openapi(getLoggers, async (c) => {
      personOf(c)
      return c.json(await listLoggers(log), 200)
    })
    .openapi(postLoggers, async (c) => {
      const by = entitledPerson(c, ['lead'], 'Making a logger')
      return c.json(await addLogger(log, by, c.req.valid('json')), 201)
    })
    .openapi(patchLogger, async (c) => {
      const { id } = c.req.valid('param')
      return c.json(await changeLogger(log, personOf(c), id, c.req.valid('json')), 200)
    })
    .openapi(postReadings, async (c) => {
      const logger = c.get('logger')
      if (logger === undefined) throw wrongKey()
      return c.json(await takeReadings(log, logger, c.req.valid('json').readings), 200)
    })
    .openapi(postWeather, async (c) => {
      const logger = c.get('logger')
      if (logger === undefined) throw wrongKey()
      return c.json(await takeWeather(log, logger, c.req.valid('json').readings), 200)
    })
}
