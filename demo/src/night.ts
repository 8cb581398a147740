import { airAt } from './weather.ts'

const HOUR = 3_600_000

export interface NightInput {
  /** Water met cement. */
  readonly mixed: number
  readonly until: number
  readonly zone: string
  /** mm */
  readonly thickness: number
  readonly heated: boolean
  /** The cover was lost in the night. */
  readonly bare: boolean
}

/**
 * Temperature of the concrete by the hour, hours from mixing and °C: cools towards the air, warms by its own heat and, on
 * a heated bed, by the bed. A plain shape for an invented log, not a calculation.
 */
export function nightLog({ mixed, until, zone, thickness, heated, bare }: NightInput): [number, number][] {
  const own = (bare ? 1 : 7) + thickness / (bare ? 60 : 30)
  const cools = bare ? 3 : 6
  const readings: [number, number][] = []
  let concrete = bare ? 14 : 18.5
  for (let hour = 0; mixed + hour * HOUR <= until && hour <= 72; hour += 1) {
    const air = airAt(mixed + hour * HOUR, zone)
    if (hour > 0) concrete += (air - concrete) / cools + own * gain(hour) + (heated ? bed(hour) : 0)
    readings.push([hour, Math.round(concrete * 10) / 10])
  }
  return readings
}

/** Share of its own heat that the concrete gives off in an hour: a hump about eight hours after mixing. */
function gain(hour: number): number {
  const from = hour - 3
  return from <= 0 ? 0 : (from / 25) * Math.exp(1 - from / 5)
}

/** What the heated bed adds in an hour, K. */
function bed(hour: number): number {
  return hour >= 4 && hour <= 10 ? 2.4 : 0
}
