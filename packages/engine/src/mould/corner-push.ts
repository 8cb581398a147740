import { distance, type Point, type Ring } from '../panel/point.ts'
import { signedArea } from '../panel/polygon.ts'

export interface CornerPush {
  /** Number of the corner on the drawing, from 1. */
  readonly corner: number
  /** How far it lies from where it is drawn, mm. */
  readonly out: number
  /** What brings it back, as the floor reads it. Example: `5 mm along side 2 towards corner 2`. */
  readonly moves: readonly string[]
}

/** Sides that meet at less than this, or run on straighter, give no two ways to push: sine of 20°. */
const STRAIGHT_ON = 0.342
/** Moves under this are not worth a hammer, mm. */
const LEAST_MOVE = 0.5

export interface PushInput {
  /** Drawn and set-up corners in order, mm. */
  readonly drawn: Ring
  readonly at: Ring
  /** Place in the ring. */
  readonly index: number
  /** Numbers on the drawing of the corners, in order. */
  readonly numbers: readonly number[]
  /** Whether each step round the ring is a side of the drawing. */
  readonly whole: boolean
}

/**
 * Which way a corner is pushed back: along the two sides that meet in it; where they run on nearly straight, along the one and across it. Of an
 * outline that is taped at some corners only, towards the neighbours that are taped.
 */
export function cornerPush({ drawn, at, index, numbers, whole }: PushInput): CornerPush {
  const count = drawn.length
  const [before, after] = [(index + count - 1) % count, (index + 1) % count]
  const here = drawn[index] as Point
  const back: Point = [here[0] - (at[index] as Point)[0], here[1] - (at[index] as Point)[1]]
  const [u, v] = [towards(here, drawn[before] as Point), towards(here, drawn[after] as Point)]
  const numberOf = (k: number): number => numbers[k] as number
  const along = (size: number, side: number, other: number): string[] =>
    Math.abs(size) < LEAST_MOVE
      ? []
      : [
          `${mm(size)}${whole ? ` along side ${numberOf(side)}` : ''} ${size > 0 ? 'towards' : 'away from'} corner ${numberOf(other)}`,
        ]
  const sine = u[0] * v[1] - u[1] * v[0]
  const out = distance(here, at[index] as Point)
  const corner = numberOf(index)
  if (Math.abs(sine) >= STRAIGHT_ON) {
    const a = (back[0] * v[1] - back[1] * v[0]) / sine
    const b = (u[0] * back[1] - u[1] * back[0]) / sine
    return { corner, out, moves: [...along(a, before, before), ...along(b, index, after)] }
  }
  // The side that leads on, and straight across it: left of the way round is inside where the ring runs counter-clockwise.
  const inside: Point = signedArea(drawn) > 0 ? [-v[1], v[0]] : [v[1], -v[0]]
  const across = back[0] * inside[0] + back[1] * inside[1]
  const onward = back[0] * v[0] + back[1] * v[1]
  return {
    corner,
    out,
    moves: [
      ...along(onward, index, after),
      ...(Math.abs(across) < LEAST_MOVE
        ? []
        : [`${mm(across)} across it, ${across > 0 ? 'into the mould' : 'out of the mould'}`]),
    ],
  }
}

/** As the card says it. Example: `Corner 3 is out by 7 mm: push it 5 mm along side 2 towards corner 2, 5 mm along side 3 away from corner 4.` */
export function pushText({ corner, out, moves }: CornerPush): string {
  const found = `Corner ${corner} is out by ${mm(out)}`
  return moves.length === 0 ? `${found}.` : `${found}: push it ${moves.join(', ')}.`
}

function mm(size: number): string {
  return `${Math.round(Math.abs(size))} mm`
}

function towards(from: Point, to: Point): Point {
  const length = distance(from, to)
  return length > 0 ? [(to[0] - from[0]) / length, (to[1] - from[1]) / length] : [0, 0]
}
