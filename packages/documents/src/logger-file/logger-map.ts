import { parseInput, readJson } from '@castwright/engine/working'
import * as z from 'zod'

export const LOGGER_MAP_FORMAT = 'castwright.logger-map/1'

const column = z.string().regex(/^[A-Za-z]{1,3}$/, 'a column such as B')

/** How a time stands in the file. */
export const TIME_FORMS = ['instant', 'year first', 'day first', 'month first', 'hours'] as const

const mapSchema = z.strictObject({
  format: z.literal(LOGGER_MAP_FORMAT),
  /** First row with a reading, from 1. */
  first: z.number().int().min(1).max(50_000),
  time: z.strictObject({
    /** One column, or day and clock in two. */
    columns: z.array(column).min(1).max(2),
    /** `instant`: with its offset from UTC; `hours`: from mixing; else in the yard's zone. */
    as: z.enum(TIME_FORMS),
  }),
  decimal: z.enum(['point', 'comma']),
  unit: z.enum(['C', 'F']),
  channels: z
    .array(z.strictObject({ column, name: z.string().trim().min(1).max(80) }))
    .min(1)
    .max(32),
})

/** Which column of a logger's file is what; kept, so that the next file of that logger is read at once. */
export type LoggerMap = z.output<typeof mapSchema>
export type TimeForm = (typeof TIME_FORMS)[number]

/** @throws InputError naming each field. */
export function parseLoggerMap(value: unknown, from = ''): LoggerMap {
  return parseInput(mapSchema, value, from)
}

/** @throws InputError, also where the text is not JSON. */
export function readLoggerMap(text: string, from = ''): LoggerMap {
  return parseLoggerMap(readJson(text, from), from)
}
