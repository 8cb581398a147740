import type { Source } from '../../../working/source.ts'
import { known, unknown, type Worked } from '../../../working/worked.ts'
import { halfUsed, lapGaps } from '../../lap-limits.ts'
import type { LapInput, LapLength } from '../../steel-rules.ts'
import { usBar } from '../astm/bars.ts'

const GENERAL: Source = { standard: 'ACI 318-19', clause: '25.4.2.4', status: 'seen' }
const FACTORS: Source = { standard: 'ACI 318-19', clause: 'Table 25.4.2.5', status: 'from memory' }
const LAP: Source = { standard: 'ACI 318-19', clause: '25.5.2.1', status: 'from memory' }
const APART: Source = { standard: 'ACI 318-19', clause: '25.5.1.3', status: 'seen' }

/** Where the rules of development hold: yield and concrete in MPa, largest bar in mm. */
export const RANGE = { yield: [270, 700], concrete: [17, 140], largest: 60, standard: 'ACI 318-19' } as const

/** 1 psi in MPa. */
const PSI = 0.006894757293168
const INCH = 25.4

/** Class A: at least twice the steel required, at most half the bars lapped within the lap's length. */
const CLASS_A = 1
/** Class B: every other case. */
const CLASS_B = 1.3

/** Largest yields that still count as grade 60 and grade 80, MPa: between the nominal ones, so that 420 and 550 are what they are called. */
const GRADE_60 = 425
const GRADE_80 = 560

/**
 * Development and lap, class A or B, of a straight deformed bar in tension, mm: general equation with Ktr 0, normal-weight
 * concrete; worked in inches and psi as the code has it.
 *
 * The class B lap is 1.3 × the development before its own least length; class A needs `spare` of 2 and a share of 50 at most. `length` is null where the bars of a lap are further apart than a
 * fifth of it or 6 in. Unknown for diameters that are no US bar and for No. 14 and 18. Example: No. 5, 5000 psi (34.47 MPa), grade 60
 * (413.7 MPa), cover 0.75 in: 475 and 618 mm.
 */
export function lap(input: LapInput): Worked<LapLength> {
  const gaps = lapGaps(input, RANGE)
  if (gaps.length > 0) return { known: false, gaps }
  const bar = usBar(input.diameter)
  if (bar === null) return unknown(`diameter: no US bar within 0.5 mm of ${input.diameter} mm`)
  if (bar.number > 11) return unknown(`diameter: No. ${bar.number} is not lapped in tension`)
  const db = bar.inches
  const fy = input.yield / PSI
  const root = Math.min(Math.sqrt(input.concrete / PSI), 100)
  const ψt = input.below > 12 * INCH ? 1.3 : 1
  const ψe = input.epoxy === true ? epoxyFactor(input, db * INCH) : 1
  // Together they count for no more than this.
  const ψte = Math.min(ψt * ψe, 1.7)
  const ψs = bar.number <= 6 ? 0.8 : 1
  const ψg = input.yield <= GRADE_60 ? 1 : input.yield <= GRADE_80 ? 1.15 : 1.3
  const cb = Math.min(input.cover / INCH + db / 2, (input.gap / INCH + db) / 2)
  const bracket = Math.min(2.5, cb / db)
  const raw = ((3 / 40) * (fy / root) * ψte * ψs * ψg * db) / bracket
  const development = Math.max(raw, 12) * INCH
  const isClassA = halfUsed(input)
  const times = isClassA ? CLASS_A : CLASS_B
  const length = Math.max(times * raw, 12) * INCH
  const widest = Math.min(length / 5, 6 * INCH)
  const tooFar = input.apart > widest
  const value: LapLength = {
    development,
    length: tooFar ? null : length,
    factors: [
      { symbol: 'ψt', value: ψt },
      { symbol: 'ψe', value: ψe },
      { symbol: 'ψs', value: ψs },
      { symbol: 'ψg', value: ψg },
      { symbol: isClassA ? 'class A' : 'class B', value: times },
    ],
    gaps: tooFar
      ? [`apart: bars of this lap may be ${widest.toFixed(0)} mm apart at most (${APART.clause})`]
      : [],
    source: LAP,
  }
  return known(value, [
    {
      symbol: '√fc',
      formula: 'min(√(fcMPa / psi), 100)',
      given: { fcMPa: input.concrete, psi: PSI },
      result: root,
      unit: 'psi^½',
      source: GENERAL,
    },
    {
      symbol: 'fy',
      formula: 'fyMPa / psi',
      given: { fyMPa: input.yield, psi: PSI },
      result: fy,
      unit: 'psi',
      source: GENERAL,
    },
    {
      symbol: 'cb',
      formula: 'min(cover / 25.4 + db / 2, (gap / 25.4 + db) / 2)',
      given: { cover: input.cover, gap: input.gap, db },
      result: cb,
      unit: 'in',
      source: GENERAL,
    },
    {
      symbol: 'ψt ψe ψs ψg',
      formula: 'min(ψt · ψe, 1.7) · ψs · ψg',
      given: { ψt, ψe, ψs, ψg },
      result: ψte * ψs * ψg,
      unit: '',
      source: FACTORS,
      note: `No. ${bar.number}, ${ψe > 1 ? 'epoxy-coated' : 'uncoated'}; ${ψt > 1 ? 'more than 12 in of fresh concrete below' : 'not a top bar'}`,
    },
    {
      symbol: 'l',
      formula: '3 / 40 · fy / root · ψ · db / min(2.5, cb / db)',
      given: { fy, root, ψ: ψte * ψs * ψg, db, cb },
      result: raw,
      unit: 'in',
      source: GENERAL,
    },
    {
      symbol: 'ld',
      formula: 'max(l, 12) · 25.4',
      given: { l: raw },
      result: development,
      unit: 'mm',
      source: GENERAL,
    },
    {
      symbol: 'lst',
      formula: 'max(k · l, 12) · 25.4',
      given: { k: times, l: raw },
      result: length,
      unit: 'mm',
      source: LAP,
      note: isClassA ? 'class A: twice the steel required, at most half lapped' : 'class B',
    },
  ])
}

/** Epoxy-coated: 1.5 with cover under 3 db or clear spacing under 6 db, else 1.2. */
function epoxyFactor({ cover, gap }: LapInput, diameter: number): number {
  return cover < 3 * diameter || gap < 6 * diameter ? 1.5 : 1.2
}
