import type { Source } from '../../../working/source.ts'
import type { Step } from '../../../working/worked.ts'

export const STANDARD = 'ACI 318-19'

export function clause(number: string): Source {
  return { standard: STANDARD, clause: number, status: 'from memory' }
}

/** Strength that chapter 17 lets count for cast-in anchors, MPa. */
const MOST = 70

/** The strength that counts, normal-weight concrete: MPa, with its step. Source: ACI 318-19, 17.3.1 (from memory). */
export function anchorStrength(strength: number): { readonly f: number; readonly step: Step } {
  const f = Math.min(strength, MOST)
  return {
    f,
    step: {
      symbol: "f'c",
      formula: `min(fc, ${MOST})`,
      given: { fc: strength },
      result: f,
      unit: 'MPa',
      source: clause('17.3.1'),
      note: 'normal-weight concrete, λ 1',
    },
  }
}
