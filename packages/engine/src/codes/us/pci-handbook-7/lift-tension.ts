import { notAboveZero } from '../../../working/guard.ts'
import type { Source } from '../../../working/source.ts'
import { known, unknown, type Worked } from '../../../working/worked.ts'

const UNCRACKED: Source = {
  standard: 'PCI Design Handbook, 7th edition',
  clause: '8.3.1, uncracked handling',
  status: 'from memory',
}

/**
 * Tension that an uncracked flat panel may have during handling: 0.415 √f′c, the modulus of rupture over 1.5; MPa.
 *
 * `strength`: compressive strength at that hour, MPa, above 0. Normal-weight concrete.
 *
 * Source: PCI Design Handbook, 7th edition (5 √f′c in psi; from memory).
 * Example: 15 MPa: 1.607 MPa.
 */
export function liftTension({ strength }: { readonly strength: number }): Worked<number> {
  const gaps = notAboveZero({ strength })
  if (gaps.length > 0) return unknown(...gaps)
  const tension = 0.415 * Math.sqrt(strength)
  return known(tension, [
    {
      symbol: 'ft',
      formula: '0.415 √f′c',
      given: { 'f′c': strength },
      result: tension,
      unit: 'MPa',
      source: UNCRACKED,
    },
  ])
}
