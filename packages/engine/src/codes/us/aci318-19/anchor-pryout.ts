import { notAboveZero } from '../../../working/guard.ts'
import { known, unknown, type Worked } from '../../../working/worked.ts'
import { clause } from './anchor-strength.ts'

/** Depth from which pry-out counts twice the breakout, mm: 2.5 in. */
const DEEP = 65

/**
 * Pry-out of a group in shear away from edges: nominal, kN, from its breakout.
 *
 * Source: ACI 318-19, 17.7.3 (from memory). Example: 100 mm deep, breakout 55.90 kN: 111.80 kN; 60 mm deep, 25.98 kN: 25.98 kN.
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
  const k = depth < DEEP ? 1 : 2
  const result = k * breakout
  return known(result, [
    {
      symbol: 'Vcp',
      formula: 'kcp Ncb',
      given: { kcp: k, Ncb: breakout },
      result,
      unit: 'kN',
      source: clause('17.7.3.1'),
      note: depth < DEEP ? 'hef below 65 mm' : 'hef 65 mm or more',
    },
  ])
}
