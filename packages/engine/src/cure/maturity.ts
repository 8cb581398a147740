import { notFinite } from '../working/guard.ts'
import { known, type Step, unknown, type Worked } from '../working/worked.ts'
import { ASTM_MATURITY } from './age-method.ts'
import { intervals, type Reading, readingGaps } from './readings.ts'

/** Logs of up to so many intervals are worked line by line; longer ones in one line that says their count. */
const WORKED_INTERVALS = 48

export interface MaturityInput {
  readonly readings: readonly Reading[]
  /** Temperature below which nothing counts, °C. */
  readonly datum: number
}

/**
 * Maturity of a temperature log (temperature-time factor): °C·h above the datum, the temperature linear between readings
 * and cut at the datum exactly. Unknown when readings are missing, not in order of time or not temperatures.
 *
 * Source: ASTM C1074 (from memory). Example: 20 °C for 24 h above 0 °C: 480 °C·h.
 */
export function maturity({ readings, datum }: MaturityInput): Worked<number> {
  const gaps = [...readingGaps(readings), ...notFinite({ datum })]
  if (gaps.length > 0) return unknown(...gaps)
  const parts = intervals(readings).map((part) => ({ part, value: degreeHours(part, datum) }))
  const total = parts.reduce((sum, { value }) => sum + value, 0)
  if (parts.length > WORKED_INTERVALS) {
    return known(total, [
      {
        symbol: 'M',
        formula: 'Σ (T − T0) Δt, T − T0 not below 0',
        given: { intervals: parts.length, T0: datum },
        result: total,
        unit: '°C·h',
        source: ASTM_MATURITY,
        by: 'search',
        note: 'temperature linear between readings, cut at the datum exactly',
      },
    ])
  }
  const steps = parts.map(({ part, value }, index) => intervalStep(`M${index + 1}`, part, datum, value))
  const names = steps.map(({ symbol }) => symbol)
  return known(total, [
    ...steps,
    {
      symbol: 'M',
      formula: names.join(' + '),
      given: Object.fromEntries(steps.map(({ symbol, result }) => [symbol, result])),
      result: total,
      unit: '°C·h',
      source: ASTM_MATURITY,
    },
  ])
}

/** Degree-hours of readings that are known to be good: the bare sum. */
export function degreeHoursOf(readings: readonly Reading[], datum: number): number {
  return intervals(readings).reduce((sum, part) => sum + degreeHours(part, datum), 0)
}

/** One interval: a trapezoid, or the triangle that stands above the datum. */
function degreeHours([[from, first], [to, second]]: readonly [Reading, Reading], datum: number): number {
  const [a, b] = [first - datum, second - datum]
  const time = to - from
  if (a >= 0 && b >= 0) return ((a + b) / 2) * time
  if (a <= 0 && b <= 0) return 0
  const peak = Math.max(a, b)
  return ((peak * peak) / (2 * Math.abs(a - b))) * time
}

function intervalStep(
  symbol: string,
  [[from, first], [to, second]]: readonly [Reading, Reading],
  datum: number,
  result: number,
): Step {
  const base = { symbol, result, unit: '°C·h', source: ASTM_MATURITY }
  const given = { Ta: first, Tb: second, T0: datum, ta: from, tb: to }
  if (first >= datum && second >= datum) return { ...base, formula: '((Ta + Tb) / 2 − T0) (tb − ta)', given }
  if (first <= datum && second <= datum)
    return { ...base, formula: '0 (tb − ta)', given: { ta: from, tb: to }, note: 'below the datum' }
  return {
    ...base,
    formula: '(max(Ta, Tb) − T0)² / (2 abs(Ta − Tb)) (tb − ta)',
    given,
    note: 'the part above the datum',
  }
}
