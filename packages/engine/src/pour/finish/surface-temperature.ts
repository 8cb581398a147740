import type { TemperatureReadings } from '../setting.ts'

/** A temperature of the concrete near its surface, as read. */
export interface SurfaceReading {
  /** From mixing. */
  readonly hour: number
  readonly celsius: number
  /** `air`, `plan`: nothing is measured, and the air or the mix's reference stands in. */
  readonly from: 'truck' | 'log' | 'surface' | 'air' | 'plan'
}

export interface SurfaceTemperatureInput {
  /** In any order; at least one. */
  readonly readings: readonly SurfaceReading[]
  /** Air at an hour, °C; null where nobody knows it. */
  readonly air: (hour: number) => number | null
  /** Panel, mm */
  readonly thickness: number
  /** Last hour that is wanted. */
  readonly until: number
}

/** kJ/m³K, concrete; W/m²K, still to light air over a face. Both always listed as assumed. */
export const SURFACE_HEAT = 2400
export const SURFACE_FILM = 10
/** Between two points that are computed, h. */
const STRIDE = 0.25

/** Hours in which a panel comes 63 % nearer to the air, through its top face alone; thickness in mm. */
export function timeToAir(thickness: number): number {
  return (SURFACE_HEAT * 1000 * (thickness / 1000)) / SURFACE_FILM / 3600
}

/**
 * Temperature of the concrete near its surface, hours from mixing and °C, from 0 to `until`.
 *
 * Up to the first reading as that reading, straight between readings, and from the last one on towards the air as a body of one
 * temperature that gives its heat off through the top face alone; where the air is not known it is held. The heat of hydration
 * and the mould are left out: until initial set both are small, and they work against each other. Model, no source.
 */
export function surfaceTemperature(input: SurfaceTemperatureInput): TemperatureReadings {
  const { air, thickness, until } = input
  const readings = [...input.readings].sort((a, b) => a.hour - b.hour)
  const points: [number, number][] = []
  for (const { hour, celsius } of readings) {
    const last = points.at(-1)
    if (last === undefined && hour > 0) points.push([0, celsius])
    if (last !== undefined && hour - last[0] < 1e-6) last[1] = celsius
    else points.push([Math.max(0, hour), celsius])
  }
  const pull = timeToAir(thickness)
  for (let last = points.at(-1); last !== undefined && last[0] < until; last = points.at(-1)) {
    const [hour, celsius] = last
    const next = Math.min(until, hour + STRIDE)
    const towards = air((hour + next) / 2)
    const share = Math.exp(-(next - hour) / pull)
    points.push([next, towards === null ? celsius : towards + (celsius - towards) * share])
  }
  return points
}
