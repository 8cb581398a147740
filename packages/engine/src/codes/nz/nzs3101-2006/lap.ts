import type { Source } from '../../../working/source.ts'
import { known, type Worked } from '../../../working/worked.ts'
import { lapGaps, noEpoxy } from '../../lap-limits.ts'
import type { LapInput, LapLength } from '../../steel-rules.ts'

const CLAUSE_8_6_3: Source = { standard: 'NZS 3101:2006', clause: '8.6.3', status: 'from memory' }
const CLAUSE_8_7_2: Source = { standard: 'NZS 3101:2006', clause: '8.7.2', status: 'from memory' }

/** Where the rules of development hold: yield and concrete in MPa, largest bar in mm. */
export const RANGE = {
  yield: [200, 500],
  concrete: [20, 100],
  largest: 40,
  standard: 'NZS 3101:2006',
} as const

/** Fresh concrete below a bar that makes it a top bar, mm. */
const TOP_BAR = 300
const LEAST = 300

/**
 * Development and contact lap of a straight deformed bar in tension, mm; refined by cover and spacing (αc), without credit
 * for confinement (αd 1) or spare steel (αb 1).
 *
 * `length` is null where the bars of a lap do not touch: no confirmed value. Unknown outside yield 200 to 500 MPa, concrete
 * 20 to 100 MPa, bars over 40 mm. Example: HD12 in 30 MPa, cover 18: 547.7 mm.
 */
export function lap(input: LapInput): Worked<LapLength> {
  const gaps = [...lapGaps(input, RANGE), ...noEpoxy(input)]
  if (gaps.length > 0) return { known: false, gaps }
  const { diameter: db, cover, gap, below, apart } = input
  const fc = Math.min(input.concrete, 70)
  const αa = below > TOP_BAR ? 1.3 : 1
  const basic = (0.5 * αa * input.yield * db) / Math.sqrt(fc)
  const cm = Math.min(cover, gap)
  const αc = Math.max(1, Math.min(1.5, 1 + 0.5 * (cm / db - 1.5)))
  const development = Math.max(basic / αc, LEAST)
  const value: LapLength = {
    development,
    length: apart > 0 ? null : development,
    factors: [
      { symbol: 'αa', value: αa },
      { symbol: 'αb', value: 1 },
      { symbol: 'αc', value: αc },
      { symbol: 'αd', value: 1 },
    ],
    gaps: apart > 0 ? ['apart: no confirmed value for bars of a lap that do not touch'] : [],
    source: CLAUSE_8_7_2,
  }
  return known(value, [
    {
      symbol: 'Ldb',
      formula: '0.5 · αa · fy · db / √(min(fc, 70))',
      given: { αa, fy: input.yield, db, fc: input.concrete },
      result: basic,
      unit: 'mm',
      source: CLAUSE_8_6_3,
      note: αa > 1 ? 'more than 300 mm of fresh concrete below' : 'not a top bar',
    },
    {
      symbol: 'αc',
      formula: 'max(1, min(1.5, 1 + 0.5 · (min(cover, gap) / db − 1.5)))',
      given: { cover, gap, db },
      result: αc,
      unit: '',
      source: CLAUSE_8_6_3,
    },
    {
      symbol: 'Ld',
      formula: 'max(Ldb / αc, 300)',
      given: { Ldb: basic, αc },
      result: development,
      unit: 'mm',
      source: CLAUSE_8_6_3,
      note: 'lap in contact: Lds = Ld, no lap factor',
    },
  ])
}
