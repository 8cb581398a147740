import type { Ring } from '../../panel/point.ts'
import type { Stretch } from './lap-places.ts'

export interface OpeningZonesInput {
  readonly openings: readonly Ring[]
  readonly direction: 'x' | 'y'
  /** Across the bars, mm. */
  readonly at: number
  readonly lap: number
}

/**
 * Stretches of a row that laps keep clear of: the openings that lie within one lap of it across the bars, each with half a lap more
 * at either end along them, where the steel beside an opening is stressed most. Common practice, no source.
 */
export function openingZones({ openings, direction, at, lap }: OpeningZonesInput): Stretch[] {
  const [along, across] = direction === 'x' ? ([0, 1] as const) : ([1, 0] as const)
  const zones: Stretch[] = []
  for (const ring of openings) {
    let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
    for (let i = 0; i < ring.length; i += 1) {
      const a = ring[i]
      const b = ring[i + 1 === ring.length ? 0 : i + 1]
      if (a === undefined || b === undefined) continue
      // Part of the edge within the strip of one lap to both sides.
      const rise = b[across] - a[across]
      const bounds = [at - lap, at + lap].map((edge) => (rise === 0 ? Number.NaN : (edge - a[across]) / rise))
      const inStrip = Math.abs(a[across] - at) <= lap
      if (rise === 0 && !inStrip) continue
      const [first, last] =
        rise === 0 ? [0, 1] : [Math.max(0, Math.min(...bounds)), Math.min(1, Math.max(...bounds))]
      if (first > last) continue
      for (const part of [first, last]) {
        const place = a[along] + part * (b[along] - a[along])
        low = Math.min(low, place)
        high = Math.max(high, place)
      }
    }
    if (high >= low) zones.push([low - lap / 2, high + lap / 2])
  }
  return zones
}
