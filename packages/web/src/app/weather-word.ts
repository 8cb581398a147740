import type { WeatherReading } from '@castwright/record'

/** Older than this is not the air now. */
const STALE = 3 * 3600_000

/** The last logged air for the head, with when it was seen; null where nothing recent is logged. */
export function weatherWord(
  weather: readonly WeatherReading[],
  now: Date,
): { readonly label: string; readonly text: string } | null {
  const seen = weather.findLast((reading) => Date.parse(reading.at) <= now.getTime())
  if (seen === undefined || now.getTime() - Date.parse(seen.at) > STALE) return null
  const parts = [
    seen.air === null ? null : `${Math.round(seen.air)} °C`.replace('-', '−'),
    seen.humidity === null ? null : `${Math.round(seen.humidity)} % humidity`,
    seen.wind === null ? null : `wind ${Math.round(seen.wind)} km/h`,
  ].filter((part) => part !== null)
  return parts.length === 0 ? null : { label: 'Air, logged', text: parts.join(', ') }
}
