import { notAboveZero } from '../working/guard.ts'
import type { Assumed } from '../working/worked.ts'
import type { Mix } from '../yard/yard.ts'
import { ageRate } from './age-method.ts'
import type { CurvePoint } from './cure-plan.ts'
import { ageOf } from './equivalent-age.ts'
import { hourMet } from './hour-met.ts'
import { type Reading, readingGaps, readingsUntil } from './readings.ts'
import { mixMethod } from './strength-from-log.ts'
import { strengthModel } from './strength-model.ts'

export interface LiveCurveInput {
  readonly mix: Pick<Mix, 'curve' | 'tests' | 'scatter' | 'reference' | 'activation'>
  /** Logged readings, hours from mixing. */
  readonly readings: readonly Reading[]
  /** Strength wanted, MPa; null where it is not known. */
  readonly wanted: number | null
  /** Temperature after the last reading, °C; that of the last reading where not given, listed as assumed. */
  readonly celsius?: number
  /** Last hour of the curve. */
  readonly until: number
}

/** How a pour goes on from its own log. Null and `unknown` where not known. */
export interface LiveCurve {
  /** Hour from mixing at which the wanted strength is met, expected and at the low edge: past or to come. */
  readonly hour: number | null
  readonly hourLow: number | null
  /** Each hour from mixing to the last: along the log, then at one temperature. */
  readonly curve: readonly CurvePoint[]
  readonly unknown: readonly string[]
  readonly assumed: readonly Assumed[]
}

/** Longest curve, h. */
const LONGEST = 672

/**
 * Strength curve of a pour along its logged temperatures and on from there: what replaces the planned curve once there is
 * a log. Source and rounding as in `strengthNow` and `hourMet`.
 *
 * Unknown with fewer than two readings, or a mix that has neither curve nor tests.
 */
export function liveCurve({ mix, readings, wanted, celsius, until }: LiveCurveInput): LiveCurve {
  const { method, assumed } = mixMethod(mix)
  const model = strengthModel({ source: mix, method })
  const last = readings.at(-1)
  const after = celsius ?? last?.[1]
  const gaps = [
    ...readingGaps(readings),
    ...(model.known ? [] : model.gaps),
    ...(after !== undefined && Number.isFinite(after) ? [] : ['celsius: a number']),
    ...notAboveZero({ until }),
  ]
  if (gaps.length > 0 || !model.known || last === undefined || after === undefined)
    return { hour: null, hourLow: null, curve: [], unknown: gaps, assumed }
  const logged = ageOf(readings, method)
  const ageAt = (hour: number): number => {
    if (hour >= last[0]) return logged + (hour - last[0]) * ageRate(method, after)
    const part = readingsUntil(readings, hour)
    return part.length > 1 ? ageOf(part, method) : 0
  }
  const curve = Array.from({ length: Math.floor(Math.min(until, LONGEST)) + 1 }, (_, hour) => hour).flatMap(
    (hour): CurvePoint[] => {
      const age = ageAt(hour)
      const strength = model.value.strength(age)
      if (strength === null) return []
      const band = model.value.band(age)
      return [[hour, strength, band?.low ?? null, band?.high ?? null]]
    },
  )
  const met = (edge: 'expected' | 'low') =>
    wanted === null ? null : hourMet({ model: model.value, method, wanted, celsius: after, readings, edge })
  const [hour, hourLow] = [met('expected'), met('low')]
  const unknown = [hour, hourLow].flatMap((found) => (found === null || found.known ? [] : found.gaps))
  return {
    hour: hour?.known ? hour.value : null,
    hourLow: hourLow?.known ? hourLow.value : null,
    curve,
    unknown: wanted === null ? ['wanted: the strength at the first lift'] : [...new Set(unknown)],
    assumed: celsius === undefined ? [...assumed, afterAssumed(after)] : assumed,
  }
}

function afterAssumed(celsius: number): Assumed {
  return {
    field: 'cure.temperature',
    value: celsius,
    unit: '°C',
    why: 'after the last reading: as the last reading, until more is logged',
  }
}
