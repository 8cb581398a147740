import { notAboveZero } from '../../../working/guard.ts'
import type { Source } from '../../../working/source.ts'
import { unknown, type Worked } from '../../../working/worked.ts'
import { bendMultiple } from '../../bend-multiple.ts'

const BETWEEN: Source = { standard: 'BS 8666:2005', clause: 'notes to the shape codes', status: 'seen' }

/** Sheet of preformed radii: from this radius on a bar is supplied straight and pulled into the curve, m. */
export const SUPPLIED_STRAIGHT: Source = { ...BETWEEN, clause: 'preformed radii' }

const STRAIGHT_FROM: Readonly<Record<number, number>> = {
  6: 2.5,
  8: 2.75,
  10: 3.5,
  12: 4.25,
  16: 7.5,
  20: 14,
  25: 30,
  32: 43,
  40: 58,
}

/** Least straight between two bends of a bar, mm. Example: 12 mm: 48 mm. */
export function leastBetweenBends({ diameter }: { readonly diameter: number }): Worked<number> {
  const gaps = notAboveZero({ diameter })
  if (gaps.length > 0) return { known: false, gaps }
  return bendMultiple({ diameter, times: 4, source: BETWEEN, note: 'straight between two bends' })
}

/** Whether a curve is so wide that the bar comes straight; unknown for sizes that the sheet does not list. */
export function suppliedStraight({
  diameter,
  radius,
}: {
  readonly diameter: number
  /** mm */
  readonly radius: number
}): Worked<boolean> {
  const gaps = notAboveZero({ diameter, radius })
  if (gaps.length > 0) return { known: false, gaps }
  const from = STRAIGHT_FROM[diameter]
  if (from === undefined) return unknown(`diameter: no preformed radius listed for ${diameter} mm`)
  const straight = radius > from * 1000
  return {
    known: true,
    value: straight,
    working: [
      {
        symbol: 'R',
        formula: 'row of the size, m',
        given: { d: diameter },
        result: from,
        unit: 'm',
        source: SUPPLIED_STRAIGHT,
        by: 'table',
        note: straight ? 'wider: the bar comes straight' : 'not wider: the bar is bent to it',
      },
    ],
  }
}
