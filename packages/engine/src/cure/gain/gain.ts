import type { Assumed, Step } from '../../working/worked.ts'
import { type AgeMethod, ASTM_AGE, ageRate, GAS_CONSTANT } from '../age-method.ts'
import { mixMethod } from '../strength-from-log.ts'
import { BAND_DEVIATE } from '../strength-model.ts'
import { type AgedStrength, OPEN_TESTS } from './aged-strength.ts'
import { openPrior, outOfRange, outOfRangeText, shown } from './open-prior.ts'
import { POPULATION_PRIOR } from './population.ts'
import { laterTests, type Posterior, type TakenIn, takeIn } from './posterior.ts'
import type { GainTests } from './read-gain.ts'

export interface GainInput extends GainTests {
  /** Age asked for, h at the reference temperature. */
  readonly at: number
}

/** Strength of a mix at an age, from its early tests. Null where not known; `unknown` says why. */
export interface Gain {
  /** Median of one later test of that mix, MPa, and its 90 % band: one in twenty is below `low`. */
  readonly strength: number | null
  readonly low: number | null
  readonly high: number | null
  /** In words: what the band rests on. */
  readonly restsOn: string
  /** What a person should know before using it: outside the open data, slipped or repeated tests. */
  readonly warnings: readonly string[]
  /** Places in the tests given of those that do not fit the others, and count for less. */
  readonly slipped: readonly number[]
  readonly unknown: readonly string[]
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
}

type Arrhenius = Extract<AgeMethod, { kind: 'arrhenius' }>

/**
 * Strength at an age from early tests of the same mix, by what open tests of other mixes show: with the proportions from
 * like mixes, without them from all. Tests are brought to the reference temperature first.
 *
 * Unknown outside 1 to 365 days, except between tests of this mix; for proportions far outside the open mixes; at a
 * temperature at which the method counts no age.
 * Left out: admixtures other than superplasticizer, cement class, curing without moisture, a hot start.
 */
export function gainOf({ tests, mix, at, ...constants }: GainInput): Gain {
  const { method, assumed } = mixMethod(constants)
  const heated = tests.some(({ temperature }) => temperature !== undefined)
  const rates = tests.map(({ temperature }) => (temperature === undefined ? 1 : ageRate(method, temperature)))
  const aged = tests.map(
    ({ age, strength }, i): AgedStrength => ({ days: (age * (rates[i] ?? 1)) / 24, strength }),
  )
  const outside = mix === undefined ? [] : outOfRange(mix)
  const gaps = [
    ...(Number.isFinite(at) && at > 0 ? [] : ['at: an age above 0']),
    ...aged.flatMap(({ days }, i) =>
      days > 0 && Number.isFinite(days) ? [] : [`tests[${i}].temperature: no age is counted there`],
    ),
    ...outside.filter(({ far }) => far).map(outOfRangeText),
    ...ageGaps(at / 24, aged),
  ]
  const prior = mix === undefined || gaps.length > 0 ? POPULATION_PRIOR : openPrior(mix)
  const base = {
    restsOn: `${tests.length} ${tests.length === 1 ? 'test' : 'tests'} of this mix; ${prior.restsOn}`,
    assumed: [
      ...assumed.filter(({ field }) => field === 'reference' || heated),
      ...cureAssumed(tests, method),
    ],
  }
  if (gaps.length > 0)
    return {
      ...base,
      strength: null,
      low: null,
      high: null,
      warnings: [],
      slipped: [],
      unknown: gaps,
      working: [],
    }
  const taken = takeIn(prior, aged)
  const [law] = laterTests(prior, taken, [at / 24])
  if (law === undefined) throw new Error('gain: no law found for the age asked')
  const steps = bandSteps(law, taken, { at, widen: prior.widen })
  const [strength, low, high] = steps.slice(-3).map(({ result }) => Number(result))
  return {
    ...base,
    strength: strength ?? null,
    low: low ?? null,
    high: high ?? null,
    warnings: [...outside.map(outOfRangeText), ...warningsOf(taken, aged, at / 24)],
    slipped: taken.slipped.map((place) => aged.indexOf(taken.tests[place] as AgedStrength)),
    unknown: [],
    working: [...ageSteps(tests, aged, method), ...steps],
  }
}

