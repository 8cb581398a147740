import { type Assumed, known, type Step, type Worked } from '../../../working/worked.ts'
import type { AnchorFactorInput } from '../../anchor-rules.ts'
import { clause } from './fck.ts'

/** Of concrete modes: γc 1.5, cast in (γinst 1). */
const CONCRETE = 1.5
/** Yield over tensile strength where it is not said: the lowest of common steels. */
const LEAST_RATIO = 0.6

/**
 * What a characteristic resistance is multiplied by: 1/γ. It is no lifting margin.
 *
 * Concrete 1/1.5. Steel in tension γ = max(1.4, 1.2/r), in shear max(1.25, 1/r) to r 0.8 and 1.5 beyond, r yield over tensile strength;
 * r 0.6 is assumed where not given.
 *
 * Source: EN 1992-4:2018, Table 4.1 (from memory).
 */
export function factor({ mode, action, yieldRatio }: AnchorFactorInput): Worked<number> {
  if (mode !== 'steel') {
    return known(1 / CONCRETE, [reciprocal('1 / (γc γinst)', { γc: CONCRETE, γinst: 1 }, 1 / CONCRETE)])
  }
  const r = yieldRatio ?? LEAST_RATIO
  const assumed: Assumed[] =
    yieldRatio === null
      ? [
          {
            field: 'yieldRatio',
            value: LEAST_RATIO,
            unit: '',
            why: 'yield over tensile strength of the steel is not given: lowest of common steels',
          },
        ]
      : []
  if (action === 'tension') {
    const value = 1 / Math.max(1.4, 1.2 / r)
    return known(value, [reciprocal('1 / max(1.4, 1.2 / r)', { r }, value)], assumed)
  }
  if (r > 0.8) return known(1 / 1.5, [reciprocal('1 / γ', { γ: 1.5 }, 1 / 1.5)], assumed)
  const value = 1 / Math.max(1.25, 1 / r)
  return known(value, [reciprocal('1 / max(1.25, 1 / r)', { r }, value)], assumed)
}

function reciprocal(formula: string, given: Readonly<Record<string, number>>, result: number): Step {
  return { symbol: '1/γ', formula, given, result, unit: '', source: clause('Table 4.1') }
}
