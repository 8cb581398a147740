import type { Source } from '../../../working/source.ts'
import { known, type Step, type Worked } from '../../../working/worked.ts'
import { lapGaps, noEpoxy } from '../../lap-limits.ts'
import type { LapInput, LapLength } from '../../steel-rules.ts'

const STANDARD = 'EN 1992-1-1:2004'
const TABLE_3_1: Source = { standard: STANDARD, clause: 'Table 3.1', status: 'seen' }
const CLAUSE_8_4_2: Source = { standard: STANDARD, clause: '8.4.2(2)', status: 'seen' }
const CLAUSE_8_4_3: Source = { standard: STANDARD, clause: '8.4.3(2)', status: 'seen' }
const CLAUSE_8_4_4: Source = { standard: STANDARD, clause: '8.4.4(1)', status: 'seen' }
const CLAUSE_8_7_3: Source = { standard: STANDARD, clause: '8.7.3(1)', status: 'seen' }
const CLAUSE_8_7_2: Source = { standard: STANDARD, clause: '8.7.2(3)', status: 'seen' }

/** Where the rules of development hold: yield and concrete in MPa, largest bar in mm. */
export const RANGE = { yield: [400, 600], concrete: [12, 90], largest: 32, standard: STANDARD } as const

const γc = 1.5
const γs = 1.15

/**
 * Anchorage and lap of a straight ribbed bar in tension, fully stressed, mm: fctk,0.05 not rounded, α1 α3 α5 = 1.
 *
 * Bars of a lap further apart than the lesser of 4φ and 50 mm (the cautious reading) lengthen it by what is over. Unknown outside
 * yield 400 to 600 MPa, concrete 12 to 90 MPa, bars over 32 mm. Example: 12 mm in C25, cd 35, good bond: lbd 345.1 mm.
 */
export function lap(input: LapInput): Worked<LapLength> {
  const gaps = [...lapGaps(input, RANGE), ...noEpoxy(input)]
  if (gaps.length > 0) return { known: false, gaps }
  const { diameter: φ, concrete: fck, yield: fyk, cover, gap, share, apart } = input
  const tension = lowTension(fck)
  const η1 = input.bond === 'good' ? 1 : 0.7
  const fbd = (2.25 * η1 * tension.value) / γc
  const σsd = fyk / γs
  const required = (φ / 4) * (σsd / fbd)
  const cd = Math.min(cover, gap / 2)
  const α2 = Math.max(0.7, Math.min(1, 1 - (0.15 * (cd - φ)) / φ))
  const development = Math.max(α2 * required, 0.3 * required, 10 * φ, 100)
  const α6 = Math.max(1, Math.min(1.5, Math.sqrt(share / 25)))
  const inContact = Math.max(α2 * α6 * required, 0.3 * α6 * required, 15 * φ, 200)
  const over = apart > Math.min(4 * φ, 50) ? apart - Math.min(4 * φ, 50) : 0
  const length = inContact + over
  const value: LapLength = {
    development,
    length,
    factors: [
      { symbol: 'η1', value: η1 },
      { symbol: 'α1', value: 1 },
      { symbol: 'α2', value: α2 },
      { symbol: 'α3', value: 1 },
      { symbol: 'α5', value: 1 },
      { symbol: 'α6', value: α6 },
    ],
    gaps: [],
    source: CLAUSE_8_7_3,
  }
  const working: Step[] = [
    ...tension.working,
    {
      symbol: 'fbd',
      formula: '2.25 · η1 · η2 · fctk / γc',
      given: { η1, η2: 1, fctk: tension.value, γc },
      result: fbd,
      unit: 'MPa',
      source: CLAUSE_8_4_2,
      note: `${input.bond} bond`,
    },
    {
      symbol: 'lb,rqd',
      formula: 'φ / 4 · (fyk / γs) / fbd',
      given: { φ, fyk, γs, fbd },
      result: required,
      unit: 'mm',
      source: CLAUSE_8_4_3,
    },
    {
      symbol: 'α2',
      formula: 'max(0.7, min(1, 1 − 0.15 · (min(cover, gap / 2) − φ) / φ))',
      given: { cover, gap, φ },
      result: α2,
      unit: '',
      source: CLAUSE_8_4_4,
    },
    {
      symbol: 'lbd',
      formula: 'max(α2 · lb, 0.3 · lb, 10 · φ, 100)',
      given: { α2, lb: required, φ },
      result: development,
      unit: 'mm',
      source: CLAUSE_8_4_4,
    },
    {
      symbol: 'α6',
      formula: 'max(1, min(1.5, √(ρ1 / 25)))',
      given: { ρ1: share },
      result: α6,
      unit: '',
      source: CLAUSE_8_7_3,
    },
    {
      symbol: 'l0',
      formula: 'max(α2 · α6 · lb, 0.3 · α6 · lb, 15 · φ, 200)',
      given: { α2, α6, lb: required, φ },
      result: inContact,
      unit: 'mm',
      source: CLAUSE_8_7_3,
    },
  ]
  if (over > 0) {
    working.push({
      symbol: 'l0 apart',
      formula: 'l0 + apart − min(4 · φ, 50)',
      given: { l0: inContact, apart, φ },
      result: length,
      unit: 'mm',
      source: CLAUSE_8_7_2,
      note: 'the code says 4φ or 50 mm: the lesser is taken',
    })
  }
  return known(value, working)
}

/** fctk,0.05, MPa: 5 % fractile of the tensile strength, not above that of C60/75 in bond. */
function lowTension(fck: number): { value: number; working: readonly Step[] } {
  if (fck <= 50) {
    const value = 0.7 * 0.3 * fck ** (2 / 3)
    return {
      value,
      working: [
        {
          symbol: 'fctk',
          formula: '0.7 · 0.3 · fck^(2 / 3)',
          given: { fck },
          result: value,
          unit: 'MPa',
          source: TABLE_3_1,
        },
      ],
    }
  }
  const value = 0.7 * 2.12 * Math.log(1 + (Math.min(fck, 60) + 8) / 10)
  return {
    value,
    working: [
      {
        symbol: 'fctk',
        formula: '0.7 · 2.12 · ln(1 + (min(fck, 60) + 8) / 10)',
        given: { fck },
        result: value,
        unit: 'MPa',
        source: { ...TABLE_3_1, status: 'from memory' },
        note: 'over C50/60; bond counts no more than C60/75',
      },
    ],
  }
}

export interface BondInput {
  /** Depth of fresh concrete below the bar, mm. */
  readonly below: number
  /** Depth of the pour, mm; null where not known. */
  readonly depth: number | null
}

/**
 * Bond condition of a bar that lies flat in the pour: good in a pour up to 250 mm deep, in the lowest 250 mm of a deeper one,
 * and 300 mm or more below the top of one of 600 mm or more; poor elsewhere and where the depth is not known.
 *
 * Source: EN 1992-1-1:2004 8.4.2, Figure 8.2 (from memory).
 */
export function bondCondition({ below, depth }: BondInput): 'good' | 'poor' {
  if (below <= 250) return 'good'
  if (depth === null) return 'poor'
  return depth >= 600 && depth - below >= 300 ? 'good' : 'poor'
}
