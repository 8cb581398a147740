import { newWalk, type Walk } from '@castwright/engine/pour/live'

export interface TextStorage {
  getItem(key: string): string | null
  setItem(key: string, value: string): void
}

/** A walk is of one panel and revision: visits keep their places, so another stand or other heads do not end it. */
export function walkKey(panel: string, revision: string | null): string {
  return `castwright.walk/2 ${panel} ${revision ?? 'no revision'}`
}

/** A walk older than this belongs to an earlier pour of the same mark, ms. */
const OLD = 24 * 3_600_000

/** The walk as the device kept it: it goes on after the screen was off, the page closed or the battery dead. */
export function keptWalk(storage: TextStorage, key: string, now: number): Walk {
  try {
    const found: unknown = JSON.parse(storage.getItem(key) ?? 'null')
    if (isWalk(found) && now - lastOf(found) < OLD) return found
  } catch {
    // What cannot be read is no walk.
  }
  return newWalk(now.toString(36))
}

/** False where the device is full: then the screen says so. */
export function keepWalk(storage: TextStorage, key: string, walk: Walk): boolean {
  try {
    storage.setItem(key, JSON.stringify(walk))
    return true
  } catch {
    return false
  }
}

/** Which vibrator this device follows, from 1; null: all of them. */
export function keptVibrator(storage: TextStorage, key: string, of: number): number | null {
  const kept = Number(storage.getItem(`${key} vibrator`))
  return Number.isInteger(kept) && kept >= 1 && kept <= of ? kept : null
}

export function keepVibrator(storage: TextStorage, key: string, vibrator: number | null): void {
  try {
    storage.setItem(`${key} vibrator`, String(vibrator ?? 0))
  } catch {
    // A full device asks again after the page is opened anew.
  }
}

function lastOf({ visits, current }: Walk): number {
  return visits.reduce((most, { to }) => Math.max(most, to), current?.since ?? 0)
}

function isWalk(value: unknown): value is Walk {
  if (value === null || typeof value !== 'object') return false
  const { id, visits, current } = value as Partial<Walk>
  const number = (each: unknown): boolean => typeof each === 'number' && Number.isFinite(each)
  const place = (each: Partial<Walk['visits'][number]> | null | undefined): boolean =>
    Array.isArray(each?.at) &&
    each.at.length === 2 &&
    each.at.every(number) &&
    number(each.layer) &&
    number(each.radius)
  return (
    typeof id === 'string' &&
    Array.isArray(visits) &&
    visits.every((visit) => place(visit) && number(visit.from) && number(visit.to)) &&
    (current === null || (place(current) && number(current?.since)))
  )
}
