import { mouldSurvey } from '@castwright/engine/mould'
import { distance, edges, type Point } from '@castwright/engine/panel'
import { Dice, seedOf } from './dice.ts'
import type { PanelRow } from './panels.ts'

/** How far a corner of an invented mould stands from where it is drawn, and how far a tape misreads, at most, mm. */
const SET_UP = 1.4
const TAPE = 0.5

/** Lengths as they were taped in the mould of a panel, by id: its corners stand a little wrong, and a tape reads whole millimetres. */
export function tapedMould({ mark, shape }: PanelRow): Map<string, number> {
  const dice = new Dice(seedOf(`${mark} mould`))
  const off = (most: number): number => dice.between(-most, most)
  const corners = shape.outline.map(([x, y]): Point => [x + off(SET_UP), y + off(SET_UP)])
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

/** Rows of the mould that no set-up tolerance judges: it ends at 10 m. */
export function unlimitedRows({ shape }: PanelRow): string[] {
  const long = edges(shape.outline).some(([a, b]) => distance(a, b) > 10_000)
  const square = shape.outline.length === 4
  return long ? ['mould-corners', ...(square ? ['mould-square'] : [])] : []
}
