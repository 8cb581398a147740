import { TEMPERATURE_AGE_SOURCE } from '../codes/eu/en1992-1-1-2004/temperature-age.ts'
import { known, type Step, unknown, type Worked } from '../working/worked.ts'
import { type AgeMethod, ASTM_AGE, ageRate, GAS_CONSTANT, ICE_POINT, methodGaps } from './age-method.ts'
import { degreeHoursOf, maturity } from './maturity.ts'
import { intervals, type Reading, readingGaps } from './readings.ts'

const WORKED_INTERVALS = 48
/** Largest change of temperature under one Gauss rule, °C: five points then leave no error that a double can show. */
const LARGEST_CHANGE = 5
/** Gauss-Legendre, five points on −1 to 1. */
const POINTS: readonly (readonly [at: number, weight: number])[] = [
  [-0.906179845938664, 0.2369268850561891],
  [-0.5384693101056831, 0.4786286704993665],
  [0, 0.5688888888888889],
  [0.5384693101056831, 0.4786286704993665],
  [0.906179845938664, 0.2369268850561891],
]

/**
 * Age at the reference temperature that the log amounts to: h. The temperature is linear between readings, the integral
 * is that of the rate, not the rate of a mean.
 *
 * Unknown when readings or method are not usable, or a temperature is outside the method's table (ec2: 0 to 80 °C).
 * Source: ASTM C1074 (from memory); EN 1992-1-1:2004, B.10 (from memory).
 * Example: 30 °C for 10 h, 40 000 J/mol, reference 20 °C: 17.18 h.
 */
export function equivalentAge({
  readings,
  method,
}: {
  readonly readings: readonly Reading[]
  readonly method: AgeMethod
}): Worked<number> {
  const gaps = [...readingGaps(readings), ...methodGaps(method)]
  if (gaps.length > 0) return unknown(...gaps)
  const outside = readings.findIndex(([, celsius]) => Number.isNaN(ageRate(method, celsius)))
  if (outside >= 0)
    return unknown(`readings[${outside}]: ${readings[outside]?.[1]} °C, the method holds from 0 to 80 °C`)
  return method.kind === 'nurse-saul' ? byMaturity(readings, method) : byRate(readings, method)
}

/** Equivalent age of readings that are known to be good: the bare integral, h. */
export function ageOf(readings: readonly Reading[], method: AgeMethod): number {
  if (method.kind === 'nurse-saul')
    return degreeHoursOf(readings, method.datum) / (method.reference - method.datum)
  return intervals(readings).reduce((sum, part) => sum + intervalAge(part, method), 0)
}

/** Age gained between two readings, h. */
export function intervalAge(
  [[from, first], [to, second]]: readonly [Reading, Reading],
  method: AgeMethod,
): number {
  if (method.kind === 'nurse-saul')
    return ageOf(
      [
        [from, first],
        [to, second],
      ],
      method,
    )
  const pieces = Math.max(1, Math.ceil(Math.abs(second - first) / LARGEST_CHANGE))
  const half = (to - from) / pieces / 2
  let sum = 0
  for (let piece = 0; piece < pieces; piece += 1) {
    for (const [at, weight] of POINTS) {
      const share = (piece + (1 + at) / 2) / pieces
      sum += weight * half * ageRate(method, first + share * (second - first))
    }
  }
  return sum
}

function byMaturity(
  readings: readonly Reading[],
  method: Extract<AgeMethod, { kind: 'nurse-saul' }>,
): Worked<number> {
  const degrees = maturity({ readings, datum: method.datum })
  if (!degrees.known) return degrees
  const age = degrees.value / (method.reference - method.datum)
  return known(age, [
    ...degrees.working,
    {
      symbol: 'te',
      formula: 'M / (Tr − T0)',
      given: { M: degrees.value, Tr: method.reference, T0: method.datum },
      result: age,
      unit: 'h',
      source: ASTM_AGE,
    },
  ])
}

function byRate(readings: readonly Reading[], method: AgeMethod): Worked<number> {
  const parts = intervals(readings)
  const values = parts.map((part) => intervalAge(part, method))
  const total = values.reduce((sum, value) => sum + value, 0)
  if (parts.length > WORKED_INTERVALS)
    return known(total, [integralStep('te', method, { intervals: parts.length }, total)])
  const steps = parts.map(([[ta, Ta], [tb, Tb]], index) =>
    integralStep(`t${index + 1}`, method, { ta, tb, Ta, Tb }, values[index] ?? 0),
  )
  return known(total, [
    ...steps,
    {
      symbol: 'te',
      formula: steps.map(({ symbol }) => symbol).join(' + '),
      given: Object.fromEntries(steps.map(({ symbol, result }) => [symbol, result])),
      result: total,
      unit: 'h',
      source: ASTM_AGE,
    },
  ])
}

function integralStep(symbol: string, method: AgeMethod, given: Step['given'], result: number): Step {
  const ec2 = method.kind === 'ec2'
  const constants =
    method.kind === 'arrhenius'
      ? { E: method.activation, R: GAS_CONSTANT, Tr: method.reference, 'T zero': ICE_POINT }
      : {}
  return {
    symbol,
    formula: ec2
      ? '∫ exp(−(4000 / (273 + T) − 13.65)) dt'
      : '∫ exp(−E / R (1 / (T + 273.15) − 1 / (Tr + 273.15))) dt',
    given: { ...given, ...constants },
    result,
    unit: 'h',
    source: ec2 ? TEMPERATURE_AGE_SOURCE : ASTM_AGE,
    by: 'search',
    note: 'temperature linear between readings; Gauss rule of five points for each 5 °C',
  }
}
