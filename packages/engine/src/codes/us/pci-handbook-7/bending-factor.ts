import type { Source } from '../../../working/source.ts'
import { known, unknown, type Worked } from '../../../working/worked.ts'
import type { LiftFactorInput } from '../../lift-rules.ts'

const MULTIPLIERS: Source = {
  standard: 'PCI Design Handbook, 7th edition',
  clause: 'Table 8.3.1',
  status: 'from memory',
}

/** Equivalent static multipliers of a flat panel: smooth mould with oil only, side forms removed; handling and travel after. */
export const FLAT_SMOOTH = 1.3
export const YARD_HANDLING = 1.2
export const TRAVEL = 1.5

/**
 * Multiplier on own weight for bending of a flat panel: suction and impact are inside it. Not for sizing inserts.
 *
 * Unknown for a mould face other than smooth: the table has no row.
 *
 * Source: PCI Design Handbook, 7th edition, Table 8.3.1 (from memory).
 */
export function bendingFactor({ stage, face }: LiftFactorInput): Worked<number> {
  if (stage === 'handling') return row('yard handling', YARD_HANDLING)
  if (stage === 'travel') return row('travel', TRAVEL)
  if (face === null) return unknown('the mould face of the bed: the multiplier at stripping')
  if (face !== 'smooth') return unknown(`multiplier at stripping for a ${face} face: no confirmed value`)
  return row('flat, smooth mould, oil only', FLAT_SMOOTH)
}

function row(name: string, factor: number): Worked<number> {
  return known(factor, [
    {
      symbol: 'k',
      formula: 'row of the table',
      given: { row: name },
      result: factor,
      unit: '',
      source: MULTIPLIERS,
      by: 'table',
    },
  ])
}
