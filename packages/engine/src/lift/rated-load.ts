import { notAboveZero } from '../working/guard.ts'
import { commonPractice, enteredBy } from '../working/source.ts'
import { known, type Step, unknown, type Worked } from '../working/worked.ts'

export interface RatedInsert {
  readonly mark: string
  /** Maker's rated load, kN, at `ratedStrength` and above. */
  readonly rated: number
  /** Strength at which the maker rates it, MPa. */
  readonly ratedStrength: number
  /** Strength below which the maker allows no lift, MPa. */
  readonly leastStrength: number
}

/** The bare arithmetic: `N √(f / fref)`, never above N. */
export function scaledLoad(rated: number, ratedStrength: number, strength: number): number {
  return rated * Math.min(1, Math.sqrt(strength / ratedStrength))
}

const SCALING = commonPractice(
  'rated load of a concrete-governed insert goes with the root of strength, never above the table',
)

/**
 * Maker's rated load at the strength of the hour: scaled down with the root of the strength, never up; kN.
 *
 * Unknown below the maker's least strength and for any value not above 0. Steel and clutch do not scale: that is why
 * it is never raised.
 *
 * Source: common practice, no source.
 * Example: 50 kN at 15 MPa: 44.72 kN at 12 MPa, 50 kN at 20 MPa.
 */
export function ratedLoad({
  insert,
  strength,
}: {
  readonly insert: RatedInsert
  readonly strength: number
}): Worked<number> {
  const { mark, rated, ratedStrength, leastStrength } = insert
  const gaps = notAboveZero({ rated, ratedStrength, leastStrength, strength })
  if (gaps.length > 0) return unknown(...gaps)
  if (strength < leastStrength) {
    return unknown(`rated load of ${mark} below ${leastStrength} MPa: the maker gives none`)
  }
  const load = scaledLoad(rated, ratedStrength, strength)
  const step: Step = {
    symbol: 'Nr',
    formula: 'N √min(1, f / fr)',
    given: { N: rated, f: strength, fr: ratedStrength },
    result: load,
    unit: 'kN',
    source: SCALING,
    note: strength >= ratedStrength ? 'at or above the rated strength: as in the table' : 'scaled down',
  }
  return known(load, [
    {
      symbol: 'N',
      formula: 'rated load',
      given: { insert: mark, fr: ratedStrength },
      result: rated,
      unit: 'kN',
      source: enteredBy(`the yard: insert ${mark}`),
      by: 'table',
    },
    step,
  ])
}

/**
 * Least strength at which an insert is rated for a load: MPa, not below the maker's least.
 *
 * Unknown where the load is above the table: no strength raises a rating.
 *
 * Source: common practice, no source.
 * Example: 45 kN on an insert of 50 kN at 15 MPa: 12.15 MPa; 60 kN: unknown.
 */
export function leastStrengthFor({
  insert,
  load,
}: {
  readonly insert: RatedInsert
  readonly load: number
}): Worked<number> {
  const { mark, rated, ratedStrength, leastStrength } = insert
  const gaps = notAboveZero({ rated, ratedStrength, leastStrength, load })
  if (gaps.length > 0) return unknown(...gaps)
  if (load > rated) return unknown(`strength for ${load} kN: above the rated ${rated} kN of ${mark}`)
  const strength = Math.max(leastStrength, ratedStrength * (load / rated) ** 2)
  return known(strength, [
    {
      symbol: 'f',
      formula: 'max(fl, fr (F / N)²)',
      given: { fl: leastStrength, fr: ratedStrength, F: load, N: rated },
      result: strength,
      unit: 'MPa',
      source: SCALING,
    },
  ])
}
