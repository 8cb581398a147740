import { belowZero, notAboveZero } from '../../../working/guard.ts'
import { known, unknown, type Worked } from '../../../working/worked.ts'
import type { BlowoutInput } from '../../anchor-rules.ts'
import { clause, strengthGaps } from './fck.ts'

/** Fasteners nearer than 4 edge distances along the edge are one row. */
export const BLOWOUT_ROW = 4

/** Asked where the edge is not farther than half the depth: 7.2.1.8(1). */
export function blowoutAsked({ edge, depth }: { readonly edge: number; readonly depth: number }): boolean {
  return edge <= 0.5 * depth
}

const BLOWOUT = '7.2.1.8'

/**
 * Blow-out at a side face of one fastener or of a row along the edge: characteristic of the whole row, kN.
 *
 * `width` is what stands of the side face along the edge, `below` the concrete below the head: beyond two edge distances neither counts.
 *
 * Source: EN 1992-4:2018, 7.2.1.8 (from memory). Example: 15 MPa, 75 mm from the edge, 552.92 mm², uncracked: 83.33 kN.
 */
export function blowout(input: BlowoutInput): Worked<number> {
  const { strength, cracked, head, edge, side, count, length, depth, width, below, eccentricity } = input
  const gaps = [
    ...strengthGaps(strength),
    ...notAboveZero({ head, edge, count, depth, width, below, ...(side === null ? {} : { side }) }),
    ...belowZero({ length, eccentricity }),
  ]
  if (gaps.length > 0) return unknown(...gaps)
  const k5 = cracked ? 8.7 : 12.2
  const basic = (k5 * edge * Math.sqrt(head) * Math.sqrt(strength)) / 1000
  const whole = (4 * edge) ** 2
  const area = width * (Math.min(2 * edge, depth) + Math.min(2 * edge, below))
  const ψs = side === null ? 1 : Math.min(1, 0.7 + (0.3 * side) / (2 * edge))
  const spacing = count > 1 ? length / (count - 1) : 0
  const ψg =
    count > 1
      ? Math.max(1, Math.sqrt(count) + ((1 - Math.sqrt(count)) * Math.min(spacing, 4 * edge)) / (4 * edge))
      : 1
  const ψec = 1 / (1 + (2 * eccentricity) / (4 * edge))
  const result = (area / whole) * ψs * ψg * ψec * basic
  return known(result, [
    {
      symbol: 'N⁰Rk,cb',
      formula: 'k5 c1 √Ah √fck / 1000',
      given: { k5, c1: edge, Ah: head, fck: strength },
      result: basic,
      unit: 'kN',
      source: clause(`${BLOWOUT}(2)`),
      note: cracked ? 'cracked' : 'uncracked',
    },
    {
      symbol: 'A⁰c,Nb',
      formula: '(4 c1)²',
      given: { c1: edge },
      result: whole,
      unit: 'mm²',
      source: clause(`${BLOWOUT}(3)`),
    },
    {
      symbol: 'Ac,Nb',
      formula: 'b (min(2 c1, h) + min(2 c1, f))',
      given: { b: width, c1: edge, h: depth, f: below },
      result: area,
      unit: 'mm²',
      source: clause(`${BLOWOUT}(3)`),
      note: 'b along the side face, f below the head',
    },
    {
      symbol: 'ψs,Nb',
      formula: side === null ? '1' : 'min(1, 0.7 + 0.3 c2 / (2 c1))',
      given: side === null ? {} : { c2: side, c1: edge },
      result: ψs,
      unit: '',
      source: clause(`${BLOWOUT}(4)`),
    },
    {
      symbol: 'ψg,Nb',
      formula: count > 1 ? 'max(1, √n + (1 − √n) min(s2, 4 c1) / (4 c1))' : '1',
      given: count > 1 ? { n: count, s2: spacing, c1: edge } : {},
      result: ψg,
      unit: '',
      source: clause(`${BLOWOUT}(5)`),
      note: count > 1 ? `${count} along the edge, s2 the mean spacing` : 'one fastener',
    },
    {
      symbol: 'ψec,Nb',
      formula: '1 / (1 + 2 e / (4 c1))',
      given: { e: eccentricity, c1: edge },
      result: ψec,
      unit: '',
      source: clause(`${BLOWOUT}(6)`),
    },
    {
      symbol: 'NRk,cb',
      formula: 'A / A0 ψs ψg ψec N0',
      given: { A: area, A0: whole, ψs, ψg, ψec, N0: basic },
      result,
      unit: 'kN',
      source: clause(`${BLOWOUT}(1)`),
    },
  ])
}
