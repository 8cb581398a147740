import { notAboveZero } from '../../../working/guard.ts'
import type { Source } from '../../../working/source.ts'
import { known, unknown, type Worked } from '../../../working/worked.ts'

const CLAUSE: Source = { standard: 'AS 3600:2009', clause: '4.10.2', status: 'seen' }

/** Cover for placing concrete: not below bar size and largest aggregate, mm. Unknown without the aggregate. */
export function bondCover({
  diameter,
  aggregate,
}: {
  readonly diameter: number
  readonly aggregate: number | null
}): Worked<number> {
  const gaps = notAboveZero({ diameter })
  if (gaps.length > 0) return { known: false, gaps }
  if (!(aggregate !== null && aggregate > 0 && Number.isFinite(aggregate))) {
    return unknown('concrete.aggregate: size of the largest aggregate, mm')
  }
  const value = Math.max(diameter, aggregate)
  return known(value, [
    {
      symbol: 'c',
      formula: 'max(d, dg)',
      given: { d: diameter, dg: aggregate },
      result: value,
      unit: 'mm',
      source: CLAUSE,
    },
  ])
}
