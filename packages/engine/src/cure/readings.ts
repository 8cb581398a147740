/** One reading of a temperature log: hours from mixing, °C. Between two readings the temperature is taken as linear. */
export type Reading = readonly [hours: number, celsius: number]

/** What a thermometer in or on concrete can read, °C; a broken sensor reports values far outside. */
export const COLDEST_READING = -60
export const HOTTEST_READING = 150

/** Why readings cannot be used, in words that name the reading; empty where they can. */
export function readingGaps(readings: readonly Reading[]): string[] {
  if (readings.length < 2) return [`readings: at least two, found ${readings.length}`]
  return readings.flatMap(([hours, celsius], index) => {
    const before = readings[index - 1]
    const faults: string[] = []
    if (!(Number.isFinite(hours) && hours >= 0)) faults.push(`readings[${index}]: hours not below 0`)
    if (before !== undefined && !(hours > before[0]))
      faults.push(`readings[${index}]: hours after those of the reading before`)
    if (!(celsius >= COLDEST_READING && celsius <= HOTTEST_READING))
      faults.push(`readings[${index}]: a temperature from ${COLDEST_READING} to ${HOTTEST_READING} °C`)
    return faults
  })
}

/** Intervals between readings, in order of time. */
export function intervals(readings: readonly Reading[]): [Reading, Reading][] {
  return readings.slice(1).map((reading, index) => [readings[index] as Reading, reading])
}

/** The log up to an hour, its last temperature interpolated. Ends earlier where the log does; empty before it begins. */
export function readingsUntil(readings: readonly Reading[], hour: number): Reading[] {
  const kept = readings.filter(([hours]) => hours <= hour)
  const last = kept.at(-1)
  const next = readings[kept.length]
  if (last === undefined || next === undefined || last[0] === hour) return kept
  const share = (hour - last[0]) / (next[0] - last[0])
  return [...kept, [hour, last[1] + share * (next[1] - last[1])]]
}
