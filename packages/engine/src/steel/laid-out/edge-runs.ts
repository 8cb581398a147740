import { isEdgeWord } from '../../panel/drawn-steel.ts'
import type { Panel } from '../../panel/panel.ts'
import { distance, type Point, type Ring } from '../../panel/point.ts'
import { distanceToRing } from '../../panel/polygon.ts'
import { ringsOf } from '../../panel/region.ts'

/** One straight edge of the concrete; walked from `from` to `to` the concrete lies to the left. */
export interface EdgeRun {
  readonly from: Point
  readonly to: Point
  readonly length: number
  /** Unit vectors: along the edge, and square to it into the concrete. */
  readonly along: Point
  readonly inward: Point
  /** Mark of the opening that it belongs to; null for the outline. */
  readonly opening: string | null
  /** Side of the outline that it faces, by its normal. */
  readonly side: 'bottom' | 'top' | 'left' | 'right'
  /** Whether the concrete goes on round the corner at either end: the corner of an opening. */
  readonly inner: readonly [from: boolean, to: boolean]
}

/** Distance within which an edge of the concrete lies on an opening's outline, mm. */
const ON_OUTLINE = 0.05

/** Every straight edge of a panel's concrete. */
export function edgeRuns({ drawing, region }: Panel): EdgeRun[] {
  return ringsOf(region).flatMap((ring) =>
    ring.flatMap((from, i): EdgeRun[] => {
      const to = ring[(i + 1) % ring.length] as Point
      const length = distance(from, to)
      if (!(length > 0)) return []
      const before = ring[(i + ring.length - 1) % ring.length] as Point
      const after = ring[(i + 2) % ring.length] as Point
      const along: Point = [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
      const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]
      const opening = (drawing.openings ?? []).find(
        ({ outline }) => distanceToRing(middle, outline as unknown as Ring) < ON_OUTLINE,
      )
      const inward: Point = [-along[1] + 0, along[0]]
      return [
        {
          from,
          to,
          length,
          along,
          inward,
          opening: opening?.mark ?? null,
          side: sideOf(inward),
          inner: [turnsRight(before, from, to), turnsRight(from, to, after)],
        },
      ]
    }),
  )
}

/** The edges that a drawing means by a word or by the mark of an opening. */
export function runsAt(place: string, runs: readonly EdgeRun[]): EdgeRun[] {
  if (!isEdgeWord(place)) return runs.filter(({ opening }) => opening === place)
  if (place === 'all') return [...runs]
  if (place === 'openings') return runs.filter(({ opening }) => opening !== null)
  return runs.filter(({ opening, side }) => opening === null && (place === 'outer' || side === place))
}

function sideOf([x, y]: Point): EdgeRun['side'] {
  if (Math.abs(y) >= Math.abs(x)) return y > 0 ? 'bottom' : 'top'
  return x > 0 ? 'left' : 'right'
}

function turnsRight(a: Point, b: Point, c: Point): boolean {
  return (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]) < 0
}
