import { dryingGaps, menzelRate, unoRate } from '../drying.ts'
import type { TemperatureReadings } from '../setting.ts'
import { type AirThen, airThen, type SurfaceAir } from './air.ts'
import { type BleedKind, bledAtAge, bleedSpeed } from './bleed.ts'
import type { Sheen } from './windows.ts'

/** Water over the surface in time. */
export interface WaterPoint {
  /** From mixing. */
  readonly hour: number
  /** By Uno and by Menzel, kg/m²/h; null where air, humidity or wind is not known, or outside the formulas. Below 0 water condenses. */
  readonly rate: number | null
  readonly other: number | null
  /** Bled since placing, kg/m². */
  readonly bled: number
  /** Dried off since placing by Uno, kg/m²; null from the first hour on whose rate is not known. */
  readonly dried: number | null
}

export interface WaterInput {
  readonly temperature: TemperatureReadings
  readonly air: SurfaceAir
  /** Hours from mixing: from when the concrete lay in the mould, to when it is looked at. */
  readonly placed: number
  readonly until: number
  /** mm */
  readonly thickness: number
  readonly kind: BleedKind
  /** J/mol */
  readonly activation: number
}

const STRIDE = 1 / 12

/** Bleed water and what dries off, each five minutes from placing on. */
export function surfaceWater(input: WaterInput): WaterPoint[] {
  const { temperature, air, placed, until, thickness, kind, activation } = input
  const points: WaterPoint[] = []
  const count = Math.max(1, Math.ceil((until - placed) / STRIDE))
  const speedAt = (hour: number): number => bleedSpeed(temperatureAt(temperature, hour), activation)
  let age = 0
  for (let at = 0; at <= count; at += 1) {
    const hour = placed + ((until - placed) * at) / count
    const then = airThen(air, hour)
    const { rate, other } = ratesAt(then, temperatureAt(temperature, hour))
    const before = points.at(-1)
    if (before !== undefined) {
      const middle = (before.hour + hour) / 2
      age += ((hour - before.hour) / 6) * (speedAt(before.hour) + 4 * speedAt(middle) + speedAt(hour))
    }
    const dried =
      before === undefined
        ? rate === null
          ? null
          : 0
        : before.dried === null || before.rate === null || rate === null
          ? null
          : before.dried + ((before.rate + rate) / 2) * (hour - before.hour)
    points.push({ hour, rate, other, bled: bledAtAge(age, thickness, kind), dried })
  }
  return points
}

/** Both rates in one air; both null where it is not known, or so cold that neither formula is used. */
export function ratesAt(
  then: AirThen | null,
  concrete: number,
): { readonly rate: number | null; readonly other: number | null } {
  return then === null || dryingGaps({ ...then, concrete }).length > 0
    ? { rate: null, other: null }
    : { rate: unoRate({ ...then, concrete }), other: menzelRate({ ...then, concrete }) }
}

/** Straight between the readings, held beyond their ends. */
export function temperatureAt(log: TemperatureReadings, hour: number): number {
  const next = log.findIndex(([at]) => at >= hour)
  const [after, before] = [log[next] ?? log.at(-1), log[Math.max(0, next - 1)]]
  if (after === undefined || before === undefined || next <= 0) return after?.[1] ?? Number.NaN
  return before[1] + ((after[1] - before[1]) * (hour - before[0])) / (after[0] - before[0])
}

/**
 * When the sheen goes: as much has dried as has bled. A surface that dries faster than it bleeds from the start never has one:
 * the first hour. `stays`: not among the points; `not known`: the air is not known for long enough.
 */
export function sheenGone(points: readonly WaterPoint[]): Sheen {
  for (const [at, point] of points.entries()) {
    if (point.dried === null) return 'not known'
    const over = point.bled - point.dried
    const before = points[at - 1]
    if (before === undefined || over > 0) continue
    const overBefore = before.bled - (before.dried ?? 0)
    return overBefore <= 0
      ? before.hour
      : before.hour + ((point.hour - before.hour) * overBefore) / (overBefore - over)
  }
  return 'stays'
}
