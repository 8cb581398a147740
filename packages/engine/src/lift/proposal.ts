import type { Panel } from '../panel/panel.ts'
import type { Point } from '../panel/point.ts'
import { bounds, nearestOnSegment } from '../panel/polygon.ts'
import { covers, distanceToEdge, offset, type Region, ringsOf } from '../panel/region.ts'
import { inOneLine } from './supports.ts'

/** Place of each of four picks from the centre of gravity, as a share of the panel's extent: 0.5 − 0.2071. */
const FROM_CENTRE = 1 - Math.SQRT1_2
/** Least edge distance asked for, in thicknesses; less where the panel has no such place. */
const EDGE = 2

export interface ProposedInsert {
  readonly mark: string
  readonly at: [number, number]
  readonly kind: 'face'
}

/**
 * Four face inserts for a drawing that has none: the classical places 0.207 of the sides in, taken about the centre of gravity so that
 * the panel hangs level, each moved to the nearest place two thicknesses from an edge. Empty where no such four hold the panel.
 *
 * Source: equal sagging and hogging of a strip on two supports, (√2 − 1) / 2 from its ends; statics.
 */
export function proposal({
  panel,
}: {
  readonly panel: Pick<Panel, 'region' | 'centre' | 'drawing'>
}): readonly ProposedInsert[] {
  const outline = panel.region[0]?.outline
  if (outline === undefined) return []
  const box = bounds(outline)
  const [dx, dy] = [FROM_CENTRE * (box.right - box.left), FROM_CENTRE * (box.top - box.bottom)]
  const room = [EDGE, EDGE / 2, EDGE / 4]
    .map((times) => offset(panel.region, -times * panel.drawing.thickness))
    .find((shrunk) => shrunk.length > 0)
  if (room === undefined) return []
  const places = [
    [-dx, -dy],
    [dx, -dy],
    [dx, dy],
    [-dx, dy],
  ].map(([x, y]) => nearestPlace(room, [panel.centre[0] + x!, panel.centre[1] + y!]))
  const apart = places.every((at, i) =>
    places
      .slice(0, i)
      .every((other) => Math.hypot(at[0] - other[0], at[1] - other[1]) > panel.drawing.thickness),
  )
  const inside = places.every((at) => covers(panel.region, at) && distanceToEdge(panel.region, at) > 1)
  if (!apart || !inside || inOneLine(places)) return []
  return places.map((at, i) => ({ mark: 'ABCD'[i]!, at: [...at], kind: 'face' }))
}

/** The point itself where it lies in the region, else the nearest on its edges. */
function nearestPlace(region: Region, at: Point): Point {
  if (covers(region, at)) return at
  let [nearest, least] = [at, Number.POSITIVE_INFINITY]
  for (const ring of ringsOf(region)) {
    for (const [i, corner] of ring.entries()) {
      const foot = nearestOnSegment(at, [corner, ring[(i + 1) % ring.length]!])
      const apart = Math.hypot(foot[0] - at[0], foot[1] - at[1])
      if (apart < least) [nearest, least] = [foot, apart]
    }
  }
  return nearest
}
