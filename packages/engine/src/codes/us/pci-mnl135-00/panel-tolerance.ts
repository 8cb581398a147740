import { notAboveZero } from '../../../working/guard.ts'
import type { Source } from '../../../working/source.ts'
import { known, unknown, type Worked } from '../../../working/worked.ts'
import type { ToleranceLimit } from '../../quality-rules.ts'

const STANDARD = 'PCI MNL-135-00'
const MEMORY: Source = {
  standard: STANDARD,
  clause: 'architectural panels, overall size',
  status: 'from memory',
}
const SHORT: Source = { ...MEMORY, status: 'seen' }
const THICKNESS: Source = { ...MEMORY, clause: 'architectural panels, thickness' }
const BOW: Source = { ...MEMORY, clause: 'architectural panels, bowing' }
const WARP: Source = { ...MEMORY, clause: 'architectural panels, warping', status: 'seen' }
const SMOOTHNESS: Source = {
  ...MEMORY,
  clause: 'architectural panels, local smoothness',
  status: 'seen',
}

/** 10 ft, mm. */
const TEN_FEET = 3048
const STRAIGHTEDGE = 3000

/**
 * Deviation allowed on length or height, mm: 3 up to 10 ft, +3 −5 to 20 ft, 6 to 40 ft, then 1.6 for each started
 * 10 ft. `size`: nominal, mm.
 *
 * Source: PCI MNL-135-00 (10 ft seen, rest from memory). Example: 6 m: −5, +3.
 */
export function overallTolerance(size: number): Worked<ToleranceLimit> {
  const gaps = notAboveZero({ size })
  if (gaps.length > 0) return unknown(...gaps)
  const [low, high] = overallRow(size)
  const source = size <= TEN_FEET ? SHORT : MEMORY
  return known({ low, high, source }, [
    {
      symbol: 'ΔL',
      formula: 'row by size',
      given: { L: size, plus: high },
      result: low,
      unit: 'mm',
      source,
      by: 'table',
    },
  ])
}

function overallRow(size: number): [low: number, high: number] {
  if (size <= TEN_FEET) return [-3, 3]
  if (size <= 2 * TEN_FEET) return [-5, 3]
  const over = 6 + 1.6 * Math.max(0, Math.ceil((size - 4 * TEN_FEET) / TEN_FEET - 1e-9))
  return [-over, over]
}

/** Deviation allowed on thickness, mm: −3, +6. Source: PCI MNL-135-00 (from memory). */
export function thicknessTolerance(size: number): Worked<ToleranceLimit> {
  const gaps = notAboveZero({ size })
  if (gaps.length > 0) return unknown(...gaps)
  return known({ low: -3, high: 6, source: THICKNESS }, [
    {
      symbol: 'Δt',
      formula: 'row of thickness',
      given: { t: size, plus: 6 },
      result: -3,
      unit: 'mm',
      source: THICKNESS,
      by: 'table',
    },
  ])
}

/** Bow allowed over an edge, mm: L/360, 25 at most. Source: PCI MNL-135-00 (from memory). Example: 6 m: 16.67. */
export function bowTolerance(size: number): Worked<ToleranceLimit> {
  const gaps = notAboveZero({ size })
  if (gaps.length > 0) return unknown(...gaps)
  const limit = Math.min(size / 360, 25)
  return known({ low: -limit, high: limit, source: BOW }, [
    {
      symbol: 'Δb',
      formula: 'min(L / 360, 25)',
      given: { L: size },
      result: limit,
      unit: 'mm',
      source: BOW,
    },
  ])
}

/**
 * Warp allowed at a corner, mm: 1/16 in for each foot to the nearest adjacent corner.
 *
 * Source: PCI MNL-135-00 (the rate seen). Example: 3 m: 15.63.
 */
export function warpTolerance(size: number): Worked<ToleranceLimit> {
  const gaps = notAboveZero({ size })
  if (gaps.length > 0) return unknown(...gaps)
  const limit = (size * 25.4) / 16 / 304.8
  return known({ low: 0, high: limit, source: WARP }, [
    {
      symbol: 'Δw',
      formula: 'L · 25.4 / 16 / 304.8',
      given: { L: size },
      result: limit,
      unit: 'mm',
      source: WARP,
    },
  ])
}

/** Gap allowed under a straightedge of 3 m (10 ft), mm: 6. Source: PCI MNL-135-00 (the rate seen). */
export function smoothnessTolerance(size: number): Worked<ToleranceLimit> {
  if (size !== STRAIGHTEDGE) return unknown(`straightedge: ${STRAIGHTEDGE} mm in the table, found ${size}`)
  return known({ low: 0, high: 6, source: SMOOTHNESS }, [
    {
      symbol: 'Δ',
      formula: 'row of the straightedge of 3 m',
      given: { straightedge: size },
      result: 6,
      unit: 'mm',
      source: SMOOTHNESS,
      by: 'table',
    },
  ])
}
