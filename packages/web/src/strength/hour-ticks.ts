import { fieldTime } from '../panel/when.ts'

export interface HourTick {
  /** Hours from mixing. */
  readonly x: number
  readonly text: string
}

const HALF_HOUR = 1_800_000
const HOUR = 3_600_000

/**
 * Hours of the yard's clock on a chart of a pour: every sixth up to two days, midnights up to ten, none beyond. Midnight
 * is named by its day. `mixed`, ms; `from` and `to`, hours from mixing.
 */
export function hourTicks(mixed: number, zone: string, from: number, to: number): HourTick[] {
  const span = to - from
  if (!(span > 0 && span <= 240)) return []
  const every = span <= 48 ? 6 : 24
  const ticks: HourTick[] = []
  const first = Math.ceil((mixed + from * HOUR) / HALF_HOUR) * HALF_HOUR
  for (let at = first; at <= mixed + to * HOUR; at += HALF_HOUR) {
    const clock = fieldTime(new Date(at), zone).slice(11)
    if (!clock.endsWith(':00') || Number(clock.slice(0, 2)) % every !== 0) continue
    ticks.push({ x: (at - mixed) / HOUR, text: clock === '00:00' ? dayName(at, zone) : clock })
  }
  return ticks
}

function dayName(at: number, zone: string): string {
  return new Intl.DateTimeFormat('en-GB', { timeZone: zone, weekday: 'short' }).format(at)
}
