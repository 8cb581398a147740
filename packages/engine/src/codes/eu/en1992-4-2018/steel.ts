import { notAboveZero } from '../../../working/guard.ts'
import { known, unknown, type Worked } from '../../../working/worked.ts'
import { clause } from './fck.ts'

/**
 * Steel of one fastener across its axis, from its steel along it: characteristic, kN. k6 0.5 and k7 0.8, the lowest of the clause: they
 * hold for strong and for brittle steel. No lever arm.
 *
 * Source: EN 1992-4:2018, 7.2.2.3.1 (from memory). Example: 100 kN along the axis: 40 kN.
 */
export function steelShear({ steel }: { readonly steel: number }): Worked<number> {
  const gaps = notAboveZero({ steel })
  if (gaps.length > 0) return unknown(...gaps)
  const result = 0.8 * 0.5 * steel
  return known(result, [
    {
      symbol: 'VRk,s',
      formula: '0.8 · 0.5 NRks',
      given: { NRks: steel },
      result,
      unit: 'kN',
      source: clause('7.2.2.3.1'),
      note: 'k7 0.8, k6 0.5: steel strength and ductility not told apart',
    },
  ])
}
