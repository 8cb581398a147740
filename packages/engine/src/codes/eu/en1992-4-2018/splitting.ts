import { belowZero, notAboveZero } from '../../../working/guard.ts'
import { known, unknown, type Worked } from '../../../working/worked.ts'
import type { SplittingInput } from '../../anchor-rules.ts'
import { basicCone } from './cone.ts'
import { clause, strengthGaps } from './fck.ts'
import { pullout } from './pull-out.ts'

const SPLITTING = '7.2.1.7'

/** Splitting is not asked beyond this many product edge distances: one fastener, a group. */
export const SPLITTING_FAR = [1, 1.2] as const

/**
 * Splitting under load of one fastener or a group: characteristic, kN, with edge distance and spacing of the product.
 *
 * Of one fastener far from edges the lesser of cone and pull-out is taken; the thickness is not counted in its favour (ψh,sp 1).
 *
 * Source: EN 1992-4:2018, 7.2.1.7 (from memory). Example: 20 MPa, 100 mm, c,sp 200, one edge at 150, head 552.92 mm², squares of 350 × 400 mm left: 45.97 kN.
 */
export function splitting(input: SplittingInput): Worked<number> {
  const { strength, cracked, depth, head, area, edge, eccentricity, product } = input
  const [ex, ey] = eccentricity
  const gaps = [
    ...strengthGaps(strength),
    ...notAboveZero({
      depth,
      head,
      area,
      edge,
      'splitting.edge': product.edge,
      'splitting.spacing': product.spacing,
    }),
    ...belowZero({ ex, ey }),
  ]
  if (gaps.length > 0) return unknown(...gaps)
  const pulled = pullout({ strength, cracked, head })
  if (!pulled.known) return pulled
  const cone = basicCone(strength, depth, cracked)
  const basic = Math.min(pulled.value, cone)
  const whole = product.spacing ** 2
  const ψs = Math.min(1, 0.7 + (0.3 * edge) / product.edge)
  const ψre = Math.min(1, 0.5 + depth / 200)
  const ψec = 1 / ((1 + (2 * ex) / product.spacing) * (1 + (2 * ey) / product.spacing))
  const result = (area / whole) * ψs * ψre * ψec * basic
  return known(result, [
    {
      symbol: 'N⁰Rk,sp',
      formula: 'min(NRkp, NRkc)',
      given: { NRkp: pulled.value, NRkc: cone },
      result: basic,
      unit: 'kN',
      source: clause(`${SPLITTING}(2)`),
    },
    {
      symbol: 'A⁰c,N sp',
      formula: 's²',
      given: { s: product.spacing },
      result: whole,
      unit: 'mm²',
      source: clause(`${SPLITTING}(2)`),
    },
    {
      symbol: 'ψs,N sp',
      formula: 'min(1, 0.7 + 0.3 c / csp)',
      given: { c: edge, csp: product.edge },
      result: ψs,
      unit: '',
      source: clause(`${SPLITTING}(2)`),
    },
    {
      symbol: 'ψre,N sp',
      formula: 'min(1, 0.5 + h / 200)',
      given: { h: depth },
      result: ψre,
      unit: '',
      source: clause(`${SPLITTING}(2)`),
    },
    {
      symbol: 'ψec,N sp',
      formula: '1 / ((1 + 2 ex / s) (1 + 2 ey / s))',
      given: { ex, ey, s: product.spacing },
      result: ψec,
      unit: '',
      source: clause(`${SPLITTING}(2)`),
    },
    {
      symbol: 'NRk,sp',
      formula: 'A / A0 ψs ψre ψec N0',
      given: { A: area, A0: whole, ψs, ψre, ψec, N0: basic },
      result,
      unit: 'kN',
      source: clause(`${SPLITTING}(2)`),
      note: 'thickness not counted in its favour',
    },
  ])
}
