import { z } from '@hono/zod-openapi'
import { MOST_READINGS } from './loggers.schema.ts'

const value = (low: number, high: number, unit: string) =>
  z.number().min(low).max(high).nullable().optional().openapi({ description: unit })

export const weatherReadingsSchema = z
  .strictObject({
    readings: z
      .array(
        z.strictObject({
          at: z.iso.datetime({ offset: true }).openapi({ description: 'ISO instant, with Z or an offset' }),
          air: value(-60, 60, '°C'),
          humidity: value(0, 100, '%'),
          wind: value(0, 144, 'km/h'),
          sun: value(0, 1500, 'W/m² on a level face'),
          sky: value(-120, 60, '°C that the sky radiates at'),
        }),
      )
      .min(1)
      .max(MOST_READINGS),
  })
  .openapi('WeatherReadings')

export const takenWeatherSchema = z
  .strictObject({
    stored: z.number().int(),
    known: z.number().int().openapi({ description: 'Were in the record before' }),
    empty: z.number().int().openapi({ description: 'Gave nothing: not stored' }),
    entry: z.string().nullable().openapi({ description: 'Id of the entry; null where nothing was new' }),
  })
  .openapi('TakenWeather')
