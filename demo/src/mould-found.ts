import { mouldSurvey } from '@castwright/engine/mould'
import { distance, edges, type Point } from '@castwright/engine/panel'
import { Dice, seedOf } from './dice.ts'
import type { PanelRow } from './panels.ts'

/** How far a corner of an invented mould stands from where it is drawn, and how far a tape misreads, at most, mm. */
const SET_UP = 1.4
const TAPE = 0.5

/** Moulds that stand racked: how far the corners from the third on were pushed along, mm. No side shows it, the diagonals do. */
const RACKED: Readonly<Record<string, number>> = { N06: 9 }

/** Lengths as they were taped in the mould of a panel, by id: its corners stand a little wrong, and a tape reads whole millimetres. */
export function tapedMould({ mark, shape }: PanelRow): Map<string, number> {
  const dice = new Dice(seedOf(`${mark} mould`))
  const off = (most: number): number => dice.between(-most, most)
  const racked = RACKED[mark] ?? 0
  const corners = shape.outline.map(
    ([x, y], index): Point => [x + off(SET_UP) + (index >= 2 ? racked : 0), y + off(SET_UP)],
  )
  return new Map(
    mouldSurvey(shape.outline).lengths.map(({ id, from, to }) => [
      id,
      Math.round(distance(corners[from] as Point, corners[to] as Point) + off(TAPE)),
    ]),
  )
}

/** Height of the side forms at each corner, mm. */
export function formHeights({ mark, shape, thickness }: PanelRow): number[] {
  const dice = new Dice(seedOf(`${mark} form heights`))
  return shape.outline.map(() => thickness + Math.round(dice.between(-1.4, 1.4)))
}

/** Rows of the measured mould that its lead decided, with the reason: past its set-up tolerance, or past 10 m, where none is given. */
export function decidedRows({ mark, shape }: PanelRow): {
  readonly verdict: 'fail' | 'unknown'
  readonly reason: string
  readonly checks: readonly string[]
} {
  const rows = ['mould-corners', ...(shape.outline.length === 4 ? ['mould-square'] : [])]
  if (RACKED[mark] !== undefined)
    return {
      verdict: 'fail',
      reason:
        'Racked along the long rail; the joint beside it is 30 mm wide and takes it. Panel stays within its own tolerance.',
      checks: ['mould-square'],
    }
  const long = edges(shape.outline).some(([a, b]) => distance(a, b) > 10_000)
  return {
    verdict: 'unknown',
    reason: 'No confirmed set-up limit for this length. Taped corner by corner, within 4 mm: accepted.',
    checks: long ? rows : [],
  }
}
