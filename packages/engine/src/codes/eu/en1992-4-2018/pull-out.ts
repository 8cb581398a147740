import { notAboveZero } from '../../../working/guard.ts'
import { known, unknown, type Worked } from '../../../working/worked.ts'
import type { PulloutInput } from '../../anchor-rules.ts'
import { clause, strengthGaps } from './fck.ts'

/**
 * Pull-out of one headed fastener: characteristic, kN.
 *
 * Source: EN 1992-4:2018, 7.2.1.5 (from memory). Example: 552.92 mm², 15 MPa, uncracked: 87.09 kN; cracked 62.20 kN.
 */
export function pullout({ strength, cracked, head }: PulloutInput): Worked<number> {
  const gaps = [...strengthGaps(strength), ...notAboveZero({ head })]
  if (gaps.length > 0) return unknown(...gaps)
  const k2 = cracked ? 7.5 : 10.5
  const result = (k2 * head * strength) / 1000
  return known(result, [
    {
      symbol: 'NRk,p',
      formula: 'k2 Ah fck / 1000',
      given: { k2, Ah: head, fck: strength },
      result,
      unit: 'kN',
      source: clause('7.2.1.5'),
      note: cracked ? 'cracked' : 'uncracked',
    },
  ])
}
