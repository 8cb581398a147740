import type { SeriesPoint } from '../../cure/heat/series.ts'
import { LONGEST_STRETCH } from '../../cure/heat/weather.ts'

/** Air over the surface in time, hours from mixing: °C, %, km/h half a metre over it. Straight between readings. */
export interface SurfaceAir {
  readonly air: readonly SeriesPoint[]
  readonly humidity: readonly SeriesPoint[]
  readonly wind: readonly SeriesPoint[]
}

/** The air at one hour. */
export interface AirThen {
  readonly air: number
  readonly humidity: number
  readonly wind: number
}

/** All three at an hour; null where one of them has no reading within three hours of it. */
export function airThen(series: SurfaceAir, hour: number): AirThen | null {
  const [air, humidity, wind] = [
    readAt(series.air, hour),
    readAt(series.humidity, hour),
    readAt(series.wind, hour),
  ]
  return air === null || humidity === null || wind === null ? null : { air, humidity, wind }
}

/**
 * Value at an hour, straight between two readings not more than three hours apart, and the nearest one held for at most three
 * hours beyond an end or into a longer stretch without readings; null further off.
 */
export function readAt(points: readonly SeriesPoint[], hour: number): number | null {
  const next = points.findIndex(([at]) => at >= hour)
  const after = next === -1 ? undefined : points[next]
  const before = next === -1 ? points.at(-1) : points[next - 1]
  if (after !== undefined && before !== undefined && after[0] - before[0] <= LONGEST_STRETCH)
    return before[1] + ((after[1] - before[1]) * (hour - before[0])) / (after[0] - before[0])
  const nearest = [before, after]
    .filter((point) => point !== undefined)
    .sort((a, b) => Math.abs(a[0] - hour) - Math.abs(b[0] - hour))[0]
  return nearest !== undefined && Math.abs(nearest[0] - hour) <= LONGEST_STRETCH ? nearest[1] : null
}

/** What an hour is missing, by name; empty where `airThen` knows it. */
export function airGaps(series: SurfaceAir, hour: number): string[] {
  return (['air', 'humidity', 'wind'] as const)
    .filter((name) => readAt(series[name], hour) === null)
    .map((name) => `weather: no ${WORDS[name]} within ${LONGEST_STRETCH} h`)
}

const WORDS = { air: 'air temperature', humidity: 'humidity', wind: 'wind' } as const
