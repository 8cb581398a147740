import { z } from '@hono/zod-openapi'

/** Readings in one sending at most. */
export const MOST_READINGS = 5000

/** Becomes part of a person's name in the record, which holds no control characters. */
const plain = (most: number) =>
  z
    .string()
    .trim()
    .min(1)
    .max(most)
    .refine((text) => !/\p{Control}|\p{Surrogate}/u.test(text), 'text without control characters')

const panel = z.string().min(3).max(200).openapi({ description: '`<job>/<mark>`' })
const instant = z.iso.datetime({ precision: 3 })

const loggerFields = {
  id: z.string(),
  name: z.string(),
  panel: panel.nullable().openapi({ description: '`<job>/<mark>` that it reads for now' }),
  active: z.boolean(),
  madeBy: z.string().openapi({ description: 'Id of the person who made it' }),
  created: instant,
  last: z
    .strictObject({ at: instant, panel, channel: z.string(), celsius: z.number() })
    .nullable()
    .openapi({ description: 'Its latest reading in the record' }),
}

export const loggerSchema = z.strictObject(loggerFields).openapi('Logger')

export const keyedLoggerSchema = z
  .strictObject({
    ...loggerFields,
    key: z.string().optional().openapi({ description: 'Its new key. Told in this answer and never again' }),
  })
  .openapi('KeyedLogger')

export const newLoggerSchema = z
  .strictObject({ name: plain(80), panel: panel.nullable().optional() })
  .openapi('NewLogger')

export const loggerChangeSchema = z
  .strictObject({
    panel: panel.nullable().optional(),
    active: z.boolean().optional(),
    newKey: z.literal(true).optional().openapi({ description: 'A new key; the old one ends' }),
  })
  .openapi('LoggerChange')

export const readingsSchema = z
  .strictObject({
    readings: z
      .array(
        z.strictObject({
          channel: plain(80),
          at: z.iso.datetime({ offset: true }).openapi({ description: 'ISO instant, with Z or an offset' }),
          celsius: z.number().nullable().openapi({ description: '°C; null where the channel gave nothing' }),
        }),
      )
      .min(1)
      .max(MOST_READINGS),
  })
  .openapi('Readings')

export const takenSchema = z
  .strictObject({
    panel,
    stored: z.number().int(),
    known: z.number().int().openapi({ description: 'Were in the record before' }),
    empty: z.number().int().openapi({ description: 'Gave nothing: not stored' }),
    entries: z.array(
      z.strictObject({
        id: z.string(),
        index: z.number().int(),
        channel: z.string(),
        readings: z.number().int(),
      }),
    ),
  })
  .openapi('TakenReadings')
