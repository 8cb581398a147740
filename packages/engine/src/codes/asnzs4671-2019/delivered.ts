import type { Source } from '../../working/source.ts'
import type { DeliveredRules, TensileLimits } from '../delivered-bar.ts'

const TENSILE: Source = { standard: 'AS/NZS 4671:2019', clause: 'tensile properties', status: 'seen' }
const LENGTH: Source = { standard: 'AS/NZS 4671:2001', clause: 'length of bars as supplied', status: 'seen' }

interface Row {
  readonly grade: string
  readonly yieldLow: number
  readonly yieldHigh: number | null
  readonly ratioLow: number
  readonly ratioHigh: number | null
  readonly uniformLow: number
  readonly status: Source['status']
}

/** Characteristic values: a single test may lie a little outside and is then a question for the certificate. */
const ROWS: readonly Row[] = [
  {
    grade: '300E',
    yieldLow: 300,
    yieldHigh: 380,
    ratioLow: 1.15,
    ratioHigh: 1.5,
    uniformLow: 15,
    status: 'seen',
  },
  {
    grade: '500E',
    yieldLow: 500,
    yieldHigh: 600,
    ratioLow: 1.15,
    ratioHigh: 1.4,
    uniformLow: 10,
    status: 'seen',
  },
  {
    grade: '500N',
    yieldLow: 500,
    yieldHigh: 650,
    ratioLow: 1.08,
    ratioHigh: null,
    uniformLow: 5,
    status: 'seen',
  },
  {
    grade: '250N',
    yieldLow: 250,
    yieldHigh: null,
    ratioLow: 1.08,
    ratioHigh: null,
    uniformLow: 5,
    status: 'seen',
  },
  {
    grade: '500L',
    yieldLow: 500,
    yieldHigh: 750,
    ratioLow: 1.03,
    ratioHigh: null,
    uniformLow: 1.5,
    status: 'from memory',
  },
]

/** Limits of a delivered bar in New Zealand or Australia. The length rows run: to 7 m, under 12 m, from 12 m. */
export function delivered(sizes: readonly number[]): DeliveredRules {
  return {
    sizes,
    tensile({ grade }): TensileLimits | null {
      const row = ROWS.find((each) => each.grade === grade)
      if (row === undefined) return null
      const { status, grade: _grade, ...limits } = row
      return { ...limits, strengthLow: null, elongationLow: null, source: { ...TENSILE, status } }
    },
    lengthTolerance: ({ length }) => ({
      minus: 40,
      plus: length <= 7000 ? 0 : length < 12_000 ? 40 : 60,
      source: LENGTH,
    }),
  }
}
