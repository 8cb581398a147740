const DAY = 86_400_000
const MINUTE = 60_000
const FORMATS = new Map<string, Intl.DateTimeFormat>()

/** What the clocks of a zone show at an instant, as if it were UTC, ms. */
export function wallOf(instant: number, zone: string): number {
  const format =
    FORMATS.get(zone) ??
    new Intl.DateTimeFormat('en-GB', {
      timeZone: zone,
      hourCycle: 'h23',
      year: 'numeric',
      month: 'numeric',
      day: 'numeric',
      hour: 'numeric',
      minute: 'numeric',
      second: 'numeric',
    })
  FORMATS.set(zone, format)
  const parts = Object.fromEntries(
    format.formatToParts(instant).map(({ type, value }) => [type, Number(value)]),
  )
  const { year = 0, month = 1, day = 1, hour = 0, minute = 0, second = 0 } = parts
  return Date.UTC(year, month - 1, day, hour, minute, second) + (((instant % 1000) + 1000) % 1000)
}

/** The instants, ms, at which the clocks of a zone show a wall time given as if it were UTC: none where they skip it, two where they show it twice. */
export function instantsOf(wall: number, zone: string): number[] {
  // The zone's offset changes at most once in a day: one of the two around is in force.
  const candidates = [wall - DAY, wall + DAY].map((near) => wall - (wallOf(near, zone) - near))
  return [...new Set(candidates)]
    .filter((candidate) => wallOf(candidate, zone) === wall)
    .sort((a, b) => a - b)
}

/** First instant, ms, after another at which the clocks of a zone show a time of day, `05:30`. */
export function nextClock(clock: string, after: number, zone: string): number {
  const [hour = 0, minute = 0] = clock.split(':').map(Number)
  const midnight = Math.floor(wallOf(after, zone) / DAY) * DAY
  const wall = midnight + (60 * hour + minute) * MINUTE
  for (let day = 0; ; day += 1) {
    const found = instantsOf(wall + day * DAY, zone).find((instant) => instant > after)
    if (found !== undefined) return found
    if (day > 3) throw new Error(`${zone}: found no ${clock} in four days`)
  }
}
