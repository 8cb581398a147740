import type { FamilyId } from '../../codes/family.ts'
import { codeFamily } from '../../codes/index.ts'
import type { Plan } from '../../plan.ts'
import { concreteLogs } from '../../steps/curve-low.ts'
import type { EnteredLimit, PanelFacts, YardFacts } from '../../steps/facts.ts'
import { CUBE_RATIO_LIMIT, pourResults } from '../../steps/pour-results.ts'
import { type Assumed, known, unknown, type Worked } from '../../working/worked.ts'
import type { Mix } from '../../yard/yard.ts'
import type { NightInput } from '../heat/night.ts'
import { skyOfAir } from '../heat/outside.ts'
import type { SeriesPoint } from '../heat/series.ts'
import { LONGEST_STRETCH, type Weather, weatherGaps } from '../heat/weather.ts'
import { weatherOfPour, type YardWeather } from '../heat/yard-weather.ts'
import type { Cylinder } from '../live-curve.ts'
import type { Reading } from '../readings.ts'
import { type CoverTimes, coverTimes } from './cover-times.ts'
import { placedTemperature } from './placed-temperature.ts'
import { SHELTERED_FILM, underBed } from './under-bed.ts'

/** Everything that a panel's night is computed from, in hours from mixing: plain data that goes to a worker and names the answer. */
export interface NightCase {
  readonly input: NightInput
  readonly mix: Mix
  readonly family: FamilyId
  readonly limits: Readonly<Record<string, EnteredLimit>>
  /** Strength wanted at the first lift, MPa; null where it is not known. */
  readonly wanted: number | null
  readonly cover: Pick<CoverTimes, 'cover' | 'on' | 'off'>
  /** Hours from mixing to now, whole quarters. */
  readonly age: number
  /** Hour of the last logged weather: after it all is forecast. Null where nothing was logged. */
  readonly loggedTo: number | null
  /** What was logged in the concrete. */
  readonly logs: readonly { readonly channel: string; readonly readings: readonly Reading[] }[]
  /** Results of this pour as cylinders: they may lower the curve of the mix, never raise it. */
  readonly results: readonly Cylinder[]
  readonly assumed: readonly Assumed[]
}

export interface NightCaseInput {
  readonly plan: Pick<Plan, 'family' | 'thickness' | 'cure' | 'pour'>
  readonly facts: PanelFacts
  readonly yard: Pick<YardFacts, 'yard' | 'limits'>
  /** As logged and as foretold, each by time. */
  readonly weather: readonly YardWeather[]
  readonly forecast: readonly YardWeather[]
  /** Strength that the first lift wants, MPa, where it is known better than by the plan. */
  readonly wanted?: number | null
  /** UTC */
  readonly now: string
}

const HOUR = 3_600_000
const EVERY = 0.25
/** Shortest and longest run, h, and how far it goes beyond the planned hour of the strength. */
const SHORTEST = 24
const LONGEST = 168
const BEYOND = 1.5
/** A run that the weather ends before this says nothing, h. */
const TOO_SHORT = 1
/** Film over the panel where no wind is known, W/m²K: sheltered 10, 25 at 5 m/s, from memory. */
const WINDLESS_FILM = 15
/** Emissivity of concrete and most sheets, and share of the sun that grey concrete takes in; from memory. */
const EMISSIVITY = 0.9
const ABSORPTIVITY = 0.6

/**
 * The night of a panel that was cast, put together from record, yard and weather. It runs as far as the weather goes, and at most to the
 * first lift.
 *
 * Unknown, with the gap named, where the panel is not cast, its mix or the temperature as placed is not known, a heated bed is not
 * described, or no weather covers the first hours. Everything that was not given and not left unknown is in `assumed`.
 */
