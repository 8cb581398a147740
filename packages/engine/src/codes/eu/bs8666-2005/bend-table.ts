import type { Source } from '../../../working/source.ts'
import { known, unknown, type Worked } from '../../../working/worked.ts'
import type { BarRole } from '../../steel-rules.ts'

const TABLE_2: Source = { standard: 'BS 8666:2005', clause: 'Table 2', status: 'seen' }

/** Least radius, least former, and least end leg past a bend (P), mm; the edition of 2020 is taken to say the same. */
export interface BendRow {
  readonly diameter: number
  readonly radius: number
  readonly former: number
  /** Bars in general, and links that turn 150° or more: at least 5 d straight. */
  readonly general: number
  /** Links that turn less than 150°: at least 10 d straight. */
  readonly link: number
}

const ROWS: readonly (readonly [number, number, number, number, number])[] = [
  [6, 12, 24, 110, 110],
  [8, 16, 32, 115, 115],
  [10, 20, 40, 120, 130],
  [12, 24, 48, 125, 160],
  [16, 32, 64, 130, 210],
  [20, 70, 140, 190, 290],
  [25, 87, 175, 240, 365],
  [32, 112, 224, 305, 465],
  [40, 140, 280, 380, 580],
  [50, 175, 350, 475, 725],
]

/** The least of small bars is the bending machine's, not the bar's; it governs all the same. */
export const BEND_ROWS: readonly BendRow[] = ROWS.map(([diameter, radius, former, general, link]) => ({
  diameter,
  radius,
  former,
  general,
  link,
}))

export function bendRow(diameter: number): BendRow | undefined {
  return BEND_ROWS.find((row) => row.diameter === diameter)
}

/**
 * Least outside dimension of an end leg, bend included, at the least radius, mm (P).
 *
 * Unknown for a size that the table does not list, and for a turn outside 0 to 180°. Example: 16 mm link at 90°: 210 mm.
 */
export function leastEndLeg({
  diameter,
  role,
  turn,
}: {
  readonly diameter: number
  readonly role: BarRole
  readonly turn: number
}): Worked<number> {
  const row = bendRow(diameter)
  if (row === undefined) return unknown(`diameter: BS 8666 Table 2 has no row for ${diameter} mm`)
  if (!(turn > 0 && turn <= 180)) return unknown(`turn: above 0 to 180 degrees, found ${turn}`)
  const short = role === 'main' || turn >= 150
  const least = short ? row.general : row.link
  return known(least, [
    {
      symbol: 'P',
      formula: short ? 'row of the size, general' : 'row of the size, links under 150°',
      given: { d: diameter },
      result: least,
      unit: 'mm',
      source: TABLE_2,
      by: 'table',
    },
  ])
}
