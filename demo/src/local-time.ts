import { wallOf } from '@castwright/engine/yard'

export { wallOf }

const HOUR = 3_600_000

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
