import { STRONGEST_WIND, weatherOfPour, type YardWeather } from '../cure/heat/yard-weather.ts'
import { COLDEST_READING, HOTTEST_READING } from '../cure/readings.ts'
import { SHED_WIND, STATION_HEIGHT, type SurfaceAir, windAtSurface } from '../pour/finish/index.ts'
import type { InputIssue } from '../working/issue.ts'

/** The yard's log, and what is foretold; each by time. */
export interface YardAir {
  readonly weather: readonly YardWeather[]
  readonly forecast: readonly YardWeather[]
}

const HOUR = 3_600_000

/** The yard's air as this surface has it: km/h half a metre over it; a forecast and a station do not blow into a shed. */
export function surfaceAir({
  weather,
  forecast,
  mixed,
  until,
  roofed,
}: YardAir & {
  readonly mixed: string
  /** Hours from mixing that are looked at. */
  readonly until: number
  readonly roofed: boolean
}): SurfaceAir {
  const down = (reading: YardWeather): YardWeather => {
    const { wind, windHeight } = reading
    // What was read by hand at the panel holds in the shed too.
    if (roofed && windHeight === undefined) return { ...reading, wind: SHED_WIND }
    return wind === null ? reading : { ...reading, wind: windAtSurface(wind, windHeight ?? STATION_HEIGHT) }
  }
  const pour = weatherOfPour({
    logged: weather.map(down),
    forecast: forecast.map(down),
    mixed,
    from: -1,
    until,
  })
  return {
    air: pour.weather.air,
    humidity: pour.humidity,
    wind: pour.wind,
  }
}

/** Weather around a pour that no instrument gives, by its moment: what came, and what could. */
export function weatherOutside({
  weather,
  forecast,
  mixed,
  until,
}: YardAir & { readonly mixed: string; readonly until: number }): InputIssue[] {
  return [...weather, ...forecast].flatMap((reading) => {
    const away = (Date.parse(reading.at) - Date.parse(mixed)) / HOUR
    return away >= -1 && away <= until ? weatherIssues(reading) : []
  })
}

/** What of a reading is outside what its instrument can give. */
function weatherIssues(reading: YardWeather): InputIssue[] {
  return WEATHER_RANGES.flatMap(([column, low, high, unit]) => {
    const value = reading[column]
    return value === null || (value >= low && value <= high)
      ? []
      : [
          {
            path: `weather of ${reading.at}: ${column}`,
            found: `${value} ${unit}`,
            expected: `${low} to ${high} ${unit}`,
          },
        ]
  })
}

/** As `weatherOfPour` takes them. */
const WEATHER_RANGES = [
  ['air', COLDEST_READING, HOTTEST_READING, '°C'],
  ['humidity', 0, 100, '%'],
  ['wind', 0, STRONGEST_WIND, 'km/h'],
] as const
