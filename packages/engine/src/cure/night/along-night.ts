import type { HeatRun } from '../heat/problem.ts'
import { type LiveCurve, type LiveCurveInput, liveCurve } from '../live-curve.ts'
import type { Reading } from '../readings.ts'
import { computedAt } from './compare-log.ts'

export interface AlongNightInput extends Omit<LiveCurveInput, 'readings' | 'celsius' | 'until'> {
  readonly run: Pick<HeatRun, 'times' | 'coldest' | 'core' | 'top' | 'bottom'>
  /** Channels that were logged in the concrete; empty where nothing is. */
  readonly logs: readonly { readonly channel: string; readonly readings: readonly Reading[] }[]
}

/** Strength along a computed night: what is logged counts first, and nothing is said after the end of the run. */
export interface AlongNight extends Pick<LiveCurve, 'curve' | 'unknown' | 'assumed'> {
  /** Hours from mixing at which the wanted strength is met, expected and at the low edge; null where not within the run. */
  readonly hour: number | null
  readonly hourLow: number | null
  /** Temperatures that it stands on: the log, then the computed night. */
  readonly readings: readonly Reading[]
}

/**
 * Strength of a pour along its log as far as it goes and along the coldest place of the computed night from there. Of several channels
 * the one that is met last counts, as in `cureNow`.
 *
 * After the last reading the computed curve is taken, lowered by as much as the log was colder than it there; where the log was the
 * warmer the computed curve itself, so that a warm probe never helps.
 */
export function alongNight({ run, logs, wanted, ...rest }: AlongNightInput): AlongNight {
  const until = run.times.at(-1) ?? 0
  const used = logs.filter(({ readings }) => readings.length > 1)
  const histories =
    used.length === 0 ? [computedHistory(run)] : used.map(({ readings }) => after(readings, run))
  const found = histories.map((readings) => {
    const last = readings.at(-1)?.[1]
    const live = liveCurve({
      ...rest,
      wanted,
      readings,
      until,
      ...(last === undefined ? {} : { celsius: last }),
    })
    return { live, readings }
  })
  const slowest = found.reduce((worst, next) =>
    met(next.live, until) > met(worst.live, until) ? next : worst,
  )
  const { live, readings } = slowest
  const within = (hour: number | null): number | null => (hour !== null && hour <= until + 1e-9 ? hour : null)
  return {
    curve: live.curve,
    hour: within(live.hour),
    hourLow: within(live.hourLow),
    readings,
    unknown: live.unknown,
    assumed: live.assumed,
  }
}

function met({ hourLow, hour }: LiveCurve, until: number): number {
  const first = hourLow ?? hour ?? Number.POSITIVE_INFINITY
  return first <= until + 1e-9 ? first : Number.POSITIVE_INFINITY
}

function computedHistory(run: AlongNightInput['run']): Reading[] {
  return run.times.map((time, at) => [time, run.coldest[at] ?? Number.NaN])
}

/** A log carried on along the computed night. */
export function after(readings: readonly Reading[], run: AlongNightInput['run']): readonly Reading[] {
  const last = readings.at(-1)
  if (last === undefined) return computedHistory(run)
  const lowered = Math.min(0, last[1] - computedAt(run, 'coldest', last[0]))
  const on = computedHistory(run)
    .filter(([hour]) => hour > last[0] + 1e-6)
    .map(([hour, celsius]): Reading => [hour, celsius + lowered])
  return [...readings, ...on]
}
