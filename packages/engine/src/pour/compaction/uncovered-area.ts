import type { Point, Ring } from '../../panel/point.ts'
import { intersect, type Region, regionArea, ringsOf, subtract } from '../../panel/region.ts'

/** Corners that stand for a circle: the polygon lies inside it, so reach is never overstated. */
const CORNERS = 96

/**
 * Concrete that no insertion reaches, m², by cutting areas: slow, used only where the proof found a gap. Circles are polygons inside the
 * true circle, so the answer is a little large, never small.
 */
export function uncoveredArea(region: Region, insertions: readonly Point[], radius: number): number {
  const reaches = insertions.flatMap((at) => reachOf(region, at, radius).map((piece) => piece.outline))
  const outline = region[0]?.outline
  if (outline === undefined) return 0
  const holes = region.flatMap((piece) => piece.holes)
  return regionArea(subtract(outline, [...holes, ...reaches])) / 1e6
}

/** Disc cut by what the insertion sees: the void behind every edge in range is cut away as a wedge. */
function reachOf(region: Region, at: Point, radius: number): Region {
  const disc: Ring = Array.from({ length: CORNERS }, (_, i): Point => {
    const angle = (2 * Math.PI * i) / CORNERS
    return [at[0] + radius * Math.cos(angle), at[1] + radius * Math.sin(angle)]
  })
  const wedges = ringsOf(region).flatMap((ring) =>
    ring.flatMap((a, i) => {
      const b = ring[(i + 1) % ring.length] as Point
      const wedge = wedgeBehind(at, a, b, radius)
      return wedge === null ? [] : [wedge]
    }),
  )
  const [outline, ...rest] = ringsOf(
    intersect(
      [disc],
      region.map((piece) => piece.outline),
    ),
  )
  if (outline === undefined) return []
  // Several pieces can come out where the disc reaches over an edge and back; only what is not behind a wedge stays.
  return [outline, ...rest].flatMap((ring) => subtract(ring, wedges))
}

function wedgeBehind(at: Point, a: Point, b: Point, radius: number): Ring | null {
  const turn = (b[0] - a[0]) * (at[1] - a[1]) - (b[1] - a[1]) * (at[0] - a[0])
  const [da, db] = [Math.hypot(a[0] - at[0], a[1] - at[1]), Math.hypot(b[0] - at[0], b[1] - at[1])]
  if (Math.abs(turn) < 1e-9 || da < 1e-6 || db < 1e-6) return null
  const along = Math.max(
    0,
    Math.min(
      1,
      ((at[0] - a[0]) * (b[0] - a[0]) + (at[1] - a[1]) * (b[1] - a[1])) /
        ((b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2),
    ),
  )
  const foot = Math.hypot(a[0] + along * (b[0] - a[0]) - at[0], a[1] + along * (b[1] - a[1]) - at[1])
  if (foot > radius) return null
  const far = (p: Point, d: number): Point => {
    const out = Math.max(4 * radius, 2 * d) / d
    return [at[0] + (p[0] - at[0]) * out, at[1] + (p[1] - at[1]) * out]
  }
  const [fa, fb] = [far(a, da), far(b, db)]
  const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]
  const dm = Math.max(1e-6, Math.hypot(middle[0] - at[0], middle[1] - at[1]))
  return [a, fa, far(middle, dm), fb, b]
}
