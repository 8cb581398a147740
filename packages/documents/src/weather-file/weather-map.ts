import { parseInput } from '@castwright/engine/working'
import * as z from 'zod'

export const WEATHER_MAP_FORMAT = 'castwright.weather-map/1'

const column = z.string().regex(/^[A-Za-z]{1,3}$/, 'a column such as B')

/** How a time stands in the file: weather has a clock, never hours from mixing. */
export const WEATHER_TIMES = ['instant', 'year first', 'day first', 'month first'] as const
export const WIND_UNITS = ['km/h', 'm/s', 'mph', 'kn'] as const

const mapSchema = z.strictObject({
  format: z.literal(WEATHER_MAP_FORMAT),
  /** First row with a reading, from 1. */
  first: z.number().int().min(1).max(50_000),
  time: z.strictObject({
    /** One column, or day and clock in two. */
    columns: z.array(column).min(1).max(2),
    /** `instant`: with its offset from UTC; else in the yard's zone. */
    as: z.enum(WEATHER_TIMES),
  }),
  decimal: z.enum(['point', 'comma']),
  /** Unit of air and sky. */
  unit: z.enum(['C', 'F']),
  windUnit: z.enum(WIND_UNITS),
  air: column,
  humidity: column.nullable(),
  wind: column.nullable(),
  /** W/m² on a level face. */
  sun: column.nullable(),
  sky: column.nullable(),
})

/** Which column of a weather file is what; kept, so that the next file of that source is read at once. */
export type WeatherMap = z.output<typeof mapSchema>
export type WindUnit = (typeof WIND_UNITS)[number]

/** @throws InputError naming each field. */
export function parseWeatherMap(value: unknown, from = ''): WeatherMap {
  return parseInput(mapSchema, value, from)
}
