import { foundText, InputError } from '../../working/issue.ts'
import type { Assumed } from '../../working/worked.ts'
import { filmAssumed, windFilm } from './night.ts'
import { type Weather, type WeatherColumn, weatherGaps } from './weather.ts'

export interface WeatheredCase {
  /** The case as `parseHeatCase` reads it. */
  readonly value: unknown
  /** Stretches without readings that the run needs; empty where the weather carries it. */
  readonly gaps: readonly string[]
  readonly assumed: readonly Assumed[]
}

/**
 * Puts weather into a case that has no air of its own: its air; for the top face the film from the wind where none is given, the sun
 * where an absorptivity, and the sky where an emissivity is given.
 *
 * @throws InputError where the case has what the weather would give.
 */
export function weatheredCase(value: unknown, weather: Weather, from = ''): WeatheredCase {
  if (!isRecord(value) || !isRecord(value.top)) return { value, gaps: [], assumed: [] }
  const { top } = value
  const twice = [
    ...(value.air === undefined ? [] : [['air', value.air]]),
    ...(top.sun === undefined || weather.sun.length === 0 ? [] : [['top.sun', top.sun]]),
    ...(top.sky === undefined || weather.sky.length === 0 ? [] : [['top.sky', top.sky]]),
  ] as [string, unknown][]
  if (twice.length > 0)
    throw new InputError(
      twice.map(([path, found]) => ({
        path,
        found: foundText(found),
        expected: 'none, where a weather file gives it',
      })),
      from,
    )
  const windy = top.film === undefined && top.temperature === undefined && weather.wind.length > 0
  // An absorptivity asks for the sun: where the file has none that is a gap, not a night without sun.
  const sunny = top.absorptivity !== undefined && top.sun === undefined
  const skied = weather.sky.length > 0 && top.emissivity !== undefined
  const needed: WeatherColumn[] = [
    'air',
    ...(windy ? ['wind' as const] : []),
    ...(sunny ? ['sun' as const] : []),
    ...(skied ? ['sky' as const] : []),
  ]
  const hours = typeof value.hours === 'number' ? value.hours : 0
  const emissivity = typeof top.emissivity === 'number' ? top.emissivity : 0
  // Without a sky the emissivity serves the film alone.
  const { emissivity: _, ...bare } = top
  return {
    value: {
      ...value,
      air: weather.air,
      top: {
        ...(windy && weather.sky.length === 0 && top.sky === undefined ? bare : top),
        ...(windy ? { film: windFilm(weather, emissivity) } : {}),
        ...(sunny && weather.sun.length > 0 ? { sun: weather.sun } : {}),
        ...(skied ? { sky: weather.sky } : {}),
      },
    },
    gaps: needed.flatMap((column) => weatherGaps(weather, column, hours)),
    assumed: windy ? [filmAssumed(top.emissivity)] : [],
  }
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
