import type { Assumed } from '../../working/worked.ts'
import { known, unknown, type Worked } from '../../working/worked.ts'
import type { Mix } from '../../yard/yard.ts'
import { parseHeatCase } from './heat-case.ts'
import { filmAt, radiativeFilm } from './outside.ts'
import type { HeatProblem, HeatRun } from './problem.ts'
import { runHeat } from './run.ts'
import { type SeriesPoint, valueAt } from './series.ts'
import { type Weather, weatherGaps } from './weather.ts'

/** A layer of mould or cover: mm, W/mK, kJ/m³K; taken off at the hour `until`. */
interface NightLayer {
  readonly thickness: number
  readonly conductivity: number
  readonly heatCapacity: number
  readonly initial?: number
  readonly until?: number
}

export interface NightInput {
  /** mm */
  readonly thickness: number
  readonly mix: Pick<Mix, 'mark' | 'heat'> | null
  /** Concrete as placed, °C; null where nobody measured it. */
  readonly initial: number | null
  /** Over the panel: film in W/m²K where the wind is not known; covers as resistance (m²K/W) from an hour on. */
  readonly top: {
    readonly film?: number
    readonly covers: readonly SeriesPoint[]
    readonly layers?: readonly NightLayer[]
    /** Share of the sun that is taken in, and emissivity to the sky; where missing, sun and sky are left out and said. */
    readonly absorptivity?: number
    readonly emissivity?: number
  }
  /** Under the panel: a film and what lies between, or a bed held at a temperature in time, °C; `gain` heats it, W/m². */
  readonly bottom: {
    readonly film?: number
    readonly temperature?: readonly SeriesPoint[]
    readonly resistance?: number
    readonly gain?: readonly SeriesPoint[]
    readonly layers?: readonly NightLayer[]
  }
  readonly weather: Weather
  /** Hours from mixing to the end, and between values written down. */
  readonly hours: number
  readonly every?: number
}

export interface Night {
  readonly problem: HeatProblem
  readonly run: HeatRun
}

const EVERY = 0.25

/** What the heat of a mix needs, each missing part named. */
export function concreteOfMix(mix: Pick<Mix, 'mark' | 'heat'> | null): Worked<NonNullable<Mix['heat']>> {
  if (mix === null) return unknown('mix: not known')
  if (mix.heat === undefined)
    return unknown(
      `mix ${mix.mark}: heat is not given (binder, heat, ultimate, tau, beta, activation, reference, conductivity, heatCapacity)`,
    )
  return known(mix.heat, [])
}

/**
 * A panel's night by its mix, mould, covers and weather: the curves of `runHeat`.
 *
 * Unknown, with the field named, where the mix has no heat, the weather does not cover the run or has a hole in it, or a face lacks
 * its film. @throws InputError where a number is impossible.
 */
export function nightOf(input: NightInput): Worked<Night> {
  const { mix, initial, top, bottom, weather, hours } = input
  const concrete = concreteOfMix(mix)
  const windy = top.film === undefined
  const [sunny, skied] = [weather.sun.length > 0, weather.sky.length > 0]
  const gaps = [
    ...(concrete.known ? [] : concrete.gaps),
    ...(initial === null ? ['initial: temperature of the concrete as placed'] : []),
    ...weatherGaps(weather, 'air', hours),
    ...(windy ? weatherGaps(weather, 'wind', hours).map((gap) => `${gap} (or top.film)`) : []),
    ...(sunny && top.absorptivity !== undefined ? weatherGaps(weather, 'sun', hours) : []),
    ...(skied && top.emissivity !== undefined ? weatherGaps(weather, 'sky', hours) : []),
    ...(bottom.film === undefined && bottom.temperature === undefined
      ? ['bottom.film: film under the mould, or the temperature of the bed']
      : []),
  ]
  if (gaps.length > 0 || !concrete.known) return unknown(...gaps)
  const { problem, assumed } = parseHeatCase({
    thickness: input.thickness,
    initial,
    concrete: concrete.value,
    top: {
      film: windy ? windFilm(weather, top.emissivity ?? 0) : top.film,
      ...(top.covers.length > 0 ? { resistance: top.covers } : {}),
      ...(sunny && top.absorptivity !== undefined
        ? { sun: weather.sun, absorptivity: top.absorptivity }
        : {}),
      ...(skied && top.emissivity !== undefined ? { sky: weather.sky, emissivity: top.emissivity } : {}),
      ...(top.layers === undefined ? {} : { layers: top.layers }),
    },
    bottom,
    air: weather.air,
    hours,
    every: input.every ?? EVERY,
  })
  return known(
    { problem, run: runHeat(problem) },
    [],
    [
      ...assumed,
      ...leftOut('sun', sunny, top.absorptivity, 'no absorptivity of the top face is given'),
      ...leftOut('sky', skied, top.emissivity, 'no emissivity of the top face is given'),
      ...(windy ? [filmAssumed(top.emissivity)] : []),
    ],
  )
}

/** Film from wind, and from radiation at the temperature of the air where the face's emissivity is known. */
export function windFilm(
  { wind, air }: Weather,
  emissivity: number,
): { readonly linear: readonly SeriesPoint[] } {
  const celsius = (hour: number): number => valueAt({ form: 'linear', points: air }, hour)
  return {
    linear: wind.map(([hour, speed]) => [hour, filmAt(speed) + radiativeFilm(celsius(hour), emissivity)]),
  }
}

/** What is said of a film that the wind gave. */
export function filmAssumed(emissivity: unknown): Assumed {
  const why = 'from the wind (McAdams 1954, from memory)'
  return {
    field: 'top.film',
    value:
      emissivity === undefined
        ? '5.6 + 3.95 v, from 5 m/s 7.6 v^0.78'
        : '5.6 + 3.95 v, from 5 m/s 7.6 v^0.78, + 4 ε σ T³',
    unit: 'W/m²K',
    why: emissivity === undefined ? `${why}; without radiation, no emissivity of the top face is given` : why,
  }
}

function leftOut(field: string, has: boolean, share: number | undefined, why: string): Assumed[] {
  return has && share === undefined
    ? [{ field: `weather.${field}`, value: 0, unit: 'W/m²', why: `left out: ${why}` }]
    : []
}
