import { type Assumed, known, type Worked } from '../../../working/worked.ts'
import type { AnchorFactorInput } from '../../anchor-rules.ts'
import { clause } from './anchor-strength.ts'

/**
 * Strength reduction factor φ of a mode. It is no lifting margin.
 *
 * Steel 0.75 in tension and 0.65 in shear where ductile, else 0.65 and 0.60. Breakout, blow-out and shear breakout 0.70, with
 * supplementary reinforcement 0.75; pull-out and pry-out 0.70.
 *
 * Source: ACI 318-19, 17.5.3 (from memory).
 */
export function factor({ mode, action, supplementary, ductile }: AnchorFactorInput): Worked<number> {
  const steel = mode === 'steel'
  const φ = steel ? steelFactor(action, ductile === true) : concreteFactor(mode, supplementary)
  const assumed: Assumed[] =
    steel && ductile === null
      ? [{ field: 'ductile', value: 'no', unit: '', why: 'the steel is not said to be ductile (17.5.3(a))' }]
      : []
  return known(
    φ,
    [
      {
        symbol: 'φ',
        formula: `strength reduction factor of ${mode} in ${action}`,
        given: steel
          ? { ductile: ductile === true ? 'yes' : 'no' }
          : { supplementary: supplementary ? 'yes' : 'no' },
        result: φ,
        unit: '',
        source: clause('17.5.3'),
        by: 'table',
      },
    ],
    assumed,
  )
}

function steelFactor(action: 'tension' | 'shear', ductile: boolean): number {
  if (action === 'tension') return ductile ? 0.75 : 0.65
  return ductile ? 0.65 : 0.6
}

function concreteFactor(mode: AnchorFactorInput['mode'], supplementary: boolean): number {
  const helped = mode === 'breakout' || mode === 'blowout' || mode === 'edge'
  return helped && supplementary ? 0.75 : 0.7
}
