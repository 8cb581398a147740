import { notAboveZero } from '../working/guard.ts'
import { commonPractice, enteredBy } from '../working/source.ts'
import { type Assumed, known, type Step, unknown, type Worked } from '../working/worked.ts'
import type { StrengthCurve, StrengthTest } from '../yard/yard.ts'
import { type AgeMethod, ageRate } from './age-method.ts'
import { type AgedTest, type CurveFit, type FitForm, fitCurve } from './fit-curve.ts'
import { curveFrom, strengthOf, strengthStep } from './strength-curve.ts'
import { student95 } from './student-table.ts'

/** Standard normal deviate that one in twenty lies below: both edges of a 90 % band. */
export const BAND_DEVIATE = 1.6448536269514722

/** How a mix gains strength: a curve, or tests to draw one through. */
export interface StrengthSource {
  readonly curve?: StrengthCurve | undefined
  readonly tests?: readonly StrengthTest[] | undefined
  /** Coefficient of variation of one later test. */
  readonly scatter?: number | undefined
}

export interface StrengthBand {
  readonly low: number
  readonly high: number
}

/** A mix ready to be asked: strength, MPa, and 90 % band of one later test at an equivalent age, h. */
export interface StrengthModel {
  /** Null where it is no one curve: a law brought up to date by cylinders. */
  readonly curve: StrengthCurve | null
  /** Ages between which it answers, h. Outside: null. */
  readonly from: number
  readonly to: number
  readonly strength: (age: number) => number | null
  readonly band: (age: number) => StrengthBand | null
  /** Why there is no band. */
  readonly bandGaps: readonly string[]
  /** The mix has a coefficient of variation and a curve: the band is a fixed share of the strength. */
  readonly share: number | null
  readonly steps: (age: number) => Step[]
  readonly bandSteps: (age: number) => Step[]
}

/**
 * Makes a mix ready to be asked. A curve is taken as given; tests are brought to the reference temperature by the age
 * method and a curve is drawn through them, which then answers only between the first and the last of them.
 *
 * Unknown when the mix has neither, or too few tests: three different ages at least.
 */
export function strengthModel({
  source,
  method,
}: {
  readonly source: StrengthSource
  readonly method: AgeMethod
}): Worked<StrengthModel> {
  const { scatter } = source
  if (scatter !== undefined && !(scatter > 0 && scatter <= 1))
    return unknown('scatter: a number above 0 and at most 1')
  if (source.curve) return fromCurve(source.curve, scatter)
  if (source.tests) return fromTests(source.tests, scatter, method)
  return unknown('mix: neither curve nor tests')
}

function fromCurve(curve: StrengthCurve, scatter: number | undefined): Worked<StrengthModel> {
  const { form, ...numbers } = curve
  const { offset, ...positive } = numbers as Record<string, number>
  const gaps = notAboveZero(positive)
  if (form === 'hyperbolic' && !(offset !== undefined && offset >= 0 && Number.isFinite(offset)))
    gaps.push('offset: a number not below 0')
  if (gaps.length > 0) return unknown(...gaps)
  const strength = (age: number) => strengthOf(curve, age)
  return known(
    {
      curve,
      from: curveFrom(curve),
      to: Number.POSITIVE_INFINITY,
      strength,
      band: (age) => shareBand(strength(age), scatter),
      bandGaps: scatter === undefined ? ['scatter: the mix gives no coefficient of variation'] : [],
      share: scatter ?? null,
      steps: (age) => stepOf(curve, age, strength(age)),
      bandSteps: (age) => shareSteps(strength(age), scatter),
    },
    [],
  )
}

function fromTests(
  tests: readonly StrengthTest[],
  scatter: number | undefined,
  method: AgeMethod,
): Worked<StrengthModel> {
  const gaps = tests.flatMap((test, index) =>
    notAboveZero({ age: test.age, strength: test.strength }).map((gap) => `tests[${index}].${gap}`),
  )
  if (gaps.length > 0) return unknown(...gaps)
  const aged = tests.map((test): AgedTest => [test.age * testRate(test, method), test.strength])
  if (aged.some(([age]) => !(age > 0)))
    return unknown('tests: a temperature at which the age method counts nothing')
  const fit = fitOf(tests, aged, method)
  if (fit === null)
    return unknown(`tests: at least three different ages that fix a curve, found ${tests.length} tests`)
  const ages = aged.map(([age]) => age)
  const [from, to] = [Math.min(...ages), Math.max(...ages)]
  const inside = (age: number) => age >= from * (1 - 1e-12) && age <= to * (1 + 1e-12)
  const strength = (age: number) => (inside(age) ? strengthOf(fit.curve, age) : null)
  const spread = spreadOf(fit, aged)
  const deviation = (age: number): number | null => {
    const own = spread === null ? null : spread.t * spread.s * Math.sqrt(1 + fit.leverage(age))
    const given = scatter === undefined ? null : BAND_DEVIATE * scatter * (strength(age) ?? 0)
    const widest = Math.max(own ?? 0, given ?? 0)
    return (own === null && given === null) || !Number.isFinite(widest) ? null : widest
  }
  return known(
    {
      curve: fit.curve,
      from,
      to,
      strength,
      band: (age) => edges(strength(age), deviation(age)),
      bandGaps:
        spread === null && scatter === undefined
          ? ['tests: more tests than parameters, with some scatter in them, or scatter']
          : [],
      share: null,
      steps: (age) => [fitStep(fit, aged), ...stepOf(fit.curve, age, strength(age))],
      bandSteps: (age) => testBandSteps({ strength: strength(age), deviation: deviation(age), aged, fit }),
    },
    [],
    testsAssumed(tests, method),
  )
}

