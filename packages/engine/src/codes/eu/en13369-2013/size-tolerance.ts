import { notAboveZero } from '../../../working/guard.ts'
import type { Source } from '../../../working/source.ts'
import { known, unknown, type Worked } from '../../../working/worked.ts'
import type { ToleranceLimit } from '../../quality-rules.ts'

const LENGTH: Source = { standard: 'EN 13369:2013', clause: '4.3.1.1, length', status: 'from memory' }
const SECTION: Source = {
  standard: 'EN 13369:2013',
  clause: '4.3.1.1, cross-section',
  status: 'from memory',
}

/** Section size, mm, with its deviations; linear between rows. */
const ROWS: readonly (readonly [size: number, low: number, high: number])[] = [
  [150, -5, 10],
  [400, -15, 15],
  [2500, -30, 30],
]

/**
 * Deviation allowed on a length, mm either way. `size`: nominal, mm.
 *
 * Source: EN 13369:2013, 4.3.1.1 (from memory). Example: 6 m: 16 mm.
 */
export function lengthTolerance(size: number): Worked<ToleranceLimit> {
  const gaps = notAboveZero({ size })
  if (gaps.length > 0) return unknown(...gaps)
  const limit = Math.min(10 + size / 1000, 40)
  return known({ low: -limit, high: limit, source: LENGTH }, [
    {
      symbol: 'ΔL',
      formula: 'min(10 + L / 1000, 40)',
      given: { L: size },
      result: limit,
      unit: 'mm',
      source: LENGTH,
    },
  ])
}

/**
 * Deviation allowed on a size of the cross-section, mm: plus and minus differ up to 400 mm. `size`: nominal, mm.
 *
 * Source: EN 13369:2013, 4.3.1.1 (from memory). Example: 200 mm: −7, +11.
 */
export function sectionTolerance(size: number): Worked<ToleranceLimit> {
  const gaps = notAboveZero({ size })
  if (gaps.length > 0) return unknown(...gaps)
  const [low, high] = between(size)
  return known({ low, high, source: SECTION }, [
    {
      symbol: 'Δ',
      formula: 'linear between the rows 150, 400 and 2500 mm',
      given: { size, plus: high },
      result: low,
      unit: 'mm',
      source: SECTION,
      by: 'table',
    },
  ])
}

function between(size: number): [low: number, high: number] {
  const next = ROWS.findIndex(([row]) => size <= row)
  const [, lastLow, lastHigh] = ROWS.at(-1) ?? [0, 0, 0]
  if (next < 0) return [lastLow, lastHigh]
  const [to, toLow, toHigh] = ROWS[next] ?? [0, 0, 0]
  const [from, fromLow, fromHigh] = ROWS[next - 1] ?? [to, toLow, toHigh]
  const share = to === from ? 0 : (size - from) / (to - from)
  return [fromLow + share * (toLow - fromLow), fromHigh + share * (toHigh - fromHigh)]
}
