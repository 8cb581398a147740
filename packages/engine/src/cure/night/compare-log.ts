import type { HeatRun } from '../heat/problem.ts'
import { valueAt } from '../heat/series.ts'
import type { Reading } from '../readings.ts'

/** Which computed curve a channel is held against. */
export type NightPlace = 'core' | 'top' | 'bottom' | 'coldest'

export interface LogCompared {
  readonly channel: string
  readonly place: NightPlace
  /** Readings that were held against the computed curve. */
  readonly count: number
  /** Logged less computed, K: mean, and the largest with its hour from mixing. */
  readonly bias: number
  readonly largest: { readonly kelvin: number; readonly hour: number }
  /** Logged less computed at the last reading within the run, K. */
  readonly last: number
}

/** In the first hour the concrete still moves, and a probe takes its own time, h: common practice, no source. */
const SETTLING = 1

/** The curve that a channel's name speaks of; of one that says nothing, the coldest place, where probes belong. */
export function placeOf(channel: string): NightPlace {
  if (/core|cent(re|er)|mid/i.test(channel)) return 'core'
  if (/bottom|under|soffit|mould/i.test(channel)) return 'bottom'
  return /top|face|surface/i.test(channel) ? 'top' : 'coldest'
}

/** How far a log lies from the computed night; null where none of its readings lie in it. */
export function comparedLog(
  { channel, readings }: { readonly channel: string; readonly readings: readonly Reading[] },
  run: Pick<HeatRun, 'times' | NightPlace>,
): LogCompared | null {
  const place = placeOf(channel)
  const end = run.times.at(-1) ?? 0
  const differences = readings
    .filter(([hour]) => hour >= SETTLING && hour <= end + 1e-9)
    .map(([hour, celsius]) => ({ hour, kelvin: celsius - computedAt(run, place, hour) }))
  const last = differences.at(-1)
  if (last === undefined) return null
  return {
    channel,
    place,
    count: differences.length,
    bias: differences.reduce((sum, { kelvin }) => sum + kelvin, 0) / differences.length,
    largest: differences.reduce((most, next) =>
      Math.abs(next.kelvin) > Math.abs(most.kelvin) ? next : most,
    ),
    last: last.kelvin,
  }
}

/** Computed temperature at an hour, straight between the times that were written down. */
export function computedAt(
  run: Pick<HeatRun, 'times' | NightPlace>,
  place: NightPlace,
  hour: number,
): number {
  const points = run.times.map((time, at) => [time, run[place][at] ?? Number.NaN] as const)
  return valueAt({ form: 'linear', points }, hour)
}