export function nightCase(given: NightCaseInput): Worked<NightCase> {
  const { plan, facts, yard, now } = given
  const { cast } = facts
  if (cast === null) return unknown('cast: the panel is not cast yet')
  const mixed = Date.parse(cast.at)
  const mix = yard.yard?.mixes?.find(({ mark }) => mark === cast.mix)
  const age = Math.max(0, Math.floor((Date.parse(now) - mixed) / HOUR / EVERY) * EVERY)
  const initial = placedTemperature(facts)
  const bed = yard.yard?.beds?.find(({ mark }) => mark === cast.bed)
  const until = runEnd(given, age)
  const { weather, loggedTo } = weatherOfPour({
    logged: given.weather,
    forecast: given.forecast,
    mixed: cast.at,
    until,
  })
  const reach = reachOf(weather, until)
  const bottom = underBed({ mark: cast.bed, bed, hours: reach.hours })
  const gaps = [
    ...(mix === undefined ? [`mix: the yard lists no ${cast.mix ?? 'mix of this pour'}`] : []),
    ...(initial.known ? [] : initial.gaps),
    ...(bottom.known ? [] : bottom.gaps),
    ...reach.gaps,
  ]
  if (gaps.length > 0 || mix === undefined || !initial.known || !bottom.known) return unknown(...gaps)
  const covering = coverTimes({
    facts,
    yard: yard.yard,
    finished: plan.pour.finish?.closes ?? null,
    age,
  })
  const results = pourResults({
    specimens: facts.specimens,
    cubeRatio: yard.limits[CUBE_RATIO_LIMIT] ?? null,
    standardCuring: codeFamily(plan.family).cure.standardCuring,
  })
  const top = topOf({ weather, hours: reach.hours, roofed: bed?.roofed, covering })
  return known(
    {
      input: {
        thickness: plan.thickness,
        mix: { mark: mix.mark, ...(mix.heat === undefined ? {} : { heat: mix.heat }) },
        initial: initial.value,
        top: top.face,
        bottom: bottom.value,
        weather: top.weather,
        hours: reach.hours,
        every: EVERY,
      },
      mix,
      family: plan.family,
      limits: yard.limits,
      wanted: given.wanted ?? plan.cure.wanted?.strength ?? null,
      cover: { cover: covering.cover, on: covering.on, off: covering.off },
      age,
      loggedTo,
      logs: concreteLogs(facts.temperatures).map(({ channel, readings }) => ({ channel, readings })),
      results: results.cylinders,
      assumed: [
        ...results.assumed,
        ...voidsLeftOut(facts),
        ...reach.assumed,
        ...(initial.assumed ?? []),
        ...covering.assumed,
        ...top.assumed,
        ...(bottom.assumed ?? []),
      ],
    },
    [],
  )
}

/** A void thins the concrete and keeps its heat in: neither is computed, and that is said. */
function voidsLeftOut({ drawing }: PanelFacts): Assumed[] {
  const count = (drawing?.voids?.length ?? 0) + (drawing?.ducts?.length ?? 0)
  const why = 'void formers and ducts are left out: over and under them it is otherwise'
  return count === 0 ? [] : [{ field: 'thickness', value: 'solid', unit: '', why }]
}

/** To the opened hold of the first lift; else well beyond the planned hour of the strength, and not less than half a day from now. */
function runEnd({ plan, facts, now }: NightCaseInput, age: number): number {
  const mixed = Date.parse(facts.cast?.at ?? now)
  const stripped = facts.steps.strip.opening
  if (stripped !== null) {
    const hour = (Date.parse(stripped.seen) - mixed) / HOUR
    if (hour > TOO_SHORT) return Math.min(Math.ceil(hour / EVERY) * EVERY, LONGEST)
  }
  const planned = plan.cure.hourLow ?? plan.cure.hour ?? SHORTEST
  return Math.min(Math.ceil(Math.max(SHORTEST, BEYOND * planned, age + 12) / EVERY) * EVERY, LONGEST)
}

