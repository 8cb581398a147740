import { dayIn } from '@castwright/engine/steps'
import { instantOf } from '../panel/when.ts'

/** The yard's day: 05:00 to 05:00 in its zone; 23 or 25 hours long where the clocks change. */
export interface DayWindow {
  /** Day on which it begins, `2026-04-14`. */
  readonly day: string
  /** ms since 1970 UTC. */
  readonly from: number
  readonly to: number
}

export const DAY_START = '05:00'

/** The day that an instant falls in: before 05:00 it is still the day before. */
export function dayOf(now: Date, zone: string): string {
  const today = dayIn(zone, now.toISOString()) ?? now.toISOString().slice(0, 10)
  const start = startOf(today, zone)
  return now.getTime() < start ? shiftDay(today, -1) : today
}

export function dayWindow(day: string, zone: string): DayWindow {
  return { day, from: startOf(day, zone), to: startOf(shiftDay(day, 1), zone) }
}

/** A day some days on or back. */
export function shiftDay(day: string, days: number): string {
  const date = new Date(`${day}T00:00:00.000Z`)
  date.setUTCDate(date.getUTCDate() + days)
  return date.toISOString().slice(0, 10)
}

export function isDay(text: unknown): text is string {
  return (
    typeof text === 'string' &&
    /^\d{4}-\d{2}-\d{2}$/.test(text) &&
    !Number.isNaN(Date.parse(`${text}T00:00:00.000Z`))
  )
}

/** `Tuesday 14 April`. */
export function dayName(day: string): string {
  return new Intl.DateTimeFormat('en-GB', {
    timeZone: 'UTC',
    weekday: 'long',
    day: 'numeric',
    month: 'long',
  }).format(new Date(`${day}T12:00:00.000Z`))
}

/** `11:50` in the yard's zone. */
export function clockText(at: number, zone: string): string {
  return new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  }).format(at)
}

function startOf(day: string, zone: string): number {
  // 05:00 is never skipped by a clock that changes at night; where a zone does so all the same, UTC stands in.
  return Date.parse(instantOf(`${day}T${DAY_START}`, zone) ?? `${day}T${DAY_START}:00.000Z`)
}
