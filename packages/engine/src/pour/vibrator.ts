import { notAboveZero } from '../working/guard.ts'
import { commonPractice, type Source } from '../working/source.ts'
import { known, type Step, unknown, type Worked } from '../working/worked.ts'

const TABLE: Source = {
  standard: 'Concrete New Zealand, Compaction (table of ACI 309R)',
  clause: 'immersion vibrators',
  status: 'seen',
}
const SPACING: Source = {
  standard: 'ACI 309R, edition not noted',
  clause: 'spacing 1.5 times the radius of action',
  status: 'from memory',
}

/** Head diameter and radius of action by row, mm, and what the head keeps up with, m³/h. Rows overlap. */
const ROWS = [
  { head: [20, 40], action: [80, 150], placing: [0.8, 4] },
  { head: [30, 60], action: [130, 250], placing: [2.3, 8] },
  { head: [50, 90], action: [180, 360], placing: [4.6, 15] },
  { head: [80, 150], action: [300, 500], placing: [11, 31] },
  { head: [130, 180], action: [400, 600], placing: [19, 38] },
] as const

/** Share of the radius of action that a triangular grid of 1.5 radii needs: √3/2, to three digits. */
export const COVERING_SHARE = 0.866

/**
 * Radius of action of an immersion head, mm: linear by diameter inside each row that holds it, the smallest of them. The
 * straight line inside a row is ours. Congested steel and stiff concrete cut it; that is left out.
 *
 * Unknown outside 20 to 180 mm. Example: head 40: rows give 150 and 170, so 150.
 */
export function radiusOfAction(head: number): Worked<number> {
  const gaps = notAboveZero({ head })
  if (gaps.length > 0) return unknown(...gaps)
  const found = ROWS.filter((row) => head >= row.head[0] && head <= row.head[1]).map(
    (row) =>
      row.action[0] + ((head - row.head[0]) / (row.head[1] - row.head[0])) * (row.action[1] - row.action[0]),
  )
  if (found.length === 0)
    return unknown('head: the table holds heads of 20 to 180 mm; give the radius instead')
  const value = Math.min(...found)
  return known(value, [
    {
      symbol: 'R_a',
      formula: 'linear in the rows that hold the head, the smallest',
      given: { head },
      result: value,
      unit: 'mm',
      source: TABLE,
      by: 'table',
    },
  ])
}

/**
 * Concrete that a head keeps up with, m³/h, lowest to highest: the row that gives its radius of action. Null outside the table.
 *
 * Source: the same table. Example: head 40: 0.8 to 4.
 */
export function placingRate(head: number): readonly [low: number, high: number] | null {
  const rows = ROWS.filter((row) => head >= row.head[0] && head <= row.head[1])
  const of = (row: (typeof ROWS)[number]): number =>
    row.action[0] + ((head - row.head[0]) / (row.head[1] - row.head[0])) * (row.action[1] - row.action[0])
  const [first, ...others] = rows
  if (first === undefined) return null
  return others.reduce<(typeof ROWS)[number]>((least, row) => (of(row) < of(least) ? row : least), first)
    .placing
}

/** Deepest layer of a flat panel that is placed and vibrated at once, mm. */
export const LAYER_DEPTH = 300
export const LAYERS: Source = commonPractice('flat panels up to 300 mm in one layer')

/** Radius that a pattern is built on, from the radius of action: triangular rows then stand at 1.5 radii of action. */
export function coveringRadius(action: number): { readonly radius: number; readonly step: Step } {
  const radius = COVERING_SHARE * action
  return {
    radius,
    step: {
      symbol: 'R',
      formula: '0.866 R_a',
      given: { R_a: action },
      result: radius,
      unit: 'mm',
      source: SPACING,
    },
  }
}

/** Time in the concrete and on the way to the next insertion, seconds; always listed as assumed. */
export const SECONDS_IN = 10
export const SECONDS_MOVING = 3
export const VIBRATING_TIME: Source = commonPractice('5 to 15 s an insertion, and the way to the next')
