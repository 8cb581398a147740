import { notAboveZero } from '../../../working/guard.ts'
import type { Source } from '../../../working/source.ts'

export const STANDARD = 'EN 1992-4:2018'

export function clause(number: string): Source {
  return { standard: STANDARD, clause: number, status: 'from memory' }
}

/** Concrete that the standard covers, cylinder strength, MPa: C12/15 to C90/105. */
const LOW = 12
const HIGH = 90

/** Why a strength cannot be used; empty where it can. */
export function strengthGaps(strength: number): string[] {
  const gaps = notAboveZero({ strength })
  if (gaps.length > 0) return gaps
  return strength < LOW || strength > HIGH
    ? [`strength: ${STANDARD} covers ${LOW} to ${HIGH} MPa, found ${strength}`]
    : []
}
