import { codeFamily, type FamilyId } from '../../codes/index.ts'
import { parseAnchorCase } from './anchor-case.ts'
import type { AnchorFound, AnchorModeResult } from './anchor-modes.ts'
import { anchorReport } from './anchor-report.ts'

/** A head of 30 mm on a shank of 14 mm, as the check values have it, mm². */
export const HEAD = (Math.PI / 4) * (30 ** 2 - 14 ** 2)

export function rectangle(left: number, bottom: number, right: number, top: number): [number, number][] {
  return [
    [left, bottom],
    [right, bottom],
    [right, top],
    [left, top],
  ]
}

/** One insert in the middle of a wide, deep face; all data given. For tests. */
export const FREE = {
  at: [[0, 0]] as [number, number][],
  outline: rectangle(-4000, -4000, 4000, 4000),
  thickness: 600,
  depth: 150,
  head: HEAD,
  shaft: 14,
  steel: 100,
  concrete: { strength: 20, cracked: false },
  tension: 20,
  splitting: { edge: 200, spacing: 400 },
}

export function report(code: FamilyId, change: object, supplementary = false): AnchorFound {
  return anchorReport({
    anchorCase: parseAnchorCase({ ...FREE, ...change }),
    family: codeFamily(code),
    supplementary,
  })
}

export function modeOf(found: AnchorFound, mode: string, action?: string): AnchorModeResult | undefined {
  return found.modes.find((one) => one.mode === mode && (action === undefined || one.action === action))
}

/** Nominal of a mode, kN; NaN where it is not there or not known, so that a comparison fails. */
export function nominalOf(code: FamilyId, change: object, mode: string): number {
  return modeOf(report(code, change), mode)?.nominal ?? Number.NaN
}
