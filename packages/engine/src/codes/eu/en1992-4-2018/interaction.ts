import { belowZero } from '../../../working/guard.ts'
import { known, type Step, unknown, type Worked } from '../../../working/worked.ts'
import type { AnchorInteraction, AnchorRatios } from '../../anchor-rules.ts'
import { clause } from './fck.ts'

/**
 * Tension and shear together: steel with squares, the other modes with the power 1.5 of their greatest ratios; each at most 1.
 *
 * Source: EN 1992-4:2018, 7.2.3 (from memory). Example: concrete 0.60 and 0.50: 0.8183.
 */
export function interaction(ratios: AnchorRatios): Worked<readonly AnchorInteraction[]> {
  const gaps = belowZero({ ...ratios })
  if (gaps.length > 0) return unknown(...gaps)
  const { steelTension, steelShear, concreteTension, concreteShear } = ratios
  const found: AnchorInteraction[] = []
  const working: Step[] = []
  const add = (what: string, tension: number, shear: number, power: number) => {
    if (!(tension > 0 && shear > 0)) return
    const value = tension ** power + shear ** power
    const source = clause('7.2.3')
    found.push({ what, tension, shear, value, limit: 1, source })
    working.push({
      symbol: what,
      formula: `rN^${power} + rV^${power}`,
      given: { rN: tension, rV: shear },
      result: value,
      unit: '',
      source,
      note: 'at most 1',
    })
  }
  add('steel, tension and shear together', steelTension, steelShear, 2)
  add('concrete, tension and shear together', concreteTension, concreteShear, 1.5)
  return known(found, working)
}
