const HOUR = 3_600_000

const formats = new Map<string, Intl.DateTimeFormat>()

/** What a clock on the wall of the zone shows at an instant, as if it were UTC, ms. */
export function wallOf(instant: number, zone: string): number {
  const format =
    formats.get(zone) ??
    new Intl.DateTimeFormat('en-GB', {
      timeZone: zone,
      hourCycle: 'h23',
      year: 'numeric',
      month: '2-digit',
      day: '2-digit',
      hour: '2-digit',
      minute: '2-digit',
      second: '2-digit',
    })
  formats.set(zone, format)
  const part = Object.fromEntries(format.formatToParts(instant).map(({ type, value }) => [type, value]))
  const shown = Date.parse(
    `${part.year}-${part.month}-${part.day}T${part.hour}:${part.minute}:${part.second}.000Z`,
  )
  return shown + (((instant % 1000) + 1000) % 1000)
}

/**
 * Instant at which the wall of the zone shows a time. One that the spring change leaves out is the same distance after
 * the change; of two in autumn it is the first.
 */
export function instantOf(wall: number, zone: string): number {
  const early = wall - (wallOf(wall - 12 * HOUR, zone) - (wall - 12 * HOUR))
  const late = wall - (wallOf(wall + 12 * HOUR, zone) - (wall + 12 * HOUR))
  return [early, late].find((instant) => wallOf(instant, zone) === wall) ?? early
}

/** Instant of a time of day, `08:25` or `08:25:30`, in the zone. */
export function at(day: string, time: string, zone: string): number {
  const full = time.length === 5 ? `${time}:00` : time
  return instantOf(Date.parse(`${day}T${full}.000Z`), zone)
}

/** The same time of day so many days later, whatever the clocks did between. */
export function daysLater(instant: number, days: number, zone: string): number {
  return instantOf(wallOf(instant, zone) + days * 24 * HOUR, zone)
}
