import { GEOMETRY, type Source } from '../../working/source.ts'
import { known, type Step, unknown, type Worked } from '../../working/worked.ts'

/** Mean of the range of two normal values over their standard deviation. */
export const D2_OF_TWO = 1.128
/** Three standard deviations over the mean moving range, and the limit of a moving range over its mean. */
const LIMIT = 2.66
const RANGE_LIMIT = 3.267

const CHART: Source = {
  standard: 'W. A. Shewhart, Economic Control of Quality of Manufactured Product, 1931',
  clause: 'individuals and moving ranges',
  status: 'from memory',
}
export const RUNS: Source = {
  standard: 'L. S. Nelson, Journal of Quality Technology 16 (1984)',
  clause: 'tests for special causes',
  status: 'from memory',
}

export const RUN_RULES = [
  'beyond three',
  'nine on one side',
  'six in a row',
  'two of three',
  'four of five',
] as const
export type RunRule = (typeof RUN_RULES)[number]

/** A rule that fired, at the last value that it looked at, from 0. */
export interface ChartSignal {
  readonly rule: RunRule
  readonly at: number
  readonly side: 'low' | 'high'
  readonly text: string
}

export interface IndividualsChart {
  readonly centre: number
  /** From the mean moving range. */
  readonly sigma: number
  readonly low: number
  readonly high: number
  readonly movingRanges: readonly number[]
  readonly rangeLimit: number
  readonly signals: readonly ChartSignal[]
}

/** With fewer values no chart is drawn. Common practice, no source. */
export const LEAST_VALUES = 5

/**
 * Chart of single values in order of time: centre, limits from the mean moving range, and the rules that fired.
 *
 * Unknown with fewer than five values, with one that is not finite, and where all are alike. Example: 41.2 43.0 39.8 44.1 42.5 40.7 45.0 41.9 43.3 42.2 has the
 * limits 35.69 and 49.05.
 */
export function individualsChart({
  values,
}: {
  readonly values: readonly number[]
}): Worked<IndividualsChart> {
  if (values.length < LEAST_VALUES) return unknown(`values: at least ${LEAST_VALUES}, found ${values.length}`)
  const odd = values.findIndex((value) => !Number.isFinite(value))
  if (odd >= 0) return unknown(`values[${odd}]: a finite number`)
  const centre = mean(values)
  const movingRanges = values.slice(1).map((value, index) => Math.abs(value - (values[index] ?? value)))
  const range = mean(movingRanges)
  if (!(range > 0)) return unknown('values: all alike, so that their scatter is not known')
  const sigma = range / D2_OF_TWO
  const [low, high] = [centre - LIMIT * range, centre + LIMIT * range]
  return known(
    {
      centre,
      sigma,
      low,
      high,
      movingRanges,
      rangeLimit: RANGE_LIMIT * range,
      signals: runSignals(values, { centre, sigma, low, high }),
    },
    working({ centre, range, sigma, low, high, count: values.length }),
  )
}

interface Lines {
  readonly centre: number
  readonly sigma: number
  readonly low: number
  readonly high: number
}

/** Rules in the order of the values, one signal a rule, value and side. */
export function runSignals(values: readonly number[], { centre, sigma, low, high }: Lines): ChartSignal[] {
  const signals: ChartSignal[] = []
  const past = (value: number, sigmas: number, side: 'low' | 'high'): boolean =>
    side === 'low' ? value < centre - sigmas * sigma : value > centre + sigmas * sigma
  for (const [at, value] of values.entries()) {
    for (const side of ['low', 'high'] as const) {
      const add = (rule: RunRule, text: string): number => signals.push({ rule, at, side, text })
      const word = side === 'low' ? 'under' : 'over'
      if (side === 'low' ? value < low : value > high) add('beyond three', `${word} the limit`)
      const nine = values.slice(at - 8, at + 1)
      if (at >= 8 && nine.every((each) => past(each, 0, side)))
        add('nine on one side', `nine in a row ${word} the mean`)
      const six = values.slice(at - 5, at + 1)
      const turns = (a: number, b: number): boolean => (side === 'low' ? b < a : b > a)
      if (at >= 5 && six.every((each, index) => index === 0 || turns(six[index - 1] ?? each, each)))
        add('six in a row', `six in a row ${side === 'low' ? 'falling' : 'rising'}`)
      const three = values.slice(Math.max(0, at - 2), at + 1)
      if (past(value, 2, side) && three.filter((each) => past(each, 2, side)).length >= 2)
        add('two of three', `two of three ${word} two standard deviations`)
      const five = values.slice(Math.max(0, at - 4), at + 1)
      if (past(value, 1, side) && five.filter((each) => past(each, 1, side)).length >= 4)
        add('four of five', `four of five ${word} one standard deviation`)
    }
  }
  return signals
}

function working({
  centre,
  range,
  sigma,
  low,
  high,
  count,
}: Omit<Lines, never> & { readonly range: number; readonly count: number }): Step[] {
  return [
    {
      symbol: 'x̄',
      formula: 'Σ x / n',
      given: { n: count },
      result: centre,
      unit: 'MPa',
      source: GEOMETRY,
      by: 'search',
    },
    {
      symbol: 'MR',
      formula: 'Σ |xᵢ − xᵢ₋₁| / (n − 1)',
      given: { n: count },
      result: range,
      unit: 'MPa',
      source: GEOMETRY,
      by: 'search',
    },
    {
      symbol: 'σ',
      formula: 'MR / d2',
      given: { MR: range, d2: D2_OF_TWO },
      result: sigma,
      unit: 'MPa',
      source: CHART,
    },
    {
      symbol: 'LCL',
      formula: 'x̄ − 2.66 MR',
      given: { x̄: centre, MR: range },
      result: low,
      unit: 'MPa',
      source: CHART,
    },
    {
      symbol: 'UCL',
      formula: 'x̄ + 2.66 MR',
      given: { x̄: centre, MR: range },
      result: high,
      unit: 'MPa',
      source: CHART,
    },
  ]
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}
