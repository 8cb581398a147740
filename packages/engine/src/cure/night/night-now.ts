import { codeFamily } from '../../codes/index.ts'
import type { Check } from '../../working/check.ts'
import { type Assumed, known, type Step, type Worked } from '../../working/worked.ts'
import { nightFindings } from '../heat/findings.ts'
import { nightOf } from '../heat/night.ts'
import type { HeatRun } from '../heat/problem.ts'
import type { SeriesPoint } from '../heat/series.ts'
import type { Weather } from '../heat/weather.ts'
import { heatSteps } from '../heat/working.ts'
import { type AlongNight, alongNight } from './along-night.ts'
import { comparedLog, type LogCompared } from './compare-log.ts'
import { type NightCase, type NightCaseInput, nightCase } from './night-case.ts'

/** How far a forecast is taken to be out, K either way: common practice, no source. */
export const FORECAST_SPREAD = 3

export type NightCurves = Pick<HeatRun, 'times' | 'core' | 'top' | 'bottom' | 'coldest' | 'hottest'>

/** A panel's computed night. Hours from mixing, °C, K, MPa. */
export interface NightNow {
  readonly curves: NightCurves
  readonly air: readonly SeriesPoint[]
  /** From this hour on the air is forecast; null where all of it was logged. */
  readonly forecastFrom: number | null
  readonly hours: number
  readonly coldest: {
    readonly celsius: number
    readonly hour: number
    readonly place: 'top' | 'bottom' | 'inside'
  }
  readonly peak: { readonly celsius: number; readonly hour: number }
  readonly frost: number | null
  readonly cover: NightCase['cover']
  /** Hour from which the face stays within the limit to the air. */
  readonly coverOff: number | null
  /** Rows for the card of the cure: computed, advice, never a condition of a hold. */
  readonly checks: readonly Check[]
  readonly compared: readonly LogCompared[]
  readonly wanted: number | null
  /** As foretold, and with the air of the forecast colder and warmer; both null where nothing is forecast. */
  readonly strength: AlongNight
  readonly cold: AlongNight | null
  readonly warm: AlongNight | null
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
}

/** A panel's night from record, yard and weather; unknown as `nightCase` and `nightOf` say. @throws InputError where the yard gives an impossible number. */
export function nightNow(input: NightCaseInput): Worked<NightNow> {
  const made = nightCase(input)
  return made.known ? runNight(made.value) : made
}

/** The heavy part of `nightNow`: three runs through the thickness and the strength along each. */
export function runNight(of: NightCase): Worked<NightNow> {
  const night = nightOf(of.input)
  if (!night.known) return night
  const { problem, run } = night.value
  const forecastFrom =
    of.loggedTo !== null && of.loggedTo >= of.input.hours ? null : Math.max(of.loggedTo ?? 0, 0)
  const cold = forecastFrom === null ? null : runShifted(of, -FORECAST_SPREAD)
  const warm = forecastFrom === null ? null : runShifted(of, FORECAST_SPREAD)
  const findings = nightFindings({
    run,
    problem,
    family: codeFamily(of.family),
    limits: of.limits,
    mix: of.mix,
  })
  const working = heatSteps(problem, run)
  const assumed = [...of.assumed, ...(night.assumed ?? [])]
  return known(
    {
      curves: curvesOf(run),
      air: of.input.weather.air,
      forecastFrom,
      hours: of.input.hours,
      coldest: coldestOf(run),
      peak: run.peak,
      frost: run.frost,
      cover: of.cover,
      coverOff: findings.coverOff,
      checks: findings.checks.map((check) => advised(check, working, assumed)),
      compared: of.logs.flatMap((log) => comparedLog(log, run) ?? []),
      wanted: of.wanted,
      strength: strengthOf(of, run),
      cold: cold === null ? null : strengthOf(of, cold),
      warm: warm === null ? null : strengthOf(of, warm),
      working,
      assumed:
        forecastFrom === null
          ? assumed
          : [
              ...assumed,
              {
                field: 'forecast',
                value: `± ${FORECAST_SPREAD}`,
                unit: 'K',
                why: 'how far the air of the forecast may be out; common practice, no source',
              },
            ],
    },
    working,
    assumed,
  )
}

/** The numbers behind the run, and what was assumed for it, stand once: with the first of its rows. */
function advised(check: Check, working: readonly Step[], assumed: readonly Assumed[]): Check {
  if (check.id !== 'night-peak') return check
  return {
    ...check,
    working: [...working, ...check.working],
    assumed: [...(check.assumed ?? []), ...assumed],
  }
}

function curvesOf({ times, core, top, bottom, coldest, hottest }: HeatRun): NightCurves {
  return { times, core, top, bottom, coldest, hottest }
}

/** By the mix's curve, lowered by results of the pour and never raised, as the earliest first lift is. */
function strengthOf({ mix, logs, wanted, results }: NightCase, run: HeatRun): AlongNight {
  const alone = alongNight({ mix, logs, wanted, run })
  if (results.length === 0) return alone
  const told = alongNight({ mix, logs, wanted, run, cylinders: results })
  const lowered = told.curve.length > 0 && metLast(told) > metLast(alone)
  return lowered ? told : alone
}

function metLast({ hour, hourLow }: AlongNight): number {
  return hourLow ?? hour ?? Number.POSITIVE_INFINITY
}

/** Where the lowest temperature of the run is: the face that has it, to a hundredth of a kelvin at the time next to it. */
function coldestOf(run: HeatRun): NightNow['coldest'] {
  const { celsius, hour } = run.least
  const near = run.times.reduce(
    (best, time, at) => (Math.abs(time - hour) < Math.abs((run.times[best] ?? 0) - hour) ? at : best),
    0,
  )
  const [top = celsius, bottom = celsius, low = celsius] = [
    run.top[near],
    run.bottom[near],
    run.coldest[near],
  ]
  const place = top <= low + 0.01 ? 'top' : bottom <= low + 0.01 ? 'bottom' : 'inside'
  return { celsius, hour, place }
}

function runShifted(of: NightCase, kelvin: number): HeatRun | null {
  const night = nightOf({ ...of.input, weather: shifted(of.input.weather, of.loggedTo ?? -1, kelvin) })
  return night.known ? night.value.run : null
}

/** The same weather with air and sky after an hour warmer by so many kelvin. */
function shifted(weather: Weather, from: number, kelvin: number): Weather {
  const move = (points: readonly SeriesPoint[]): SeriesPoint[] =>
    points.map(([hour, celsius]) => [hour, hour > from + 1e-9 ? celsius + kelvin : celsius])
  return { ...weather, air: move(weather.air), sky: move(weather.sky) }
}
