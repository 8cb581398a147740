import { notAboveZero } from '../working/guard.ts'
import { STATICS } from '../working/source.ts'
import type { Assumed, Step } from '../working/worked.ts'
import { assume, type PressureFound } from './pressure-found.ts'

/** Weight density of reinforced normal-weight concrete in mould work, kN/m³; always listed as assumed. */
export const ASSUMED_WEIGHT = 25

export interface HydrostaticInput {
  /** mm */
  readonly height: number
  /** kN/m³ */
  readonly weight?: number | undefined
}

/** Full fluid head: γ h, kPa. Governs flat moulds, self-compacting concrete and anything outside the other rules. */
export function hydrostatic({ height, weight }: HydrostaticInput): PressureFound {
  const assumed: Assumed[] = []
  const gamma = assumedWeight(assumed, weight)
  const gaps = notAboveZero({ height, weight: gamma })
  if (gaps.length > 0) {
    return { maximum: null, hydrostatic: null, source: STATICS, working: [], assumed, unknown: gaps }
  }
  const step = headOfWeight(gamma, height)
  const head = step.result
  return { maximum: head, hydrostatic: head, source: STATICS, working: [step], assumed, unknown: [] }
}

/** The step of the full head by weight density. */
export function headOfWeight(weight: number, height: number): Step & { readonly result: number } {
  return {
    symbol: 'p_h',
    formula: 'γ h / 1000',
    given: { γ: weight, h: height },
    result: (weight * height) / 1000,
    unit: 'kPa',
    source: STATICS,
  }
}

export function assumedWeight(assumed: Assumed[], weight: number | undefined): number {
  return assume(assumed, weight, {
    field: 'weight',
    value: ASSUMED_WEIGHT,
    unit: 'kN/m³',
    why: 'usual weight density of reinforced normal-weight concrete in mould work',
  })
}
