/** Times are shown in the yard's zone, 24 h, the month in letters. */
const FORMATS = new Map<string, Intl.DateTimeFormat>()

function format(zone: string, options: Intl.DateTimeFormatOptions, name: string): Intl.DateTimeFormat {
  const key = `${name} ${zone}`
  const made =
    FORMATS.get(key) ?? new Intl.DateTimeFormat('en-GB', { timeZone: zone, hourCycle: 'h23', ...options })
  FORMATS.set(key, made)
  return made
}

/** `Mon 15:10` in the last week, else `2 Jun 15:10`. */
export function whenText(instant: string, zone: string, now: Date): string {
  const date = new Date(instant)
  if (Number.isNaN(date.getTime())) return 'not known'
  const clock = format(zone, { hour: '2-digit', minute: '2-digit' }, 'clock').format(date)
  const near = Math.abs(now.getTime() - date.getTime()) < 6 * 86_400_000
  const day = near
    ? format(zone, { weekday: 'short' }, 'weekday').format(date)
    : format(zone, { day: 'numeric', month: 'short' }, 'day').format(date)
  return `${day} ${clock}`
}

/** A day of the calendar, given as `2026-06-02`: `2 Jun 2026`, or `2 Jun` where the year goes without saying. */
export function dayText(day: string, { year = true }: { readonly year?: boolean } = {}): string {
  const date = new Date(`${day}T12:00:00.000Z`)
  if (Number.isNaN(date.getTime())) return 'not known'
  const short: Intl.DateTimeFormatOptions = { day: 'numeric', month: 'short' }
  return year
    ? format('UTC', { ...short, year: 'numeric' }, 'day of a year').format(date)
    : format('UTC', short, 'day').format(date)
}

/** `2026-04-14T15:10` in the yard's zone, as a date-and-time field takes it. */
export function fieldTime(instant: Date, zone: string): string {
  const parts = new Map<string, string>(
    format(
      zone,
      { year: 'numeric', month: '2-digit', day: '2-digit', hour: '2-digit', minute: '2-digit' },
      'field',
    )
      .formatToParts(instant)
      .map(({ type, value }) => [type, value]),
  )
  const part = (name: string): string => parts.get(name) ?? ''
  return `${part('year')}-${part('month')}-${part('day')}T${part('hour')}:${part('minute')}`
}

/**
 * The instant of a time typed in the yard's zone, UTC with milliseconds; null where it is none, or where the clocks skip it.
 * Of a time that comes twice, the first.
 */
export function instantOf(typed: string, zone: string): string | null {
  if (!/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/.test(typed)) return null
  const asUtc = Date.parse(`${typed}:00.000Z`)
  if (Number.isNaN(asUtc)) return null
  // The zone's offset changes at most once in a day: one of the two around is in force.
  const found = [asUtc - 86_400_000, asUtc + 86_400_000]
    .map((near) => asUtc - (Date.parse(`${fieldTime(new Date(near), zone)}:00.000Z`) - near))
    .filter((candidate) => fieldTime(new Date(candidate), zone) === typed)
    .sort((a, b) => a - b)
  return found[0] === undefined ? null : new Date(found[0]).toISOString()
}
