import { COLDEST_READING, HOTTEST_READING } from '../readings.ts'
import type { SeriesPoint } from './series.ts'
import { LONGEST_STRETCH, type Weather, type WeatherRow, weatherOf } from './weather.ts'

/** Weather at an instant as the yard has it: °C, %, km/h, W/m², °C; null or left out where nothing was given. */
export interface YardWeather {
  /** UTC */
  readonly at: string
  readonly air: number | null
  readonly humidity: number | null
  readonly wind: number | null
  /** Height at which the wind was read, m; a station's 10 m where left out. */
  readonly windHeight?: number | undefined
  readonly sun?: number | null | undefined
  readonly sky?: number | null | undefined
}

export interface PourWeather {
  /** Hours from mixing; wind in m/s. */
  readonly weather: Weather
  /** Hours from mixing, %. */
  readonly humidity: readonly SeriesPoint[]
  /** Hours from mixing, km/h as read; also of readings that give no air temperature. */
  readonly wind: readonly SeriesPoint[]
  /** Hour from mixing of the last reading that was logged: what comes after is forecast. Null where nothing was. */
  readonly loggedTo: number | null
}

export interface PourWeatherInput {
  /** As logged, and as foretold; each by time. A forecast counts only after the last logged reading. */
  readonly logged: readonly YardWeather[]
  readonly forecast: readonly YardWeather[]
  /** When water met cement, UTC. */
  readonly mixed: string
  /** Hours from mixing that are looked at; one reading beyond either end is kept, so that the edges are carried. */
  readonly from?: number
  readonly until: number
}

const HOUR = 3_600_000
const KMH = 3.6
/** What an anemometer of a yard gives at most, km/h. */
export const STRONGEST_WIND = 40 * KMH

/**
 * Weather of the yard as a pour sees it: hours from mixing, logged as far as the log goes, forecast from there. Readings that
 * no instrument gives (outside the range of air temperatures) count as not given; stretches without readings stay gaps.
 */
export function weatherOfPour(input: PourWeatherInput): PourWeather {
  const { logged, forecast, mixed, from = 0, until } = input
  const start = Date.parse(mixed)
  const hourOf = ({ at }: YardWeather): number => (Date.parse(at) - start) / HOUR
  const lastLogged = logged.at(-1)
  const loggedTo = lastLogged === undefined ? null : hourOf(lastLogged)
  const after = loggedTo ?? Number.NEGATIVE_INFINITY
  const rows = [
    ...logged.map((reading) => ({ hours: hourOf(reading), reading })),
    ...forecast
      .map((reading) => ({ hours: hourOf(reading), reading }))
      .filter(({ hours }) => hours > after + 1e-9),
  ].filter(({ hours }) => Number.isFinite(hours))
  const kept = rows.filter(
    (_, at) =>
      (rows[at + 1]?.hours ?? Number.POSITIVE_INFINITY) > from && (rows[at - 1]?.hours ?? -1e9) < until,
  )
  const told = kept.filter(({ reading: { air } }) => inRange(air, COLDEST_READING, HOTTEST_READING))
  const weather =
    told.length === 0
      ? { air: [], wind: [], sky: [], sun: [], gaps: [] }
      : weatherOf(told.map(weatherRow), LONGEST_STRETCH)
  return {
    weather,
    humidity: kept.flatMap(({ hours, reading: { humidity } }): SeriesPoint[] =>
      inRange(humidity, 0, 100) ? [[hours, humidity]] : [],
    ),
    wind: kept.flatMap(({ hours, reading: { wind } }): SeriesPoint[] =>
      inRange(wind, 0, STRONGEST_WIND) ? [[hours, wind]] : [],
    ),
    loggedTo,
  }
}

function weatherRow({
  hours,
  reading: { air, wind, sky, sun },
}: {
  readonly hours: number
  readonly reading: YardWeather
}): WeatherRow {
  return {
    hours,
    air: air as number,
    ...(inRange(wind, 0, STRONGEST_WIND) ? { wind: wind / KMH } : {}),
    ...(inRange(sky, -120, 60) ? { sky } : {}),
    ...(inRange(sun, 0, 1500) ? { sun } : {}),
  }
}

function inRange(value: number | null | undefined, low: number, high: number): value is number {
  return typeof value === 'number' && value >= low && value <= high
}
