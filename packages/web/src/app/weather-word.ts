import type { WeatherReading } from '@castwright/record'

/** Older than this says nothing of the air now, ms. */
const STALE = 12 * 3_600_000

/** The last logged air for the head, with the time it was seen; null where nothing of the last twelve hours is logged. */
export function weatherWord(
  weather: readonly WeatherReading[],
  now: Date,
  zone: string,
): { readonly label: string; readonly text: string } | null {
  const seen = weather.findLast((reading) => Date.parse(reading.at) <= now.getTime())
  if (seen === undefined || now.getTime() - Date.parse(seen.at) > STALE) return null
  const parts = [
    seen.air === null ? null : `${Math.round(seen.air)} °C`.replace('-', '−'),
    seen.humidity === null ? null : `${Math.round(seen.humidity)} % humidity`,
    seen.wind === null ? null : `wind ${Math.round(seen.wind)} km/h`,
  ].filter((part) => part !== null)
  if (parts.length === 0) return null
  const clock = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  }).format(new Date(seen.at))
  return { label: `Air, logged ${clock}`, text: parts.join(', ') }
}
