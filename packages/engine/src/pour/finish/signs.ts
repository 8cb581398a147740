import { commonPractice, type Source } from '../../working/source.ts'

/** Penetration resistance at initial set, MPa (ASTM C403). */
export const INITIAL_SET_RESISTANCE = 3.5
/** Share of the way to initial set at which floating may begin, and by which it must; at 1 the window is shut. */
export const FLOAT_OPENS = 0.55
export const FLOAT_OPENS_LATEST = 0.65
const FLOAT_RESISTANCE = 0.5
/**
 * Resistance grows with a power of the share: 0.5 MPa at 0.55 (a boot print of 6 mm) and 3.5 MPa at 1 fix it. Model, no source.
 */
export const RESISTANCE_POWER =
  Math.log(INITIAL_SET_RESISTANCE / FLOAT_RESISTANCE) / Math.log(1 / FLOAT_OPENS)

export const SIGNS: Source = commonPractice('boot print as a share of the way to initial set')

/** Boot print, mm, and the share it stands for: 6 mm opens floating, 3 mm lies at 1 MPa, 1 mm at 2.2 MPa, none is initial set. */
const PRINTS: readonly (readonly [mm: number, share: number])[] = [
  [0, 1],
  [1, shareOfResistance(2.2)],
  [3, shareOfResistance(1)],
  [6, FLOAT_OPENS],
  [25, 0.1],
]

/** Share of the way to initial set that a penetration resistance stands for, MPa. Not above 1. */
export function shareOfResistance(megapascal: number): number {
  return Math.min(1, (megapascal / INITIAL_SET_RESISTANCE) ** (1 / RESISTANCE_POWER))
}

/** Share of the way to initial set that a boot print stands for, mm deep; null where that is no depth. */
export function shareOfPrint(depth: number): number | null {
  if (!(depth >= 0 && depth <= 100)) return null
  const next = PRINTS.findIndex(([mm]) => mm >= depth)
  const [after, before] = [PRINTS[next], PRINTS[next - 1]]
  if (after === undefined) return PRINTS.at(-1)?.[1] ?? null
  if (before === undefined) return after[1]
  return before[1] + ((after[1] - before[1]) * (depth - before[0])) / (after[0] - before[0])
}
