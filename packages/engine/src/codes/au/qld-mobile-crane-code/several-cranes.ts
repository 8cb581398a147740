import { notAboveZero } from '../../../working/guard.ts'
import type { Source } from '../../../working/source.ts'
import { known, unknown, type Worked } from '../../../working/worked.ts'

const SEVERAL_CRANES: Source = {
  standard: 'Mobile crane code of practice, Queensland, edition not noted',
  clause: '14.3',
  status: 'seen',
}

/** What is added to the share of each crane, by the number of cranes; four stands for more. */
const ADDED: Readonly<Record<number, number>> = { 2: 0.2, 3: 0.33, 4: 0.5 }

/**
 * What each of several cranes must be rated for at its radius, kg: its share and 20 % with two, 33 % with three, 50 % with four and more, whose
 * motions are not coupled. One crane: its load.
 *
 * Unknown for a share not above 0 and a number of cranes that is not whole.
 *
 * Source: Queensland, Mobile crane code of practice 14.3 (seen).
 * Example: 6750 kg shared by two: 3375 kg each, rated for 4050 kg.
 */
export function severalCranes({
  share,
  cranes,
}: {
  /** Greatest share of one crane, kg, everything below its head in it. */
  readonly share: number
  readonly cranes: number
}): Worked<number> {
  const gaps = notAboveZero({ share, cranes })
  if (gaps.length > 0) return unknown(...gaps)
  if (!Number.isInteger(cranes)) return unknown('cranes: a whole number')
  if (cranes === 1) return known(share, [])
  const added = ADDED[Math.min(cranes, 4)] ?? 0
  const rating = share * (1 + added)
  return known(rating, [
    {
      symbol: 'm crane',
      formula: 'm (1 + a)',
      given: { m: share, a: added },
      result: rating,
      unit: 'kg',
      source: SEVERAL_CRANES,
      note: `${cranes} cranes, motions not coupled`,
    },
  ])
}
