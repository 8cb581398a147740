import { belowZero, notAboveZero } from '../../../working/guard.ts'
import { known, type Step, unknown, type Worked } from '../../../working/worked.ts'
import type { BlowoutInput } from '../../anchor-rules.ts'
import { anchorStrength, clause } from './anchor-strength.ts'

/** Anchors nearer than 6 edge distances along the edge are one row: 17.6.4.2. */
export const BLOWOUT_ROW = 6

/** Asked where the depth is above 2.5 edge distances: 17.6.4.1. */
export function blowoutAsked({ edge, depth }: { readonly edge: number; readonly depth: number }): boolean {
  return depth > 2.5 * edge
}

/**
 * Side-face blow-out of one headed anchor, or of a row along an edge: nominal of the whole row, kN.
 *
 * One anchor near a corner is reduced; a row is not, as the code has it: hold its end anchor against the corner by itself.
 *
 * Source: ACI 318-19, 17.6.4 (from memory). Example: 15 MPa, 75 mm from the edge, 552.92 mm²: 88.79 kN; two 300 mm apart 147.99 kN.
 */
export function blowout({ strength, head, edge, side, count, length }: BlowoutInput): Worked<number> {
  const gaps = [
    ...notAboveZero({ strength, head, edge, count, ...(side === null ? {} : { side }) }),
    ...belowZero({ length }),
  ]
  if (gaps.length > 0) return unknown(...gaps)
  const { f, step } = anchorStrength(strength)
  const single = (13 * edge * Math.sqrt(head) * Math.sqrt(f)) / 1000
  const working: Step[] = [
    step,
    {
      symbol: 'Nsb',
      formula: '13 ca1 √Abrg √f / 1000',
      given: { ca1: edge, Abrg: head, f },
      result: single,
      unit: 'kN',
      source: clause('17.6.4.1'),
    },
  ]
  if (count > 1) {
    const row = (1 + length / (6 * edge)) * single
    working.push({
      symbol: 'Nsbg',
      formula: '(1 + s / (6 ca1)) Nsb',
      given: { s: length, ca1: edge, Nsb: single },
      result: row,
      unit: 'kN',
      source: clause('17.6.4.2'),
      note: `${count} anchors along the edge`,
    })
    return known(row, working)
  }
  if (side === null || side >= 3 * edge) return known(single, working)
  const corner = ((1 + Math.max(1, side / edge)) / 4) * single
  working.push({
    symbol: 'Nsb corner',
    formula: '(1 + max(1, ca2 / ca1)) / 4 Nsb',
    given: { ca1: edge, ca2: side, Nsb: single },
    result: corner,
    unit: 'kN',
    source: clause('17.6.4.1.1'),
  })
  return known(corner, working)
}
