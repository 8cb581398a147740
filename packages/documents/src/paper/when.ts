const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
]

/** An instant in the yard's time: `12 May 2026, 14:05`. Null is `not yet`. */
export function dayAndTime(instant: string | null | undefined, timezone: string): string {
  if (instant === null || instant === undefined) return 'not yet'
  const { year, month, day, hour, minute } = partsOf(instant, timezone)
  return `${day} ${month} ${year}, ${hour}:${minute}`
}

/** The day alone: `12 May 2026`. */
export function dayText(instant: string | null | undefined, timezone: string): string {
  if (instant === null || instant === undefined) return 'not yet'
  const { year, month, day } = partsOf(instant, timezone)
  return `${day} ${month} ${year}`
}

/** The day with its month cut to three letters, for a label: `12 May 2026`. */
export function shortDay(instant: string | null | undefined, timezone: string): string {
  if (instant === null || instant === undefined) return 'not yet'
  const { year, month, day } = partsOf(instant, timezone)
  return `${day} ${month.slice(0, 3)} ${year}`
}

function partsOf(instant: string, timezone: string) {
  const parts = new Intl.DateTimeFormat('en-GB', {
    timeZone: timezone,
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  }).formatToParts(new Date(instant))
  const part = (kind: string): string => parts.find(({ type }) => type === kind)?.value ?? ''
  return {
    year: part('year'),
    month: MONTHS[Number(part('month')) - 1] ?? '',
    day: String(Number(part('day'))),
    hour: part('hour'),
    minute: part('minute'),
  }
}
