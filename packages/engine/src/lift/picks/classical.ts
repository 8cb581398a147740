import type { Point } from '../../panel/point.ts'
import type { Piece } from '../../panel/region.ts'
import type { Source } from '../../working/source.ts'
import type { Sharing } from './forces.ts'
import { longestSide } from './symmetry.ts'

/** Two supports of a strip with equal sagging and hogging: (√2 − 1) / 2 of the length from each end. */
export const TWO_FROM_END = (Math.SQRT2 - 1) / 2
/** Three in a row: rigid, or of equal loads. */
const THREE_FROM_END = { rigid: 0.144949, equalised: 0.138073 } as const
/** Four in a row of equal loads. */
const FOUR_FROM_END = [TWO_FROM_END / 2, (1 - TWO_FROM_END) / 2] as const

export const CLASSICAL_SOURCE: Source = {
  standard: 'PCI Design Handbook',
  clause: 'stripping of flat panels: equal sagging and hogging of strips',
  status: 'from memory',
}

/**
 * Places of the classical rule on the rectangle around the panel, its rows along the longest side: 0.207 of both extents in for four; for six three
 * in a row (0.145, the middle), for eight four in a row (0.104, 0.396); two on the long line through the centre of gravity.
 */
export function classicalPlaces({
  piece,
  centre,
  count,
  sharing,
}: {
  readonly piece: Piece
  readonly centre: Point
  readonly count: number
  readonly sharing: Sharing
}): Point[] {
  const turn = longestSide(piece)
  const box = boxAlong(piece, turn)
  const longFirst = box.right - box.left >= box.top - box.bottom
  const angle = longFirst ? turn : turn + Math.PI / 2
  const { left, right, bottom, top } = longFirst ? box : boxAlong(piece, angle)
  const [co, si] = [Math.cos(angle), Math.sin(angle)]
  const [length, width] = [right - left, top - bottom]
  const shares = sharesOf(count, sharing)
  const across = centre[1] * co - centre[0] * si
  const rows = count === 2 ? [across] : [bottom + TWO_FROM_END * width, top - TWO_FROM_END * width]
  return rows.flatMap((v) =>
    shares.map((share): Point => {
      const u = left + share * length
      return [u * co - v * si, u * si + v * co]
    }),
  )
}

function sharesOf(count: number, sharing: Sharing): number[] {
  if (count === 6) {
    const end = THREE_FROM_END[sharing]
    return [end, 0.5, 1 - end]
  }
  if (count === 8) {
    const [outer, inner] = FOUR_FROM_END
    return [outer, inner, 1 - inner, 1 - outer]
  }
  return [TWO_FROM_END, 1 - TWO_FROM_END]
}

/** Extents of the panel along a direction and across it, mm. */
function boxAlong(
  { outline }: Piece,
  angle: number,
): { left: number; right: number; bottom: number; top: number } {
  const [co, si] = [Math.cos(angle), Math.sin(angle)]
  const us = outline.map(([x, y]) => x * co + y * si)
  const vs = outline.map(([x, y]) => y * co - x * si)
  return { left: Math.min(...us), right: Math.max(...us), bottom: Math.min(...vs), top: Math.max(...vs) }
}
