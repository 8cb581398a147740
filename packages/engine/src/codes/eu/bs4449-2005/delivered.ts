import type { Source } from '../../../working/source.ts'
import type { DeliveredRules, TensileLimits } from '../../delivered-bar.ts'

const TENSILE: Source = { standard: 'BS 4449:2005+A3:2016', clause: '7.2.3', status: 'seen' }

/** Limits of a delivered bar of grade 500: ductility classes A, B and C. Fixed lengths carry no confirmed tolerance. */
export const delivered: DeliveredRules = {
  sizes: [6, 8, 10, 12, 16, 20, 25, 28, 32, 40, 50],
  tensile({ grade, diameter }): TensileLimits | null {
    const shared = { yieldLow: 500, yieldHigh: 650, strengthLow: null, elongationLow: null, source: TENSILE }
    if (grade === 'B500A') {
      // Thin bars of class A have lower limits of their own.
      return diameter < 8
        ? { ...shared, ratioLow: 1.02, ratioHigh: null, uniformLow: 1 }
        : { ...shared, ratioLow: 1.05, ratioHigh: null, uniformLow: 2.5 }
    }
    if (grade === 'B500B') return { ...shared, ratioLow: 1.08, ratioHigh: null, uniformLow: 5 }
    if (grade === 'B500C') return { ...shared, ratioLow: 1.15, ratioHigh: 1.35, uniformLow: 7.5 }
    return null
  },
  lengthTolerance: () => null,
}
