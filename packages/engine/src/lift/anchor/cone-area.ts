import type { Point, Ring } from '../../panel/point.ts'
import { area, bounds, distanceToSegment, edges } from '../../panel/polygon.ts'
import { clipRegions, covers, type Region, regionArea, ringsOf } from '../../panel/region.ts'
import { dot, type Frame, frameAt, fromTo, placed } from './frame.ts'
import { sideFaces, straightTo } from './side-face.ts'

export interface ConesInput {
  /** The face: outline less openings. */
  readonly region: Region
  readonly at: readonly Point[]
  /** Half the side of the square of one insert, mm: 1.5 depths. */
  readonly reach: number
}

/** Share of a cone that may lie behind an opening or notch, out of sight of its insert, and still count. */
const OUT_OF_SIGHT = 0.1

/**
 * Directions in which the squares of a group may lie, radians in [0, π/2): along the edges within reach; where there is none, along the
 * nearest pair. The least favourable of them counts.
 */
export function coneAngles({ region, at, reach }: ConesInput): number[] {
  const near = ringsOf(region)
    .flatMap(edges)
    .filter((edge) => at.some((point) => distanceToSegment(point, edge) < reach))
    .map(([a, b]) => fromTo(a, b))
  if (near.length > 0) return quarterAngles(near)
  const pairs = at.flatMap((a, index) => at.slice(index + 1).map((b) => fromTo(a, b)))
  if (pairs.length === 0) return [0]
  const least = Math.min(...pairs.map((pair) => Math.hypot(...pair)))
  return quarterAngles(pairs.filter((pair) => Math.hypot(...pair) <= least * (1 + 1e-6)))
}

/** Angles of a square that lies along each vector, each once. */
function quarterAngles(vectors: readonly Point[]): number[] {
  const quarter = Math.PI / 2
  const found: number[] = []
  for (const [x, y] of vectors) {
    const angle = ((Math.atan2(y, x) % quarter) + quarter) % quarter
    const apart = (other: number) => {
      const turn = Math.abs(angle - other)
      return Math.min(turn, quarter - turn)
    }
    if (found.every((other) => apart(other) > 1e-6)) found.push(angle)
  }
  return found
}

/**
 * Projected area of the cones of a group, mm²: the squares of all inserts together, as far as there is concrete; of each square only the
 * part that hangs together with its insert.
 *
 * Where more than a tenth of a square's concrete lies behind an opening or notch as seen from the insert (a slot), what is out of sight
 * does not count. On a rectangle this is the textbook's rectangle.
 */
export function coneArea({ region, at, reach, angle }: ConesInput & { readonly angle: number }): number {
  const frame = frameAt(angle)
  const cones = at.map((point) => cone(region, point, reach, frame))
  return regionArea(cones.reduce((all, one) => clipRegions('either', all, one)))
}

function cone(region: Region, point: Point, reach: number, frame: Frame): Region {
  const square: Ring = [
    placed(point, frame, -reach, -reach),
    placed(point, frame, reach, -reach),
    placed(point, frame, reach, reach),
    placed(point, frame, -reach, reach),
  ]
  const whole = holding(clipRegions('both', [{ outline: square, holes: [] }], region), point)
  const shadows = shadowsOf(region, point, square)
  if (shadows.length === 0) return whole
  const seen = holding(
    shadows.reduce((left, outline) => clipRegions('less', left, [{ outline, holes: [] }]), whole),
    point,
  )
  return regionArea(seen) < (1 - OUT_OF_SIGHT) * regionArea(whole) ? seen : whole
}

/** The piece that the insert stands in. */
function holding(region: Region, point: Point): Region {
  return region.filter((piece) => covers([piece], point))
}

/** What each edge hides of a square from an insert: from the edge outward, far past the square. */
function shadowsOf(region: Region, point: Point, square: Ring): Ring[] {
  const box = bounds(square)
  const far = 4 * Math.max(box.right - box.left, box.top - box.bottom)
  const cast = (corner: Point): Point => {
    const [x, y] = fromTo(point, corner)
    const scale = (far + Math.hypot(x, y)) / Math.hypot(x, y)
    return [point[0] + x * scale, point[1] + y * scale]
  }
  return ringsOf(region)
    .flatMap(edges)
    .filter(([a, b]) => meetsBox(a, b, box))
    .map(([a, b]): Ring => [a, cast(a), cast(b), b])
    .filter((ring) => area(ring) > 1)
    .map((ring) => (turnsLeft(ring) ? ring : [...ring].reverse()))
}

function meetsBox(a: Point, b: Point, box: ReturnType<typeof bounds>): boolean {
  return (
    Math.max(a[0], b[0]) > box.left &&
    Math.min(a[0], b[0]) < box.right &&
    Math.max(a[1], b[1]) > box.bottom &&
    Math.min(a[1], b[1]) < box.top
  )
}

function turnsLeft(ring: Ring): boolean {
  return edges(ring).reduce((sum, [a, b]) => sum + a[0] * b[1] - b[0] * a[1], 0) > 0
}

/** Nearest edge of a group, mm. */
export function nearestEdge(region: Region, at: readonly Point[]): number {
  const sides = ringsOf(region).flatMap(edges)
  return Math.min(...at.flatMap((point) => sides.map((side) => distanceToSegment(point, side))))
}

/**
 * Distance to the nearest edge on each of the four sides of a group where it is below `reach`, mm: the edges that hold back its cone.
 * Only an edge that faces an insert counts, not the corner of one that runs away from it: a side too many would raise the resistance.
 */
export function nearSides({ region, at, reach, angle }: ConesInput & { readonly angle: number }): number[] {
  const { along, across } = frameAt(angle)
  const found = new Map<number, number>()
  for (const face of sideFaces(ringsOf(region).flatMap(edges))) {
    for (const point of at) {
      const away = straightTo(face, point)
      const far = distanceToSegment(point, [face.from, face.to])
      if (!(away > 0) || !(away < reach) || far - away > 1e-6 * far) continue
      const [u, v] = [dot(face.outward, along), dot(face.outward, across)]
      const sector = Math.abs(u) >= Math.abs(v) ? (u > 0 ? 0 : 2) : v > 0 ? 1 : 3
      found.set(sector, Math.min(found.get(sector) ?? Number.POSITIVE_INFINITY, away))
    }
  }
  return [...found.values()]
}
