import { type BendKind, SHAPE_ROWS, type ShapeRow } from './shape-rows.ts'

export interface FlatShape {
  /** Outside dimensions as `cutLength` takes them, mm. */
  readonly legs: readonly number[]
  /** One a bend, degrees. */
  readonly turns: readonly number[]
  /** Side of each turn: 1 to the left, −1 to the right. */
  readonly senses: readonly (1 | -1)[]
}

/** Angles within this many degrees, and lengths within this many mm, are the same on a drawing. */
const SAME_ANGLE = 0.05
const SAME_LENGTH = 0.05

/** A shape of the standard and the bar read in its order, or null where none fits; `standard`: whether the radius is the standard one. */
export function matchShape(
  shape: FlatShape,
  standard: boolean,
): { readonly row: ShapeRow; readonly read: FlatShape } | null {
  for (const row of SHAPE_ROWS) {
    // A half turn shows its width, so its radius is free; a right angle alone has a code for a free radius.
    const free = row.radius !== undefined
    const fixed = row.radius === undefined && row.bends.some((bend) => bend !== 'half')
    if ((free && standard) || (fixed && !standard)) continue
    const read = [shape, backwards(shape)].find((each) => fits(row, each))
    if (read !== undefined) return { row, read }
  }
  return null
}

/** The same bar read from its other end. */
function backwards({ legs, turns, senses }: FlatShape): FlatShape {
  return {
    legs: legs.toReversed(),
    turns: turns.toReversed(),
    senses: senses.toReversed().map((sense) => (sense === 1 ? -1 : 1)),
  }
}

function fits(row: ShapeRow, { legs, turns, senses }: FlatShape): boolean {
  return (
    row.bends.length === turns.length &&
    row.legs.length === legs.length &&
    row.bends.every((bend, index) => bend === kindOf(turns[index] ?? 0)) &&
    sidesOf(senses) === row.sides &&
    equalLegs(row, legs) &&
    (row.sameTurn ?? []).every((group) =>
      alike(
        group.map((index) => turns[index] ?? 0),
        SAME_ANGLE,
      ),
    )
  )
}

/** What a turn is, or null where no shape has such a bend. */
export function kindOf(turn: number): BendKind | null {
  if (Math.abs(turn - 90) <= SAME_ANGLE) return 'right'
  if (Math.abs(turn - 180) <= SAME_ANGLE) return 'half'
  if (Math.abs(turn - 135) <= SAME_ANGLE) return '135'
  return turn < 90 ? 'shallow' : null
}

function sidesOf(senses: readonly (1 | -1)[]): string {
  return senses.map((sense) => (sense === senses[0] ? '+' : '−')).join('')
}

function equalLegs({ legs: letters }: ShapeRow, legs: readonly number[]): boolean {
  return [...new Set(letters)].every((letter) =>
    alike(
      legs.filter((_, index) => letters[index] === letter),
      SAME_LENGTH,
    ),
  )
}

function alike(values: readonly number[], within: number): boolean {
  return Math.max(...values) - Math.min(...values) <= within
}
