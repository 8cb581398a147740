import { notAboveZero } from '../../../working/guard.ts'
import type { Source } from '../../../working/source.ts'
import { known, type Step, unknown, type Worked } from '../../../working/worked.ts'
import type { LiftFactorInput, MouldFace } from '../../lift-rules.ts'

const CEN_TR_15728 = 'CEN/TR 15728:2016, VDI/BV-BS 6205-2:2012'

export const ADHESION_SOURCE: Source = {
  standard: CEN_TR_15728,
  clause: 'adhesion to the mould',
  status: 'from memory',
}
export const DYNAMIC_SOURCE: Source = {
  standard: CEN_TR_15728,
  clause: 'dynamic factor: tower, portal or mobile crane',
  status: 'from memory',
}

/** Adhesion by mould face, kN/m². A concrete casting bed has no row. */
export const ADHESION: Readonly<Record<Exclude<MouldFace, 'concrete'>, number>> = {
  smooth: 1,
  planed: 2,
  rough: 3,
}

/** Dynamic factor for a tower, portal or mobile crane. */
export const CRANE_DYNAMIC = 1.3

/**
 * Factor on own weight: at release adhesion `(W + q A) / W`, hanging free the dynamic factor of the crane; the report
 * takes the two as alternatives, never multiplied.
 *
 * Unknown where the mould face is not known or has no row, and for a size not above 0.
 *
 * Source: CEN/TR 15728:2016 and VDI/BV-BS 6205-2:2012 (from memory; 1 kN/m² for oiled steel).
 * Example: 67.5 kN on 18 m² of oiled steel: (67.5 + 18) / 67.5 = 1.267.
 */
export function liftFactor({ stage, face, weight, faceArea }: LiftFactorInput): Worked<number> {
  if (stage === 'handling') return known(CRANE_DYNAMIC, [dynamicStep()])
  if (stage === 'travel') return unknown('load factor on the road: no confirmed value')
  const gaps = notAboveZero({ weight, faceArea })
  if (gaps.length > 0) return unknown(...gaps)
  if (face === null) return unknown('the mould face of the bed: how much sticks at release')
  if (face === 'concrete') return unknown('adhesion to a concrete casting bed: no confirmed value')
  const adhesion = ADHESION[face]
  const factor = (weight + adhesion * faceArea) / weight
  return known(factor, [
    {
      symbol: 'q',
      formula: 'row of the mould face',
      given: { face },
      result: adhesion,
      unit: 'kN/m²',
      source: ADHESION_SOURCE,
      by: 'table',
    },
    {
      symbol: 'f',
      formula: '(W + q A) / W',
      given: { W: weight, q: adhesion, A: faceArea },
      result: factor,
      unit: '',
      source: ADHESION_SOURCE,
    },
  ])
}

function dynamicStep(): Step {
  return {
    symbol: 'ψ',
    formula: 'row of the lifting machine',
    given: { machine: 'crane' },
    result: CRANE_DYNAMIC,
    unit: '',
    source: DYNAMIC_SOURCE,
    by: 'table',
    note: 'carrying by loader or forklift asks for far more and is not planned here',
  }
}
