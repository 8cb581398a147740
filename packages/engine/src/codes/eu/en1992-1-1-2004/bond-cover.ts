import { notAboveZero } from '../../../working/guard.ts'
import type { Source } from '../../../working/source.ts'
import { known, type Worked } from '../../../working/worked.ts'

const CLAUSE: Source = { standard: 'EN 1992-1-1:2004', clause: '4.4.1.2, Table 4.2', status: 'from memory' }

/**
 * Least cover for bond, mm: the bar diameter, 5 more over 32 mm aggregate, and at least 10. Durability and fire ask for more and are
 * the designer's; what may be lost in placing is not in it. Aggregate not given counts as up to 32 mm.
 */
export function bondCover({
  diameter,
  aggregate,
}: {
  readonly diameter: number
  readonly aggregate: number | null
}): Worked<number> {
  const gaps = notAboveZero({ diameter })
  if (gaps.length > 0) return { known: false, gaps }
  const added = aggregate !== null && aggregate > 32 ? 5 : 0
  const value = Math.max(diameter + added, 10)
  return known(value, [
    {
      symbol: 'cmin,b',
      formula: 'max(φ + added, 10)',
      given: { φ: diameter, added },
      result: value,
      unit: 'mm',
      source: CLAUSE,
    },
  ])
}
