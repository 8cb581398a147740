import type { Verdict } from '../working/verdict.ts'

export interface InDateInput {
  /** Last day on which the gear is in date, `2026-05-31`; null where nobody knows. */
  readonly due: string | null
  /** UTC instant. */
  readonly now: string
  /** IANA zone of the yard: its day decides, not the server's. */
  readonly timezone: string | null
}

/** Whether gear is in date today in the yard's zone. The due day itself still counts. No date: unknown. */
export function inDate({ due, now, timezone }: InDateInput): Verdict {
  if (due === null || timezone === null || !/^\d{4}-\d{2}-\d{2}$/.test(due)) return 'unknown'
  const today = dayIn(timezone, now)
  return today === null ? 'unknown' : today <= due ? 'pass' : 'fail'
}

const FORMATS = new Map<string, Intl.DateTimeFormat>()

/** Day of an instant in a zone, `2026-05-31`; null where instant or zone cannot be read. */
export function dayIn(timezone: string, instant: string): string | null {
  const time = Date.parse(instant)
  if (!Number.isFinite(time)) return null
  try {
    const format =
      FORMATS.get(timezone) ??
      new Intl.DateTimeFormat('en-CA', {
        timeZone: timezone,
        year: 'numeric',
        month: '2-digit',
        day: '2-digit',
      })
    FORMATS.set(timezone, format)
    const part = Object.fromEntries(format.formatToParts(time).map(({ type, value }) => [type, value]))
    return `${part.year}-${part.month}-${part.day}`
  } catch {
    return null
  }
}
