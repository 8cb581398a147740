import { wallOf } from './local-time.ts'

export interface WeatherHour {
  readonly at: number
  /** °C */
  readonly air: number
  /** % */
  readonly humidity: number
  /** km/h */
  readonly wind: number
}

const HOUR = 3_600_000
const DAY = 24 * HOUR

/** Air of an invented September near the sea: mean and swing of the days, °C, from the seventh on; the last night is cold. */
const DAYS: readonly (readonly [mean: number, swing: number, wind: number])[] = [
  [15.5, 3.5, 14],
  [15, 4, 12],
  [14.5, 3.5, 18],
  [14, 3, 22],
  [13.5, 4, 16],
  [14.5, 4.5, 9],
  [15, 4, 11],
  [13.5, 3.5, 19],
  [11.5, 4.5, 24],
  [10, 5, 20],
  [11, 4.5, 13],
]
const FIRST = Date.parse('2026-09-07T00:00:00.000Z')

/** Air temperature at an instant, °C: a daily wave with its peak at 15:00 on the wall, days blended into each other. */
export function airAt(instant: number, zone: string): number {
  const days = (wallOf(instant, zone) - FIRST) / DAY
  const [mean, swing] = blended(days)
  return mean + swing * Math.sin(2 * Math.PI * (days - 0.375))
}

/** Weather of an hour, as a station at the yard's office writes it. */
export function weatherAt(instant: number, zone: string): WeatherHour {
  const days = (wallOf(instant, zone) - FIRST) / DAY
  const air = airAt(instant, zone)
  const [mean, , wind] = blended(days)
  const gust = Math.sin(days * 17.3) + 0.6 * Math.sin(days * 41.9)
  return {
    at: instant,
    air: tenth(air),
    humidity: Math.round(Math.min(97, Math.max(48, 78 - 4.2 * (air - mean) + 3 * gust))),
    wind: Math.round(Math.max(2, wind + 4 * Math.sin(2 * Math.PI * (days - 0.4)) + 2.5 * gust)),
  }
}

/** Hourly weather from one instant to another, both included. */
export function weatherHours(from: number, to: number, zone: string): WeatherHour[] {
  const hours: WeatherHour[] = []
  for (let instant = from; instant <= to; instant += HOUR) hours.push(weatherAt(instant, zone))
  return hours
}

/** The same hours as somebody foretells them half a day before: whole degrees, and a little out. */
export function forecastHours(from: number, to: number, zone: string): WeatherHour[] {
  return weatherHours(from, to, zone).map(({ at, air, humidity, wind }) => {
    const out = Math.sin((at - FIRST) / (7 * HOUR)) + 0.4 * Math.sin((at - FIRST) / (31 * HOUR))
    return {
      at,
      air: Math.round(air + out),
      humidity: Math.min(97, Math.round((humidity - 2 * out) / 5) * 5),
      wind: Math.max(3, Math.round(wind * 1.1)),
    }
  })
}

function blended(days: number): [mean: number, swing: number, wind: number] {
  const place = Math.min(Math.max(days - 0.5, 0), DAYS.length - 1)
  const [a, b] = [Math.floor(place), Math.ceil(place)]
  const share = place - a
  return [0, 1, 2].map((part) => {
    const [from, to] = [DAYS[a]?.[part] ?? 0, DAYS[b]?.[part] ?? 0]
    return from + share * (to - from)
  }) as [number, number, number]
}

function tenth(value: number): number {
  return Math.round(value * 10) / 10
}
