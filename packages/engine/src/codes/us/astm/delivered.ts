import { commonPractice, type Source } from '../../../working/source.ts'
import type { DeliveredRules, TensileLimits } from '../../delivered-bar.ts'
import { usBar } from './bars.ts'

const KSI = 6.894757293168
const TENSILE: Source = {
  standard: 'ASTM A615, edition before 2020',
  clause: 'tensile requirements',
  status: 'seen',
}

/** Elongation over 8 in of a Grade 60 bar by bar number, %. */
function elongationOf(number: number): number | null {
  if (number <= 6) return 9
  if (number <= 8) return 8
  return number <= 11 ? 7 : null
}

/** Grade 60 of A615 only: the limits of other grades are not confirmed. */
export const delivered: DeliveredRules = {
  sizes: [9.525, 12.7, 15.875, 19.05, 22.225, 25.4, 28.6512, 32.258, 35.814, 43.0022, 57.3278],
  tensile({ grade, diameter }): TensileLimits | null {
    const bar = usBar(diameter)
    if (grade !== '60' || bar === null) return null
    return {
      yieldLow: 60 * KSI,
      yieldHigh: null,
      strengthLow: 90 * KSI,
      ratioLow: null,
      ratioHigh: null,
      uniformLow: null,
      elongationLow: elongationOf(bar.number),
      source: TENSILE,
      note: 'Editions from 2020 ask for a lower tensile strength (from memory); the stricter one is held here.',
    }
  },
  lengthTolerance: () => ({
    minus: 25.4,
    plus: 25.4,
    source: commonPractice('length of a US bar as supplied, 1 in'),
  }),
}