/** How far the air is known without a hole, from mixing on. */
function reachOf(
  { air, gaps }: Weather,
  until: number,
): { readonly hours: number; readonly gaps: readonly string[]; readonly assumed: readonly Assumed[] } {
  const [first, last] = [air[0]?.[0], air.at(-1)?.[0]]
  if (first === undefined || last === undefined)
    return { hours: until, gaps: ['weather.air: no log and no forecast of these hours'], assumed: [] }
  if (first > 0) {
    const from = Math.round(first * 10) / 10
    return { hours: until, gaps: [`weather.air: nothing before ${from} h from mixing`], assumed: [] }
  }
  const hole = gaps.find(({ column, to }) => column === 'air' && to > 0)
  const end = Math.min(until, last, hole?.from ?? Number.POSITIVE_INFINITY)
  const hours = Math.floor(end / EVERY + 1e-9) * EVERY
  if (hours < TOO_SHORT)
    return {
      hours: until,
      gaps: [
        hole === undefined
          ? `weather.air: nothing after ${Math.round(last * 10) / 10} h from mixing`
          : `weather.air: more than ${LONGEST_STRETCH} h without a reading, from ${Math.round(hole.from * 10) / 10} h from mixing`,
      ],
      assumed: [],
    }
  if (hours >= until) return { hours, gaps: [], assumed: [] }
  const why = hole === undefined ? 'the weather ends there' : 'the weather has a hole there'
  return {
    hours,
    gaps: [],
    assumed: [{ field: 'hours', value: hours, unit: 'h', why: `${why}: nothing is said after it` }],
  }
}

interface TopInput {
  readonly weather: Weather
  readonly hours: number
  readonly roofed: boolean | undefined
  readonly covering: CoverTimes
}

function topOf({ weather, hours, roofed, covering }: TopInput): {
  readonly face: NightInput['top']
  readonly weather: Weather
  readonly assumed: readonly Assumed[]
} {
  const covers = coverPoints(covering)
  if (roofed === true) {
    const why = 'under a roof: still air over the panel, from memory'
    return {
      face: { film: SHELTERED_FILM, covers },
      weather: { ...weather, sun: [], sky: [], wind: [] },
      assumed: [{ field: 'top.film', value: SHELTERED_FILM, unit: 'W/m²K', why }],
    }
  }
  const assumed: Assumed[] = []
  const windless = weatherGaps(weather, 'wind', hours).length > 0
  if (windless) {
    const why = 'the weather gives no wind for the whole of it; from memory'
    assumed.push({ field: 'top.film', value: WINDLESS_FILM, unit: 'W/m²K', why })
  }
  const sunless = weatherGaps(weather, 'sun', hours).length > 0
  if (sunless)
    assumed.push({
      field: 'weather.sun',
      value: 0,
      unit: 'W/m²',
      why: 'not given for the whole of it: left out',
    })
  const skyless = weatherGaps(weather, 'sky', hours).length > 0
  assumed.push({
    field: 'top.emissivity',
    value: EMISSIVITY,
    unit: '',
    why: 'concrete and sheets, from memory',
  })
  if (skyless)
    assumed.push({
      field: 'weather.sky',
      value: 'clear',
      unit: '',
      why: 'not given: a clear sky all the time, the coldest (Swinbank 1963, from memory)',
    })
  if (!sunless)
    assumed.push({
      field: 'top.absorptivity',
      value: ABSORPTIVITY,
      unit: '',
      why: 'grey concrete, from memory; a cover may take in more or less',
    })
  return {
    face: {
      ...(windless ? { film: WINDLESS_FILM } : {}),
      covers,
      emissivity: EMISSIVITY,
      ...(sunless ? {} : { absorptivity: ABSORPTIVITY }),
    },
    weather: {
      ...weather,
      sun: sunless ? [] : weather.sun,
      sky: skyless ? weather.air.flatMap(clearSky) : weather.sky,
      // What stands in for the sky has none of its holes.
      gaps: weather.gaps.filter(({ column }) => !(skyless && column === 'sky')),
    },
    assumed,
  }
}

function clearSky([hour, air]: SeriesPoint): SeriesPoint[] {
  const sky = skyOfAir(air)
  return sky.known ? [[hour, sky.value]] : []
}

/** m²K/W from an hour on. */
export function coverPoints({
  cover,
  on,
  off,
}: Pick<CoverTimes, 'cover' | 'on' | 'off'>): readonly SeriesPoint[] {
  if (cover === null || on === null || !(cover.resistance > 0)) return []
  const start: SeriesPoint[] = on.hour > 0 ? [[0, 0]] : []
  const end: SeriesPoint[] = off === null ? [] : [[off.hour, 0]]
  return [...start, [Math.max(on.hour, 0), cover.resistance], ...end]
}