/** Fits by the very list of tests: a room full of panels asks for the same mix again and again, and a fit takes a while. */
const fits = new WeakMap<readonly StrengthTest[], Map<string, CurveFit | null>>()

function fitOf(
  tests: readonly StrengthTest[],
  aged: readonly AgedTest[],
  method: AgeMethod,
): CurveFit | null {
  const known = fits.get(tests) ?? new Map<string, CurveFit | null>()
  fits.set(tests, known)
  const key = JSON.stringify([method, aged])
  const found = known.get(key)
  if (found !== undefined) return found
  const fit = bestFit(aged)
  known.set(key, fit)
  return fit
}

const LEAST_AGES = 3

/** The form that leaves the least squares of those that the tests can fix. */
function bestFit(aged: readonly AgedTest[]): CurveFit | null {
  const different = new Set(aged.map(([age]) => age)).size
  if (different < LEAST_AGES) return null
  const forms: FitForm[] = different >= 4 ? ['hyperbolic', 'exponential'] : ['hyperbolic from 0']
  return forms
    .map((form) => fitCurve(aged, form))
    .reduce((best, fit) => (fit !== null && (best === null || fit.squares < best.squares) ? fit : best), null)
}

/** Standard deviation of the tests about the curve. Null without a test to spare, or where they show none at all. */
function spreadOf(fit: CurveFit, aged: readonly AgedTest[]): { s: number; t: number } | null {
  const degrees = aged.length - fit.parameters
  const t = student95(degrees)
  const s = Math.sqrt(fit.squares / degrees)
  // Measured strengths scatter. Tests that lie on a curve to the last digit were computed and tell nothing of it.
  const measured = s > 1e-4 * Math.max(...aged.map(([, strength]) => strength))
  return t !== null && measured ? { s, t } : null
}

function testRate(test: StrengthTest, method: AgeMethod): number {
  return test.temperature === undefined ? 1 : ageRate(method, test.temperature)
}

function testsAssumed(tests: readonly StrengthTest[], method: AgeMethod): Assumed[] {
  const without = tests.filter(({ temperature }) => temperature === undefined).length
  if (without === 0) return []
  return [
    {
      field: 'tests[].temperature',
      value: method.kind === 'ec2' ? 20 : method.reference,
      unit: '°C',
      why: `${without} of ${tests.length} tests give no temperature: taken as cured at the reference`,
    },
  ]
}

function shareBand(strength: number | null, scatter: number | undefined): StrengthBand | null {
  if (scatter === undefined) return null
  return edges(strength, strength === null ? null : BAND_DEVIATE * scatter * strength)
}

function edges(strength: number | null, deviation: number | null): StrengthBand | null {
  if (strength === null || deviation === null) return null
  return { low: Math.max(0, strength - deviation), high: strength + deviation }
}

function stepOf(curve: StrengthCurve, age: number, strength: number | null): Step[] {
  return strength === null ? [] : [strengthStep(curve, age, strength)]
}

const BAND_SOURCE = {
  standard: 'normal distribution',
  clause: '90 % two-sided band of one later test',
  status: 'computed',
} as const

function shareSteps(strength: number | null, scatter: number | undefined): Step[] {
  const band = shareBand(strength, scatter)
  if (band === null || strength === null || scatter === undefined) return []
  const given = { S: strength, z: BAND_DEVIATE, v: scatter }
  return [
    {
      symbol: 'Slow',
      formula: 'max(0, S − z v S)',
      given,
      result: band.low,
      unit: 'MPa',
      source: BAND_SOURCE,
    },
    { symbol: 'Shigh', formula: 'S + z v S', given, result: band.high, unit: 'MPa', source: BAND_SOURCE },
  ]
}

function fitStep(fit: CurveFit, aged: readonly AgedTest[]): Step {
  const { form, ultimate } = fit.curve
  const rest =
    fit.curve.form === 'hyperbolic'
      ? { k: fit.curve.rate, t0: fit.curve.offset }
      : { τ: fit.curve.tau, a: fit.curve.shape }
  return {
    symbol: 'Su',
    formula: `least squares of the ${form} curve through the tests`,
    given: { tests: aged.length, parameters: fit.parameters, ...rest },
    result: ultimate,
    unit: 'MPa',
    source: enteredBy('the mix: its tests'),
    by: 'search',
    note: `sum of squares ${fit.squares} MPa²; not read outside the ages of the tests`,
  }
}

function testBandSteps({
  strength,
  deviation,
  aged,
  fit,
}: {
  readonly strength: number | null
  readonly deviation: number | null
  readonly aged: readonly AgedTest[]
  readonly fit: CurveFit
}): Step[] {
  const band = edges(strength, deviation)
  if (band === null || strength === null || deviation === null) return []
  const given = { S: strength, d: deviation }
  const source = commonPractice('prediction band of a regression, the wider of tests and given scatter')
  return [
    {
      symbol: 'd',
      formula: 'the greater of t s √(1 + h) and z v S',
      given: { tests: aged.length, parameters: fit.parameters },
      result: deviation,
      unit: 'MPa',
      source,
      by: 'search',
    },
    { symbol: 'Slow', formula: 'max(0, S − d)', given, result: band.low, unit: 'MPa', source },
    { symbol: 'Shigh', formula: 'S + d', given, result: band.high, unit: 'MPa', source },
  ]
}
