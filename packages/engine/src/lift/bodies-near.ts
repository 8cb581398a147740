import type { DrawnInsert } from '../panel/drawing.ts'
import type { Panel } from '../panel/panel.ts'
import type { Point, Ring } from '../panel/point.ts'
import { distanceToSegment, edges, placeInRing } from '../panel/polygon.ts'
import { ringsOf } from '../panel/region.ts'
import { linesApart, partsApart } from '../panel/way.ts'

/** Concrete that may break out with an insert reaches this many embedments from its axis. */
const CONE = 1.5

/**
 * Void formers and ducts, in words, that lie in the concrete which an insert pulls on: seen from above, within one and a half embedments of its axis; the thickness stands for an embedment
 * that nobody gave. How high they lie is not counted.
 */
export function bodiesNear({
  panel,
  insert,
  depth = panel.drawing.thickness,
}: {
  readonly panel: Panel
  readonly insert: Pick<DrawnInsert, 'at' | 'kind'>
  /** Embedment, mm. */
  readonly depth?: number | undefined
}): string[] {
  const { voids = [], ducts = [] } = panel.drawing
  if (voids.length === 0 && ducts.length === 0) return []
  const axis = axisOf(panel, insert, depth)
  const reach = CONE * depth
  return [
    ...voids
      .filter(({ outline }) => toRing(axis, outline as unknown as Ring) < reach)
      .map(({ mark }) => `void former ${mark}`),
    ...ducts
      .filter(
        ({ line, diameter }) => linesApart(axis, line as unknown as readonly Point[]) - diameter / 2 < reach,
      )
      .map(({ mark }) => `duct ${mark}`),
  ]
}

/** A face insert is a point from above; an edge insert runs square from its edge into the panel. */
function axisOf(
  { region }: Panel,
  { at, kind }: Pick<DrawnInsert, 'at' | 'kind'>,
  depth: number,
): [Point, Point] {
  if (kind === 'face') return [at, at]
  let [nearest, inward]: [number, Point] = [Number.POSITIVE_INFINITY, [0, 0]]
  // Outlines run counter-clockwise and holes clockwise: the concrete is on the left.
  for (const [a, b] of ringsOf(region).flatMap(edges)) {
    const off = distanceToSegment(at, [a, b])
    if (off >= nearest) continue
    const length = Math.hypot(b[0] - a[0], b[1] - a[1])
    nearest = off
    inward = [-(b[1] - a[1]) / length, (b[0] - a[0]) / length]
  }
  return [at, [at[0] + depth * inward[0], at[1] + depth * inward[1]]]
}

function toRing(axis: [Point, Point], ring: Ring): number {
  if (axis.some((end) => placeInRing(end, ring) !== 'outside')) return 0
  return edges(ring).reduce(
    (least, edge) => Math.min(least, partsApart(axis, edge)),
    Number.POSITIVE_INFINITY,
  )
}
