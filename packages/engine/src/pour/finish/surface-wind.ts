import type { Source } from '../../working/source.ts'
import { known, unknown, type Worked } from '../../working/worked.ts'

/** Height of the evaporation formulas over the surface, m. */
export const SURFACE_HEIGHT = 0.5
/** Height of a weather station's wind where nobody says it, m; always listed as assumed. */
export const STATION_HEIGHT = 10
/** Roughness of open ground, m; always listed as assumed. */
export const ROUGHNESS = 0.03
/** Wind over a panel in a shed where none is measured, km/h: common practice is 3 to 5, the drier end is taken. */
export const SHED_WIND = 5

const PROFILE: Source = {
  standard: 'logarithmic wind profile',
  clause: 'neutral air over open ground',
  status: 'from memory',
}

export interface SurfaceWindInput {
  /** As read, km/h. */
  readonly wind: number
  /** Height of the instrument, m; above the roughness. */
  readonly height: number
}

/**
 * Wind half a metre over the surface, km/h, from one read higher up, by the logarithmic profile over open ground
 * (roughness 0.03 m). Buildings and stacks of panels change it: a reading on the spot outranks it.
 *
 * Unknown where the wind is below 0 or not finite, or the height is not above 0.1 m. Example: 20 km/h at 10 m: 9.69 km/h.
 */
export function surfaceWind({ wind, height }: SurfaceWindInput): Worked<number> {
  const gaps = [
    ...(wind >= 0 && Number.isFinite(wind) ? [] : ['wind: not below 0 km/h']),
    ...(height > 0.1 && Number.isFinite(height) ? [] : ['height: above 0.1 m']),
  ]
  if (gaps.length > 0) return unknown(...gaps)
  const value = windAtSurface(wind, height)
  return known(
    value,
    [
      {
        symbol: 'V',
        formula: 'v ln(z_s / z_0) / ln(z / z_0)',
        given: { v: wind, z_s: SURFACE_HEIGHT, z: height, z_0: ROUGHNESS },
        result: value,
        unit: 'km/h',
        source: PROFILE,
      },
    ],
    [{ field: 'roughness of the ground', value: ROUGHNESS, unit: 'm', why: 'open ground' }],
  )
}

/** The bare arithmetic of `surfaceWind`. */
export function windAtSurface(wind: number, height: number): number {
  return (wind * Math.log(SURFACE_HEIGHT / ROUGHNESS)) / Math.log(height / ROUGHNESS)
}
