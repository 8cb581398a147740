import { student95 } from '../../cure/student-table.ts'
import { GEOMETRY, type Source } from '../../working/source.ts'
import { known, unknown, type Worked } from '../../working/worked.ts'

const REGRESSION: Source = {
  standard: 'least squares, prediction of one later value',
  clause: '',
  status: 'computed',
}

/** With fewer pairs the yard's own relation is not known. */
export const LEAST_PAIRS = 4

export interface EarlyPair {
  readonly early: number
  readonly late: number
}

export interface EarlyRelation {
  readonly slope: number
  readonly intercept: number
  readonly scatter: number
  readonly count: number
  /** The later strength that an early one lets expect, and its 90 % band, MPa. */
  readonly late: number
  readonly low: number
  readonly high: number
  /** The early result lies outside of those that the relation stands on. */
  readonly outside: boolean
}

/**
 * Later strength (mostly at 28 days) that an early result lets expect by the yard's own pairs of one mix: least squares, with the 90 % band for one later test.
 *
 * Unknown with fewer than four pairs or where all early results are alike.
 */
export function earlyRelation({
  pairs,
  early,
}: {
  readonly pairs: readonly EarlyPair[]
  readonly early: number
}): Worked<EarlyRelation> {
  const good = pairs.filter((pair) => pair.early > 0 && pair.late > 0)
  if (good.length < LEAST_PAIRS)
    return unknown(`pairs: at least ${LEAST_PAIRS} of early and late results, found ${good.length}`)
  if (!(early > 0)) return unknown('early: a strength above 0, MPa')
  const n = good.length
  const x̄ = good.reduce((sum, pair) => sum + pair.early, 0) / n
  const ȳ = good.reduce((sum, pair) => sum + pair.late, 0) / n
  const sxx = good.reduce((sum, pair) => sum + (pair.early - x̄) ** 2, 0)
  if (!(sxx > 1e-9 * n)) return unknown('pairs: early results that differ')
  const slope = good.reduce((sum, pair) => sum + (pair.early - x̄) * (pair.late - ȳ), 0) / sxx
  const intercept = ȳ - slope * x̄
  const rest = good.reduce((sum, pair) => sum + (pair.late - intercept - slope * pair.early) ** 2, 0)
  const scatter = Math.sqrt(rest / (n - 2))
  const lever = 1 / n + (early - x̄) ** 2 / sxx
  const t = student95(n - 2) ?? Number.NaN
  const late = intercept + slope * early
  const half = t * scatter * Math.sqrt(1 + lever)
  const earlies = good.map((pair) => pair.early)
  return known(
    {
      slope,
      intercept,
      scatter,
      count: n,
      late,
      low: late - half,
      high: late + half,
      outside: early < Math.min(...earlies) || early > Math.max(...earlies),
    },
    [
      {
        symbol: 'late',
        formula: 'a + b x',
        given: { a: intercept, b: slope, x: early },
        result: late,
        unit: 'MPa',
        source: REGRESSION,
      },
      {
        symbol: 'band',
        formula: 't s sqrt(1 + v)',
        given: { t, s: scatter, v: lever },
        result: half,
        unit: 'MPa',
        source: GEOMETRY,
        note: '90 %, for one later test',
      },
    ],
  )
}
