import { belowZero } from '../../../working/guard.ts'
import { known, unknown, type Worked } from '../../../working/worked.ts'
import type { AnchorInteraction, AnchorRatios } from '../../anchor-rules.ts'
import { clause } from './anchor-strength.ts'

/** Below this share of the design resistance the other may be used in full. */
const SLIGHT = 0.2
const LIMIT = 1.2

/**
 * Tension and shear together, each its greatest ratio of demand to design resistance. Nothing is asked where either is 0.2 or less.
 *
 * Source: ACI 318-19, 17.8 (from memory). Example: 0.60 and 0.50: 1.10 of 1.2.
 */
export function interaction(ratios: AnchorRatios): Worked<readonly AnchorInteraction[]> {
  const gaps = belowZero({ ...ratios })
  if (gaps.length > 0) return unknown(...gaps)
  const tension = Math.max(ratios.steelTension, ratios.concreteTension)
  const shear = Math.max(ratios.steelShear, ratios.concreteShear)
  if (tension <= SLIGHT || shear <= SLIGHT) return known([], [])
  const value = tension + shear
  const source = clause('17.8.3')
  return known(
    [{ what: 'tension and shear together', tension, shear, value, limit: LIMIT, source }],
    [
      {
        symbol: 'N + V',
        formula: 'rN + rV',
        given: { rN: tension, rV: shear },
        result: value,
        unit: '',
        source,
        note: `at most ${LIMIT}`,
      },
    ],
  )
}
