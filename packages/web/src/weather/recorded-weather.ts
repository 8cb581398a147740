import type { WeatherReading } from '@castwright/record'

/** What one entry brought of the weather, as far as it still counts. */
export interface RecordedWeather {
  readonly entry: string
  readonly forecast: boolean
  /** UTC, first and last instant. */
  readonly from: string
  readonly to: string
  readonly count: number
}

/** The entries that the weather in force is from, the one with the latest hours first. */
export function recordedWeather(
  logged: readonly WeatherReading[],
  forecast: readonly WeatherReading[],
): readonly RecordedWeather[] {
  const found = new Map<string, RecordedWeather>()
  const take = (readings: readonly WeatherReading[], foretold: boolean): void => {
    for (const { entry, at } of readings) {
      const before = found.get(entry)
      found.set(entry, {
        entry,
        forecast: foretold,
        from: before === undefined || at < before.from ? at : before.from,
        to: before === undefined || at > before.to ? at : before.to,
        count: (before?.count ?? 0) + 1,
      })
    }
  }
  take(logged, false)
  take(forecast, true)
  return [...found.values()].sort((a, b) => (a.to < b.to ? 1 : -1))
}
