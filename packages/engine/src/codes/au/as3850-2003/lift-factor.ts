import type { Source } from '../../../working/source.ts'
import { known, unknown, type Worked } from '../../../working/worked.ts'
import type { LiftFactorInput } from '../../lift-rules.ts'

const AS_3850: Source = { standard: 'AS 3850:2003', clause: '3.5.2', status: 'seen' }

/** Smooth oiled steel at release, and erection and handling by crane. */
export const SMOOTH_OR_CRANE = 1.2
/** Off a concrete casting bed. */
export const CASTING_BED = 1.5

/**
 * Factor on own weight at release and while hanging from a crane, as quoted from the 2003 edition.
 *
 * Later editions have tables of their own: no value of theirs is confirmed, so the working names the edition. Unknown for timber faces.
 *
 * Source: AS 3850:2003, 3.5.2 (seen as quoted).
 * Example: 67.5 kN off oiled steel: 81.0 kN; off a concrete bed: 101.25 kN.
 */
export function liftFactor({ stage, face }: LiftFactorInput): Worked<number> {
  if (stage === 'handling') return row('handling by crane', SMOOTH_OR_CRANE)
  if (stage === 'travel') return unknown('load factor on the road: no confirmed value')
  switch (face) {
    case 'smooth':
      return row('smooth oiled steel', SMOOTH_OR_CRANE)
    case 'concrete':
      return row('concrete casting bed', CASTING_BED)
    case null:
      return unknown('the mould face of the bed: the factor at release')
    default:
      return unknown(`factor at release for a ${face} face: no confirmed value`)
  }
}

function row(name: string, factor: number): Worked<number> {
  return known(factor, [
    {
      symbol: 'f',
      formula: 'row of the clause',
      given: { row: name },
      result: factor,
      unit: '',
      source: AS_3850,
      by: 'table',
      note: 'superseded edition: hold it against the edition in force',
    },
  ])
}
