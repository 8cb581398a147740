import type { InputIssue } from '@castwright/engine/working'
import type { WeatherReading } from '@castwright/record'
import type { Logger } from '@castwright/record/store'
import type { z } from '@hono/zod-openapi'
import type { YardLog } from '../entries/yard-log.ts'
import { personOfLogger } from './loggers.service.ts'
import { AHEAD, openLogger, unfit } from './readings.service.ts'
import type { takenWeatherSchema, weatherReadingsSchema } from './weather.schema.ts'

type Sent = z.output<typeof weatherReadingsSchema>['readings'][number]
type Taken = z.output<typeof takenWeatherSchema>
type Values = Record<(typeof QUANTITIES)[number], number | null>

const QUANTITIES = ['air', 'humidity', 'wind', 'sun', 'sky'] as const
/** Older than this is no weather that anybody waits for, but a clock that is wrong, ms. */
const OLDEST = 31 * 86_400_000

/**
 * Takes what a weather station sends by the key of a logger: one `weather` entry of the yard with all that is new, whichever panel the
 * logger reads for, if any. What is there already is not stored again.
 *
 * @throws Problem 401 and 403 as for readings, 422 naming each reading that does not fit.
 */
export function takeWeather(log: YardLog, asked: Logger, sent: readonly Sent[]): Promise<Taken> {
  return log.turn(async () => {
    const logger = await openLogger(log, asked)
    const { weather } = await log.state()
    const there = new Map(weather.map((reading) => [reading.at, valuesOf(reading)]))
    const now = log.clock()
    const fresh = new Map<string, Values>()
    const issues: InputIssue[] = []
    let [known, empty] = [0, 0]
    for (const [index, reading] of sent.entries()) {
      const values = valuesOf(reading)
      const time = Date.parse(reading.at)
      const at = new Date(time).toISOString()
      const before = fresh.get(at) ?? there.get(at)
      if (QUANTITIES.every((what) => values[what] === null)) empty += 1
      else if (before !== undefined && same(before, values)) known += 1
      else if (before !== undefined)
        issues.push({
          path: `readings[${index}]`,
          found: words(values),
          expected: `${words(before)}, as recorded for ${at}`,
        })
      else if (time > now + AHEAD || time < now - OLDEST)
        issues.push({
          path: `readings[${index}].at`,
          found: reading.at,
          expected: `a time of the last 31 days and not more than two minutes after ${new Date(now).toISOString()}, now by the server`,
        })
      else fresh.set(at, values)
    }
    if (issues.length > 0) throw unfit(issues)
    if (fresh.size === 0) return { stored: 0, known, empty, entry: null }
    const readings = [...fresh]
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([at, { sun, sky, ...always }]) => ({
        at,
        ...always,
        ...(sun === null ? {} : { sun }),
        ...(sky === null ? {} : { sky }),
      }))
    const [entry] = await log.make(personOfLogger(logger), [
      { kind: 'weather', subject: { kind: 'yard', id: log.store.yard }, value: { readings } },
    ])
    return { stored: fresh.size, known, empty, entry: entry?.id ?? null }
  })
}

function valuesOf(reading: Sent | WeatherReading): Values {
  const { air = null, humidity = null, wind = null, sun = null, sky = null } = reading
  return { air, humidity, wind, sun, sky }
}

function same(a: Values, b: Values): boolean {
  return QUANTITIES.every((what) => a[what] === b[what])
}

function words(values: Values): string {
  return QUANTITIES.flatMap((what) => (values[what] === null ? [] : [`${what} ${values[what]}`])).join(', ')
}
