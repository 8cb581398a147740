import { notAboveZero } from '../../../working/guard.ts'
import { known, unknown, type Worked } from '../../../working/worked.ts'
import type { PulloutInput } from '../../anchor-rules.ts'
import { anchorStrength, clause } from './anchor-strength.ts'

/**
 * Pull-out of one headed anchor: the concrete under its head crushes; nominal, kN.
 *
 * Source: ACI 318-19, 17.6.3 (from memory). Example: 552.92 mm², 15 MPa, uncracked: 92.89 kN.
 */
export function pullout({ strength, cracked, head }: PulloutInput): Worked<number> {
  const gaps = notAboveZero({ strength, head })
  if (gaps.length > 0) return unknown(...gaps)
  const { f, step } = anchorStrength(strength)
  const ψ = cracked ? 1 : 1.4
  const result = (ψ * 8 * head * f) / 1000
  return known(result, [
    step,
    {
      symbol: 'Npn',
      formula: 'ψ 8 Abrg f / 1000',
      given: { ψ, Abrg: head, f },
      result,
      unit: 'kN',
      source: clause('17.6.3.2.2'),
      note: cracked ? 'cracked' : 'uncracked: ψc,P 1.4 (17.6.3.3)',
    },
  ])
}
