import type { Source } from '../../../working/source.ts'
import { known, unknown, type Worked } from '../../../working/worked.ts'

export const EN_818_4: Source = {
  standard: 'EN 818-4:1996+A1:2008, EN 13414-1:2003+A2:2008',
  clause: 'rating of multi-leg slings',
  status: 'from memory',
}

/** Legs that the table counts of three and four. */
export const SLINGS_COUNTED = 3

/** By legs, with the greatest angle of a leg from the vertical up to which a factor holds. */
const FACTORS: Readonly<Record<number, readonly (readonly [angle: number, factor: number])[]>> = {
  2: [
    [45, 1.4],
    [60, 1],
  ],
  3: [
    [45, 2.1],
    [60, 1.5],
  ],
  4: [
    [45, 2.1],
    [60, 1.5],
  ],
}

/**
 * What a set of legs is rated for, as a multiple of the rating of one leg. 2.1 is 3 cos 45°: of four legs the table counts three.
 *
 * Unknown for other numbers of legs and above 60° from the vertical.
 *
 * Source: EN 818-4 and EN 13414-1, uniform load method (from memory).
 * Example: four legs at 45°: 2.1; at 45.1°: 1.5.
 */
export function modeFactor({
  legs,
  angle,
}: {
  readonly legs: number
  /** Greatest angle of a leg from the vertical, degrees. */
  readonly angle: number
}): Worked<number> {
  const row = FACTORS[legs]
  if (row === undefined) return unknown(`mode factor of ${legs} legs: the sling table has 2, 3 and 4`)
  if (!(angle >= 0)) return unknown('angle of the legs: a number not below 0')
  const found = row.find(([most]) => angle <= most * (1 + 1e-12))
  if (found === undefined) return unknown(`mode factor at ${angle.toFixed(1)}°: the sling table ends at 60°`)
  return known(found[1], [
    {
      symbol: 'M',
      formula: 'row of legs and angle',
      given: { legs, β: angle },
      result: found[1],
      unit: '',
      source: EN_818_4,
      by: 'table',
      note: `up to ${found[0]}° from the vertical`,
    },
  ])
}
