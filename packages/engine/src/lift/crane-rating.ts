import { enteredBy } from '../working/source.ts'
import { known, unknown, type Worked } from '../working/worked.ts'
import type { YardCrane } from '../yard/yard.ts'

/**
 * What a crane is rated for at a radius: kg, by its chart. Between two rows the smaller of the two holds, nothing is
 * interpolated; inside the first row the first row holds.
 *
 * Unknown beyond the last row and for a radius not above 0. Hook block, slings and beam count as load.
 *
 * Source: the yard's chart of that crane.
 * Example: rows [5000, 10000], [8000, 6000]: 6000 kg at 6000 mm.
 */
export function craneRating({
  crane,
  radius,
}: {
  readonly crane: YardCrane
  readonly radius: number
}): Worked<number> {
  if (!(radius > 0) || !Number.isFinite(radius)) return unknown('radius: a number above 0')
  const rows = [...crane.chart].sort((a, b) => a[0] - b[0])
  const outer = rows.findIndex(([at]) => at >= radius)
  const beyond = rows[outer]
  if (beyond === undefined)
    return unknown(`crane ${crane.mark}: its chart ends before a radius of ${radius} mm`)
  const before = rows[outer - 1]
  const rating = beyond[0] === radius ? beyond[1] : Math.min(beyond[1], before?.[1] ?? beyond[1])
  return known(rating, [
    {
      symbol: 'm rated',
      formula: 'row of the chart at or beyond the radius',
      given: { radius, row: beyond[0] },
      result: rating,
      unit: 'kg',
      source: enteredBy(`the yard: crane ${crane.mark}`),
      by: 'table',
    },
  ])
}
