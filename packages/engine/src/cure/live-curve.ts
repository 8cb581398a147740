import { notAboveZero } from '../working/guard.ts'
import { type Assumed, known, unknown, type Worked } from '../working/worked.ts'
import type { Mix } from '../yard/yard.ts'
import { type AgeMethod, ageRate } from './age-method.ts'
import type { CurvePoint } from './cure-plan.ts'
import { ageOf } from './equivalent-age.ts'
import { chanceMet } from './gain/chance-met.ts'
import { type PourModel, pourModel } from './gain/pour-model.ts'
import { strengthPrior } from './gain/prior.ts'
import type { StrengthPrior } from './gain/strength-prior.ts'
import { hourMet } from './hour-met.ts'
import { type Reading, readingGaps, readingsUntil } from './readings.ts'
import { mixMethod } from './strength-from-log.ts'
import { type StrengthModel, strengthModel } from './strength-model.ts'

/** A result of the pour itself. */
export interface Cylinder {
  /** Hours from mixing to the test. */
  readonly hour: number
  /** MPa */
  readonly strength: number
  /** Temperature it was cured at, °C; along the log of the panel where not given. */
  readonly celsius?: number
}

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
  /** Results of this pour: they bring what was thought of the mix up to date. */
  readonly cylinders?: readonly Cylinder[]
  /** What open tests say of the mix by its proportions, where they are known. */
  readonly open?: StrengthPrior
}

/** How a pour goes on from its own log. Null and `unknown` where not known. */
export interface LiveCurve {
  /** Hour from mixing at which the wanted strength is met, expected and at the low edge: past or to come. */
  readonly hour: number | null
  readonly hourLow: number | null
  /** Each hour from mixing to the last: along the log, then at one temperature. */
  readonly curve: readonly CurvePoint[]
  /** Hours from mixing, and the probability that one test then reaches the wanted strength; empty where it is not known. */
  readonly chance: readonly (readonly [hour: number, probability: number])[]
  /** In words what the curve rests on, where it is more than the mix's own curve. */
  readonly restsOn: string | null
  /** Places of the cylinders that are too high to fit, and count for less. */
  readonly slipped: readonly number[]
  /** Places of those that do not fit and count all the same, with a wider band. */
  readonly kept: readonly number[]
  readonly unknown: readonly string[]
  readonly assumed: readonly Assumed[]
}

/** An older cylinder, a hundred years, is a slip of the keys, days; far beyond it the law of the curve is no number. */
const OLDEST = 36_525

/** Longest curve, h. */
const LONGEST = 672

/**
 * Strength curve of a pour along its logged temperatures and on from there: what replaces the planned curve once there is
 * a log. Source and rounding as in `strengthNow` and `hourMet`.
 *
 * Unknown with fewer than two readings, or a mix that has neither curve nor tests.
 */
export function liveCurve(input: LiveCurveInput): LiveCurve {
  const { mix, readings, wanted, celsius, until, cylinders = [] } = input
  const { method, assumed } = mixMethod(mix)
  const last = readings.at(-1)
  const after = celsius ?? last?.[1]
  const faults = [
    ...readingGaps(readings),
    ...(after !== undefined && Number.isFinite(after) ? [] : ['celsius: a number']),
    ...notAboveZero({ until }),
    ...cylinders.flatMap(({ hour, strength }, at) =>
      notAboveZero({ hour, strength }).map((gap) => `cylinders[${at}].${gap}`),
    ),
  ]
  const model = faults.length > 0 ? unknown(...faults) : modelNow(input, method)
  if (!model.known || last === undefined || after === undefined)
    return { ...NOTHING, unknown: model.known ? faults : model.gaps, assumed }
  const ageAt = (hour: number): number => ageAlong(readings, hour, method, after)
  const curve: CurvePoint[] = []
  const chance: [number, number][] = []
  for (let hour = 0; hour <= Math.min(until, LONGEST); hour += 1) {
    const age = ageAt(hour)
    const strength = model.value.strength(age)
    if (strength === null) continue
    const band = model.value.band(age)
    curve.push([hour, strength, band?.low ?? null, band?.high ?? null])
    const probability = wanted === null ? null : chanceMet(model.value, age, wanted)
    if (probability !== null) chance.push([hour, probability])
  }
  const met = (edge: 'expected' | 'low') =>
    wanted === null ? null : hourMet({ model: model.value, method, wanted, celsius: after, readings, edge })
  const [hour, hourLow] = [met('expected'), met('low')]
  const gaps = [hour, hourLow].flatMap((found) => (found === null || found.known ? [] : found.gaps))
  const pour = 'restsOn' in model.value ? model.value : null
  return {
    hour: hour?.known ? hour.value : null,
    hourLow: hourLow?.known ? hourLow.value : null,
    curve,
    chance,
    restsOn: pour?.restsOn ?? null,
    slipped: pour?.slipped ?? [],
    kept: pour?.kept ?? [],
    unknown: wanted === null ? ['wanted: the strength at the first lift'] : [...new Set(gaps)],
    assumed: [
      ...assumed,
      ...(celsius === undefined ? [afterAssumed(after)] : []),
      ...(cylinders.some((each) => each.celsius === undefined) ? [CYLINDERS_ASSUMED] : []),
    ],
  }
}

const NOTHING = { hour: null, hourLow: null, curve: [], chance: [], restsOn: null, slipped: [], kept: [] }

const CYLINDERS_ASSUMED: Assumed = {
  field: 'cylinders[].celsius',
  value: 'as the panel',
  unit: '°C',
  why: 'a cylinder without a temperature of its own is taken as cured along the log of the panel',
}

/** The mix's own curve, or with cylinders of the pour, or with nothing but open tests, the law brought up to date by them. */
function modelNow(
  { mix, readings, cylinders = [], open, celsius }: LiveCurveInput,
  method: AgeMethod,
): Worked<StrengthModel | PourModel> {
  const own = mix.curve !== undefined || mix.tests !== undefined
  if (own && cylinders.length === 0) return strengthModel({ source: mix, method })
  if (!own && cylinders.length === 0 && open === undefined) return strengthModel({ source: mix, method })
  const prior = strengthPrior({ source: mix, method, ...(open === undefined ? {} : { open }) })
  if (!prior.known) return prior
  const after = celsius ?? readings.at(-1)?.[1] ?? Number.NaN
  const aged = cylinders.map(({ hour, strength, celsius: own }) => ({
    days: (own === undefined ? ageAlong(readings, hour, method, after) : hour * ageRate(method, own)) / 24,
    strength,
  }))
  const bad = aged.findIndex(({ days }) => !(days > 0 && days <= OLDEST))
  if (bad >= 0) return unknown(`cylinders[${bad}]: no age is counted at its hour and temperature`)
  return known(pourModel(prior.value, aged), [])
}

/** Equivalent age at an hour, h: along the log, then at one temperature. */
function ageAlong(readings: readonly Reading[], hour: number, method: AgeMethod, after: number): number {
  const last = readings.at(-1)
  if (last === undefined || hour < last[0]) {
    const part = readingsUntil(readings, hour)
    return part.length > 1 ? ageOf(part, method) : 0
  }
  return ageOf(readings, method) + (hour - last[0]) * ageRate(method, after)
}

function afterAssumed(celsius: number): Assumed {
  return {
    field: 'cure.temperature',
    value: celsius,
    unit: '°C',
    why: 'after the last reading: as the last reading, until more is logged',
  }
}
