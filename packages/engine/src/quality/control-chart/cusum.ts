import { notAboveZero } from '../../working/guard.ts'
import type { Source } from '../../working/source.ts'
import { known, unknown, type Worked } from '../../working/worked.ts'

const CUSUM: Source = {
  standard: 'cumulative sums of concrete strength, UK practice',
  clause: 'gradient σ/6, decision interval 8.1 σ',
  status: 'from memory',
}

/** What a watch on the mean allows before it signals, in standard deviations. */
export const MEAN_WATCH = { gradient: 1 / 6, interval: 8.1 } as const

export interface CusumInput {
  /** In order of time, MPa. */
  readonly values: readonly number[]
  /** Mean that is aimed at, MPa. */
  readonly target: number
  /** Standard deviation that is counted on, MPa. */
  readonly sigma: number
  readonly gradient?: number
  readonly interval?: number
}

export interface CusumChart {
  /** Sum of the values less the target, one a value: a falling line is a mean under the target. */
  readonly sums: readonly number[]
  /** One-sided sums below and above, never under 0. */
  readonly low: readonly number[]
  readonly high: readonly number[]
  /** A one-sided sum over this is a signal, MPa. */
  readonly decision: number
  /** First value at which each side signals, from 0; null: none. After it the sum begins anew. */
  readonly signals: readonly { readonly at: number; readonly side: 'low' | 'high' }[]
}

/**
 * Cumulative sums against a target: slow shifts of the mean show here long before single values pass a limit.
 *
 * Unknown without values, target and standard deviation above 0.
 */
export function cusumChart({
  values,
  target,
  sigma,
  gradient = MEAN_WATCH.gradient,
  interval = MEAN_WATCH.interval,
}: CusumInput): Worked<CusumChart> {
  const gaps = notAboveZero({ target, sigma, gradient, interval })
  if (values.length === 0) gaps.push('values: at least one')
  const odd = values.findIndex((value) => !Number.isFinite(value))
  if (odd >= 0) gaps.push(`values[${odd}]: a finite number`)
  if (gaps.length > 0) return unknown(...gaps)
  const slack = gradient * sigma
  const decision = interval * sigma
  const low = oneSided(
    values.map((value) => target - value),
    slack,
    decision,
  )
  const high = oneSided(
    values.map((value) => value - target),
    slack,
    decision,
  )
  let sum = 0
  const sums = values.map((value) => {
    sum += value - target
    return sum
  })
  const signals = [
    ...low.signals.map((at) => ({ at, side: 'low' as const })),
    ...high.signals.map((at) => ({ at, side: 'high' as const })),
  ].sort((a, b) => a.at - b.at)
  return known({ sums, low: low.sums, high: high.sums, decision, signals }, [
    {
      symbol: 'h',
      formula: 'i σ',
      given: { i: interval, σ: sigma },
      result: decision,
      unit: 'MPa',
      source: CUSUM,
    },
    {
      symbol: 'k',
      formula: 'g σ',
      given: { g: gradient, σ: sigma },
      result: slack,
      unit: 'MPa',
      source: CUSUM,
    },
  ])
}

function oneSided(
  away: readonly number[],
  slack: number,
  decision: number,
): { readonly sums: number[]; readonly signals: number[] } {
  const sums: number[] = []
  const signals: number[] = []
  let sum = 0
  for (const [at, value] of away.entries()) {
    sum = Math.max(0, sum + value - slack)
    sums.push(sum)
    if (sum > decision) {
      signals.push(at)
      sum = 0
    }
  }
  return { sums, signals }
}
