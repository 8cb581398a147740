import type { Source } from '../../../working/source.ts'
import { known, type Worked } from '../../../working/worked.ts'
import { halfUsed, lapGaps } from '../../lap-limits.ts'
import type { LapInput, LapLength } from '../../steel-rules.ts'

const BASIC: Source = { standard: 'AS 3600:2018', clause: '13.1.2.2', status: 'seen' }
const FLOOR: Source = { standard: 'AS 3600:2018', clause: '13.1.2.2', status: 'from memory' }
const LAP: Source = { standard: 'AS 3600:2018', clause: '13.2.2', status: 'from memory' }

/** Where the rules of development hold: yield and concrete in MPa, largest bar in mm. */
export const RANGE = {
  yield: [200, 600],
  concrete: [20, 100],
  largest: 40,
  standard: 'AS 3600:2018',
} as const

const TOP_BAR = 300

/** Bars of a lap nearer than this many diameters count as touching. */
const CONTACT = 3

/** Epoxy-coated bar, from memory. */
const EPOXY = 1.5

/** Lap factor; 1.0 where at least twice the steel required is there and at most half the bars are lapped at the section. */
const K7 = { full: 1.25, half: 1 } as const

/**
 * Basic development and lap of a straight deformed bar in tension, mm.
 *
 * The least length 0.058 fsy k1 db is held against the lap itself, not against the development before k7. Bars 3 db or more
 * apart take the longer of both members' rules, wide and narrow. Unknown outside yield 200 to 600 MPa, concrete 20 to 100 MPa,
 * bars over 40 mm. Example: N12, 25 MPa, cd 20: development 450, lap 562.5 mm.
 */
export function lap(input: LapInput): Worked<LapLength> {
  const gaps = lapGaps(input, RANGE)
  if (gaps.length > 0) return { known: false, gaps }
  const { diameter: db, yield: fsy, cover, gap, below, apart } = input
  const fc = Math.min(input.concrete, 65)
  const k1 = below > TOP_BAR ? 1.3 : 1
  const k2 = (132 - db) / 100
  const cd = Math.min(cover, gap / 2)
  const k3 = Math.max(0.7, Math.min(1, 1 - (0.15 * (cd - db)) / db))
  const coat = input.epoxy === true ? EPOXY : 1
  const raw = (0.5 * coat * k1 * k3 * fsy * db) / (k2 * Math.sqrt(fc))
  const floor = 0.058 * fsy * k1 * db
  const development = Math.max(raw, floor)
  const sb = apart < CONTACT * db ? 0 : apart
  const isHalf = halfUsed(input)
  const k7 = isHalf ? K7.half : K7.full
  const length = Math.max(k7 * raw, raw + 1.5 * sb, floor)
  const value: LapLength = {
    development,
    length,
    factors: [
      { symbol: 'k1', value: k1 },
      { symbol: 'k2', value: k2 },
      { symbol: 'k3', value: k3 },
      { symbol: 'k7', value: k7 },
    ],
    gaps: [],
    source: LAP,
  }
  return known(value, [
    {
      symbol: 'k2',
      formula: '(132 − db) / 100',
      given: { db },
      result: k2,
      unit: '',
      source: BASIC,
    },
    {
      symbol: 'cd',
      formula: 'min(cover, gap / 2)',
      given: { cover, gap },
      result: cd,
      unit: 'mm',
      source: BASIC,
    },
    {
      symbol: 'k3',
      formula: 'max(0.7, min(1, 1 − 0.15 · (cd − db) / db))',
      given: { cd, db },
      result: k3,
      unit: '',
      source: BASIC,
    },
    {
      symbol: 'L',
      formula: '0.5 · coat · k1 · k3 · fsy · db / (k2 · √(min(fc, 65)))',
      given: { coat, k1, k2, k3, fsy, db, fc: input.concrete },
      result: raw,
      unit: 'mm',
      source: BASIC,
      note: k1 > 1 ? 'more than 300 mm of fresh concrete below' : 'not a top bar',
    },
    {
      symbol: 'Lsy.tb',
      formula: 'max(L, 0.058 · fsy · k1 · db)',
      given: { L: raw, fsy, k1, db },
      result: development,
      unit: 'mm',
      source: FLOOR,
    },
    {
      symbol: 'Lsy.t.lap',
      formula: 'max(k7 · L, L + 1.5 · sb, 0.058 · fsy · k1 · db)',
      given: { k7, L: raw, sb, fsy, k1, db },
      result: length,
      unit: 'mm',
      source: LAP,
      note: sb > 0 ? 'bars of the lap 3 db or more apart' : 'bars of the lap count as touching',
    },
  ])
}
