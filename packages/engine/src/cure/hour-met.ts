import { notAboveZero, notFinite } from '../working/guard.ts'
import { GEOMETRY } from '../working/source.ts'
import { known, type Step, unknown, type Worked } from '../working/worked.ts'
import { type AgeMethod, ageRate } from './age-method.ts'
import { intervalAge } from './equivalent-age.ts'
import { intervals, type Reading, readingGaps } from './readings.ts'
import { ageAtStrength, ageStep } from './strength-curve.ts'
import { BAND_DEVIATE, type StrengthModel } from './strength-model.ts'

export interface HourMetInput {
  readonly model: StrengthModel
  readonly method: AgeMethod
  /** Strength wanted, MPa. */
  readonly wanted: number
  /** Concrete temperature where no reading is, °C: from mixing, or from the last reading on. */
  readonly celsius: number
  /** What was logged so far, hours from mixing; empty for a plan. */
  readonly readings?: readonly Reading[]
  /** `expected`: the mean curve; `low`: the low edge of the band. */
  readonly edge: 'expected' | 'low'
}

/**
 * Hour from mixing at which a wanted strength is met. Along the logged temperatures as far as they go, and at one
 * temperature from there.
 *
 * Unknown where the mix never reaches it, has no band for the low edge, or concrete of that temperature gains nothing.
 * Example: 15 MPa with `S = 55 k (t − 4) / (1 + k (t − 4))`, k 0.036 /h at its reference: 14.42 h.
 */
export function hourMet(input: HourMetInput): Worked<number> {
  const { wanted, celsius, readings = [], method } = input
  const gaps = [
    ...notAboveZero({ wanted }),
    ...notFinite({ celsius }),
    ...(readings.length > 0 ? readingGaps(readings) : []),
  ]
  if (gaps.length > 0) return unknown(...gaps)
  const age = ageMet(input)
  if (!age.known) return age
  const hour = hourAtAge({ age: age.value, readings, celsius, method })
  if (!hour.known) return hour
  return known(hour.value, [...age.working, ...hour.working])
}

/** Equivalent age at which a wanted strength is met, h. */
function ageMet({ model, wanted, edge }: HourMetInput): Worked<number> {
  if (edge === 'low' && model.bandGaps.length > 0) return unknown(...model.bandGaps)
  if (edge === 'low' && model.share === null) return searched(model, wanted, 'low')
  if (model.curve === null || Number.isFinite(model.to)) return searched(model, wanted, edge)
  const share = edge === 'low' ? 1 - BAND_DEVIATE * (model.share ?? 0) : 1
  if (!(share > 0)) return unknown('scatter: so great that the low edge stays at 0')
  const strength = wanted / share
  const age = ageAtStrength(model.curve, strength)
  if (age === null) return unknown(`strength: the mix does not reach ${wanted} MPa at the ${edge} edge`)
  const raised: Step[] =
    edge === 'low'
      ? [
          {
            symbol: 'S',
            formula: 'w / (1 − z v)',
            given: { w: wanted, z: BAND_DEVIATE, v: model.share ?? 0 },
            result: strength,
            unit: 'MPa',
            source: GEOMETRY,
            note: 'mean at which the low edge is as wanted',
          },
        ]
      : []
  return known(age, [...raised, ageStep(model.curve, strength, age)])
}

const TRIALS = 400

/** First age between those of the tests at which the curve, or its low edge, is as wanted. */
function searched(model: StrengthModel, wanted: number, edge: 'expected' | 'low'): Worked<number> {
  const at = (age: number) => (edge === 'low' ? model.band(age)?.low : model.strength(age)) ?? 0
  const ages = Array.from(
    { length: TRIALS + 1 },
    (_, i) => model.from * (model.to / model.from) ** (i / TRIALS),
  )
  const first = ages.findIndex((age) => at(age) >= wanted)
  if (first < 0)
    return unknown(`strength: not ${wanted} MPa within the ages of the tests, ${model.from} to ${model.to} h`)
  let [early, late] = [ages[Math.max(0, first - 1)] ?? model.from, ages[first] ?? model.to]
  for (let i = 0; i < 60 && first > 0; i += 1) {
    const middle = (early + late) / 2
    if (at(middle) >= wanted) late = middle
    else early = middle
  }
  return known(late, [
    {
      symbol: 'te',
      formula: `first age at which the ${edge === 'low' ? 'low edge' : 'curve'} is as wanted`,
      given: { S: wanted },
      result: late,
      unit: 'h',
      source: GEOMETRY,
      by: 'search',
      note: first === 0 ? 'reached before the first test' : 'bisection between the ages of the tests',
    },
  ])
}

interface HourAtAgeInput {
  readonly age: number
  readonly readings: readonly Reading[]
  readonly celsius: number
  readonly method: AgeMethod
}

/** Hour from mixing at which the age is reached, along the log and beyond it. */
function hourAtAge({ age, readings, celsius, method }: HourAtAgeInput): Worked<number> {
  let gained = 0
  for (const [from, to] of intervals(readings)) {
    const more = intervalAge([from, to], method)
    if (Number.isNaN(more)) return unknown('readings: a temperature outside the table of the method')
    if (gained + more >= age) {
      const hour = within([from, to], age - gained, method)
      return known(hour, [
        {
          symbol: 't',
          formula: 'hour in the log at which the age is reached',
          given: { te: age },
          result: hour,
          unit: 'h',
          source: GEOMETRY,
          by: 'search',
        },
      ])
    }
    gained += more
  }
  const rate = ageRate(method, celsius)
  if (!(rate > 0)) return unknown(`temperature: at ${celsius} °C the method counts no age`)
  const start = readings.at(-1)?.[0] ?? 0
  const hour = start + (age - gained) / rate
  return known(hour, [
    {
      symbol: 't',
      formula: 'ts + (te − ts,e) / r',
      given: { ts: start, te: age, 'ts,e': gained, r: rate },
      result: hour,
      unit: 'h',
      source: GEOMETRY,
      note: `r hours of age in an hour at ${celsius} °C`,
    },
  ])
}

function within([from, to]: readonly [Reading, Reading], age: number, method: AgeMethod): number {
  let [early, late] = [0, 1]
  for (let i = 0; i < 60; i += 1) {
    const share = (early + late) / 2
    const until: Reading = [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])]
    if (intervalAge([from, until], method) >= age) late = share
    else early = share
  }
  return from[0] + late * (to[0] - from[0])
}
