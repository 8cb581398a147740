import { notAboveZero } from '../working/guard.ts'
import { commonPractice } from '../working/source.ts'
import { known, unknown, type Worked } from '../working/worked.ts'

/** Allowance on the computed mass for thickness, cast-ins and what sticks to the panel. */
export const MASS_ALLOWANCE = 0.05

/**
 * Mass that crane and gear are held against: the computed mass plus 5 %, kg. A weighed panel overrules it.
 *
 * Source: common practice, no source. Example: 6750 kg: 7087.5 kg.
 */
export function hookMass({ mass }: { readonly mass: number }): Worked<number> {
  const gaps = notAboveZero({ mass })
  if (gaps.length > 0) return unknown(...gaps)
  const value = mass * (1 + MASS_ALLOWANCE)
  return known(
    value,
    [
      {
        symbol: 'm hook',
        formula: 'm (1 + a)',
        given: { m: mass, a: MASS_ALLOWANCE },
        result: value,
        unit: 'kg',
        source: commonPractice('computed mass plus an allowance, unless weighed'),
      },
    ],
    [
      {
        field: 'allowance on mass',
        value: MASS_ALLOWANCE,
        unit: '',
        why: 'not weighed: thickness and cast-ins may add to the computed mass',
      },
    ],
  )
}
