import { notAboveZero } from '../../../working/guard.ts'
import type { Source } from '../../../working/source.ts'
import { known, unknown, type Worked } from '../../../working/worked.ts'

const NOMINAL: Source = { standard: 'EN 1992-1-1:2004', clause: '4.4.1.1, (4.1)', status: 'seen' }

/** What may be lost in placing is at most this, mm; less only by 4.4.1.3(3). */
const DEVIATION = 10

/**
 * Nominal cover for the drawing, mm: the designer's least cover and what may be lost in placing. Less than 10 mm is allowed for the second where
 * cover is measured: 5 to 10 under quality assurance, 0 to 10 where an accurate device is used and members that do not conform are rejected
 * (4.4.1.3(3)).
 *
 * Unknown for a deviation outside 0 to 10 mm. Example: 25 and 10: 35 mm.
 */
export function nominalCover({
  least,
  deviation,
}: {
  /** c_min, mm: the largest of bond, durability and 10 mm. */
  readonly least: number
  /** Δc_dev, mm. */
  readonly deviation: number
}): Worked<number> {
  const gaps = notAboveZero({ least })
  if (gaps.length > 0) return { known: false, gaps }
  if (!(deviation >= 0 && deviation <= DEVIATION)) {
    return unknown(`deviation: 0 to ${DEVIATION} mm, found ${deviation}`)
  }
  const cover = Math.max(least, 10) + deviation
  return known(cover, [
    {
      symbol: 'c_nom',
      formula: 'max(c_min, 10) + Δc_dev',
      given: { c_min: least, Δc_dev: deviation },
      result: cover,
      unit: 'mm',
      source: NOMINAL,
    },
  ])
}
