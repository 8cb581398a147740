import { notAboveZero } from '../../../working/guard.ts'
import { known, unknown, type Worked } from '../../../working/worked.ts'
import { clause } from './anchor-strength.ts'

/**
 * Steel of one cast-in headed bolt across its axis, from its steel along it: nominal, kN. No grout pad, no lever arm.
 *
 * Source: ACI 318-19, 17.7.1.2(b) (from memory). Example: 100 kN along the axis: 60 kN.
 */
export function steelShear({ steel }: { readonly steel: number }): Worked<number> {
  const gaps = notAboveZero({ steel })
  if (gaps.length > 0) return unknown(...gaps)
  const result = 0.6 * steel
  return known(result, [
    {
      symbol: 'Vsa',
      formula: '0.6 Nsa',
      given: { Nsa: steel },
      result,
      unit: 'kN',
      source: clause('17.7.1.2'),
      note: 'a headed bolt; a welded stud has more',
    },
  ])
}
