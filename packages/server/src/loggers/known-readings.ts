import type { YardState } from '@castwright/record'

/** °C that is on record of a channel at a time, ms since 1970; null where nothing is. */
export type KnownReadings = (channel: string, time: number) => number | null

type Readings = readonly (readonly [hours: number, celsius: number])[]

interface KnownLog {
  readonly mixed: number
  readonly readings: Readings
}

const HOUR = 3_600_000
/** Hours are kept as a number: two that are nearer than this are one millisecond, h. */
const SAME = 0.5 / HOUR

/** Everything that one maker of logs has in the record, whichever panel it was read for: a logger that sends again after it was moved is known too. */
export function knownReadings(state: YardState, maker: string): KnownReadings {
  const logs = new Map<string, KnownLog[]>()
  for (const { cast, temperatures } of state.panels.values()) {
    if (cast === null) continue
    const mixed = Date.parse(cast.at)
    for (const { by, channel, readings, broken = [] } of temperatures) {
      if (by.id !== maker) continue
      logs.set(channel, [...(logs.get(channel) ?? []), { mixed, readings }, { mixed, readings: broken }])
    }
  }
  return (channel, time) => {
    for (const { mixed, readings } of logs.get(channel) ?? []) {
      const found = readingAt(readings, (time - mixed) / HOUR)
      if (found !== null) return found
    }
    return null
  }
}

function readingAt(readings: Readings, hours: number): number | null {
  let [low, high] = [0, readings.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((readings[middle]?.[0] ?? 0) < hours - SAME) low = middle + 1
    else high = middle
  }
  const found = readings[low]
  return found !== undefined && Math.abs(found[0] - hours) <= SAME ? found[1] : null
}
