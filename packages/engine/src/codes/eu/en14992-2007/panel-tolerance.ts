import { notAboveZero } from '../../../working/guard.ts'
import type { Source } from '../../../working/source.ts'
import { known, unknown, type Worked } from '../../../working/worked.ts'
import type { ToleranceLimit } from '../../quality-rules.ts'

const DIAGONAL: Source = {
  standard: 'EN 14992:2007',
  clause: 'class B, diagonal dimension',
  status: 'seen',
}
const SURFACE: Source = {
  standard: 'EN 14992:2007',
  clause: 'class B, straightness of the surface',
  status: 'from memory',
}

/** Sizes up to, mm, with their deviation either way. */
const ROWS: readonly (readonly [upTo: number, deviation: number])[] = [
  [500, 8],
  [3000, 14],
  [6000, 16],
  [10_000, 18],
  [Number.POSITIVE_INFINITY, 20],
]
const STRAIGHTEDGE = 3000
const GAP = 10

/**
 * Deviation allowed on a diagonal, mm either way, class B. It is used here on the difference of the two diagonals, which
 * is the stricter reading. `size`: nominal diagonal, mm.
 *
 * Source: EN 14992:2007, class B (seen). Example: 6.0 m: 16; 6.1 m: 18.
 */
export function diagonalTolerance(size: number): Worked<ToleranceLimit> {
  const gaps = notAboveZero({ size })
  if (gaps.length > 0) return unknown(...gaps)
  const deviation = ROWS.find(([upTo]) => size <= upTo)?.[1] ?? 0
  return known({ low: -deviation, high: deviation, source: DIAGONAL }, [
    {
      symbol: 'ΔD',
      formula: 'row by the diagonal',
      given: { D: size },
      result: deviation,
      unit: 'mm',
      source: DIAGONAL,
      by: 'table',
    },
  ])
}

/**
 * Gap allowed under a straightedge of 3 m, mm, class B. `size`: length of the straightedge, mm; another: unknown.
 *
 * Source: EN 14992:2007, class B (from memory).
 */
export function surfaceTolerance(size: number): Worked<ToleranceLimit> {
  if (size !== STRAIGHTEDGE) return unknown(`straightedge: ${STRAIGHTEDGE} mm in the table, found ${size}`)
  return known({ low: 0, high: GAP, source: SURFACE }, [
    {
      symbol: 'Δ',
      formula: 'row of the straightedge of 3 m',
      given: { straightedge: size },
      result: GAP,
      unit: 'mm',
      source: SURFACE,
      by: 'table',
    },
  ])
}
