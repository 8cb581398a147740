import { notAboveZero } from '../../../working/guard.ts'
import { known, unknown, type Worked } from '../../../working/worked.ts'
import { clause } from './fck.ts'

/** Depth from which k8 is 2, mm. */
const DEEP = 60

/**
 * Pry-out of a group in shear: characteristic, kN, from its cone. k8 as for headed fasteners without product data.
 *
 * Source: EN 1992-4:2018, 7.2.2.4 (from memory). Example: 100 mm deep, cone 56.80 kN: 113.6 kN.
 */
export function pryout({
  depth,
  breakout,
}: {
  readonly depth: number
  readonly breakout: number
}): Worked<number> {
  const gaps = notAboveZero({ depth, breakout })
  if (gaps.length > 0) return unknown(...gaps)
  const k8 = depth < DEEP ? 1 : 2
  const result = k8 * breakout
  return known(result, [
    {
      symbol: 'VRk,cp',
      formula: 'k8 NRkc',
      given: { k8, NRkc: breakout },
      result,
      unit: 'kN',
      source: clause('7.2.2.4'),
      note: depth < DEEP ? 'hef below 60 mm' : 'hef 60 mm or more',
    },
  ])
}