const { from: FROM, to: TO } = POPULATION_PRIOR
/** Youngest age of which the open data hold more than a single test, days. */
const WELL_TESTED = 3

function ageGaps(days: number, tests: readonly AgedStrength[]): string[] {
  const ages = tests.map((test) => test.days)
  const between = days >= Math.min(...ages) && days <= Math.max(...ages)
  if (between || (days >= FROM && days <= TO)) return []
  return [
    `at: the open tests say nothing at ${shown(days)} days, only from ${FROM} to ${TO} days or between tests given`,
  ]
}

function warningsOf(
  { slipped, repeats, stretch, tests }: TakenIn,
  given: readonly AgedStrength[],
  days: number,
): string[] {
  const youngest = Math.min(days, ...given.map((test) => test.days))
  return [
    ...(youngest < WELL_TESTED * (1 - 1e-9)
      ? [`The open data hold one test younger than ${WELL_TESTED} days: the band was not checked there.`]
      : []),
    ...slipped.map((place) => {
      const test = tests[place] as AgedStrength
      return `tests[${given.indexOf(test)}]: ${shown(test.strength)} MPa at ${shown(test.days)} days does not fit the others and counts for less. Find out why.`
    }),
    ...(repeats > 0
      ? [`${repeats} of the tests repeat another to the last digit and are not counted twice.`]
      : []),
    ...(stretch > 1
      ? [`The tests do not fit what is known of such a mix: the band is ${shown(stretch)} times as wide.`]
      : []),
  ]
}

function cureAssumed(tests: GainTests['tests'], { reference }: Arrhenius): Assumed[] {
  const without = tests.filter(({ temperature }) => temperature === undefined).length
  const later = { field: 'at', value: reference, unit: '°C', why: 'the later test is cured at the reference' }
  if (without === 0) return [later]
  return [
    {
      field: 'tests[].temperature',
      value: reference,
      unit: '°C',
      why: `${without} of ${tests.length} tests give no temperature: taken as cured at the reference`,
    },
    later,
  ]
}

function ageSteps(tests: GainTests['tests'], aged: readonly AgedStrength[], method: Arrhenius): Step[] {
  return tests.flatMap(({ age, temperature }, i): Step[] =>
    temperature === undefined
      ? []
      : [
          {
            symbol: `te${i + 1}`,
            formula: 't exp(−E / R (1 / (T + 273.15) − 1 / (Tr + 273.15))) / 24',
            given: { t: age, E: method.activation, R: GAS_CONSTANT, T: temperature, Tr: method.reference },
            result: aged[i]?.days ?? Number.NaN,
            unit: 'd',
            source: ASTM_AGE,
          },
        ],
  )
}

function bandSteps(
  { mean, deviation }: Posterior,
  taken: TakenIn,
  { at, widen }: { at: number; widen: number },
): Step[] {
  const [given, source] = [{ μ: mean, σ: deviation, z: BAND_DEVIATE }, BAND_SOURCE]
  const learned = { tests: taken.tests.length, age: at / 24 }
  return [
    {
      symbol: 'μ',
      formula: 'mean of ln strength at the age asked, given the tests',
      given: learned,
      result: mean,
      unit: '',
      source: OPEN_TESTS,
      by: 'search',
      note: 'normal law over mixes and ages, its numbers learned on whole mixes held out',
    },
    {
      symbol: 'σ',
      formula: 'deviation of ln of one later test at that age',
      given: { ...learned, stretch: taken.stretch, widen },
      result: deviation,
      unit: '',
      source: OPEN_TESTS,
      by: 'search',
    },
    { symbol: 'S', formula: 'exp(μ)', given: { μ: mean }, result: Math.exp(mean), unit: 'MPa', source },
    {
      symbol: 'Slow',
      formula: 'exp(μ − z σ)',
      given,
      result: Math.exp(mean - BAND_DEVIATE * deviation),
      unit: 'MPa',
      source,
    },
    {
      symbol: 'Shigh',
      formula: 'exp(μ + z σ)',
      given,
      result: Math.exp(mean + BAND_DEVIATE * deviation),
      unit: 'MPa',
      source,
    },
  ]
}

const BAND_SOURCE = {
  standard: 'normal distribution of ln strength',
  clause: '90 % two-sided band of one later test',
  status: 'computed',
} as const
