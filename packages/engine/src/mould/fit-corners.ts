import { invert } from '../numeric/invert.ts'
import { distance, type Point, type Ring } from '../panel/point.ts'
import { addRow, lengthRow, placeRows, through } from './length-net.ts'

export interface TapedLength {
  /** Places in the ring of corners, from 0. */
  readonly from: number
  readonly to: number
  /** As taped, mm. */
  readonly length: number
}

export interface FittedCorners {
  /** Corners as they were set up, mm, laid on the drawing so that as many as may be lie where they are drawn. */
  readonly at: Ring
  /** Taped less fitted, mm, one a length. */
  readonly left: readonly number[]
  /** Part of a misreading that shows in what is left, 0 to 1, one a length: 0 where no other length checks it. */
  readonly shows: readonly number[]
}

const MOST_ROUNDS = 60
/** Corners stand still when none moves farther than this in a round, mm. */
const STILL = 1e-9

/**
 * The corners that lengths give, by least squares (Gauss–Newton from the drawn corners). Null where the lengths leave the shape loose, or lead
 * to none.
 */
export function fitCorners(drawn: Ring, taped: readonly TapedLength[]): FittedCorners | null {
  let ring = drawn
  let error = misfitOf(ring, taped)
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const loose = looseness(ring, taped)
    if (loose === null) return null
    const move = moveOf(ring, taped, loose)
    let part = 1
    let next = moved(ring, move, part)
    // A full move may overshoot where the mould is far from the drawing.
    while (misfitOf(next, taped) > error * (1 + 1e-12) + 1e-18 && part > 1e-4) {
      part /= 2
      next = moved(ring, move, part)
    }
    ring = next
    error = misfitOf(ring, taped)
    if (Math.max(...move.map(Math.abs)) * part < STILL) break
  }
  const loose = looseness(ring, taped)
  if (loose === null || !Number.isFinite(error)) return null
  return {
    at: laidOn(ring, drawn),
    left: taped.map((one) => leftOf(ring, one)),
    shows: taped.map(({ from, to }) => Math.max(0, 1 - through(loose, lengthRow(ring, from, to)))),
  }
}

function leftOf(ring: Ring, { from, to, length }: TapedLength): number {
  return length - distance(ring[from] as Point, ring[to] as Point)
}

function misfitOf(ring: Ring, taped: readonly TapedLength[]): number {
  return taped.reduce((sum, one) => sum + leftOf(ring, one) ** 2, 0)
}

/** How far the lengths leave each corner loose, the place of the whole held. */
function looseness(ring: Ring, taped: readonly TapedLength[]): Float64Array | null {
  const size = 2 * ring.length
  const held = new Float64Array(size * size)
  for (const { from, to } of taped) addRow(held, lengthRow(ring, from, to))
  for (const row of placeRows(ring)) addRow(held, row)
  return invert(held, size)
}

function moveOf(ring: Ring, taped: readonly TapedLength[], loose: Float64Array): number[] {
  const size = 2 * ring.length
  const pull = new Array<number>(size).fill(0)
  for (const one of taped) {
    const rest = leftOf(ring, one)
    for (const [k, value] of lengthRow(ring, one.from, one.to).entries())
      pull[k] = (pull[k] as number) + value * rest
  }
  return pull.map((_, i) => pull.reduce((sum, value, j) => sum + value * (loose[i * size + j] as number), 0))
}

function moved(ring: Ring, move: readonly number[], part: number): Ring {
  return ring.map(
    ([x, y], k): Point => [x + part * (move[2 * k] as number), y + part * (move[2 * k + 1] as number)],
  )
}

/** Distances under this count alike, mm: far finer than a tape reads. */
const ALIKE = 0.02
const LAYINGS = 200

/**
 * A ring turned and shifted onto another with the least sum of distances between their corners: where one corner is out, the others lie where
 * they are drawn, and that one shows the whole of it. Weighted least squares, the weights renewed.
 */
export function laidOn(ring: Ring, drawn: Ring): Ring {
  let laid = turnedOnto(
    ring,
    drawn,
    ring.map(() => 1),
  )
  for (let round = 0; round < LAYINGS; round += 1) {
    const weights = laid.map((at, k) => 1 / Math.max(ALIKE, distance(at, drawn[k] as Point)))
    const next = turnedOnto(ring, drawn, weights)
    const still = next.every((at, k) => distance(at, laid[k] as Point) < 1e-7)
    laid = next
    if (still) break
  }
  return laid
}

/** The ring turned and shifted, never mirrored, for the least weighted sum of squares: closed form. */
function turnedOnto(ring: Ring, drawn: Ring, weights: readonly number[]): Ring {
  const [from, to] = [middleOf(ring, weights), middleOf(drawn, weights)]
  let [along, across] = [0, 0]
  for (const [k, [x, y]] of ring.entries()) {
    const [dx, dy] = drawn[k] as Point
    const weight = weights[k] as number
    along += weight * ((x - from[0]) * (dx - to[0]) + (y - from[1]) * (dy - to[1]))
    across += weight * ((x - from[0]) * (dy - to[1]) - (y - from[1]) * (dx - to[0]))
  }
  const size = Math.hypot(along, across)
  const [cos, sin] = size > 0 ? [along / size, across / size] : [1, 0]
  return ring.map(
    ([x, y]): Point => [
      to[0] + cos * (x - from[0]) - sin * (y - from[1]),
      to[1] + sin * (x - from[0]) + cos * (y - from[1]),
    ],
  )
}

function middleOf(ring: Ring, weights: readonly number[]): Point {
  const all = weights.reduce((sum, weight) => sum + weight, 0)
  return [0, 1].map(
    (axis) =>
      ring.reduce((sum, corner, k) => sum + (corner[axis] as number) * (weights[k] as number), 0) / all,
  ) as unknown as Point
}
