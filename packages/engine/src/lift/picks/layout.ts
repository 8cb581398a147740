import type { Point } from '../../panel/point.ts'
import type { Side } from './limits.ts'
import { type Mirror, mapped, Places } from './symmetry.ts'

/** Places of all inserts as a function of a few numbers, mm, that may change freely. */
export interface Layout {
  readonly params: readonly number[]
  readonly place: (params: readonly number[]) => Point[]
  /** Side of the outline that each place stands on, for edge inserts. */
  readonly sides?: readonly Side[]
}

/** Places of which the first of each mirrored group moves and the others follow. */
export function mirroredLayout({
  places,
  mirrors,
  centre,
  sides,
}: {
  readonly places: readonly Point[]
  readonly mirrors: readonly Mirror[]
  readonly centre: Point
  readonly sides?: readonly Side[]
}): Layout {
  const seen = new Places(places)
  const taken = new Set<number>()
  interface Group {
    readonly from: number
    /** Place of the layout and the mirror that makes it. */
    readonly images: readonly (readonly [number, Mirror])[]
    readonly moves: readonly Point[]
  }
  const groups: Group[] = []
  for (const [i, at] of places.entries()) {
    if (taken.has(i)) continue
    const images: [number, Mirror][] = []
    const staying: Mirror[] = []
    for (const mirror of mirrors) {
      const k = seen.near(mapped(mirror, centre, at))
      if (k === i) staying.push(mirror)
      if (k < 0 || taken.has(k)) continue
      taken.add(k)
      images.push([k, mirror])
    }
    groups.push({ from: i, images, moves: movesOf(staying, sides?.[i]) })
  }
  const place = (params: readonly number[]): Point[] => {
    const out: Point[] = [...places]
    let next = 0
    for (const { from, images, moves } of groups) {
      let [x, y] = places[from]!
      for (const [dx, dy] of moves) {
        x += params[next]! * dx
        y += params[next]! * dy
        next += 1
      }
      for (const [k, mirror] of images) out[k] = mapped(mirror, centre, [x, y])
    }
    return out
  }
  const params = new Array<number>(groups.reduce((sum, { moves }) => sum + moves.length, 0)).fill(0)
  return sides === undefined ? { params, place } : { params, place, sides }
}

/** Directions that every mirror which keeps the place keeps too; on an edge only along it. */
function movesOf(staying: readonly Mirror[], side: Side | undefined): Point[] {
  if (side !== undefined) return staying.length > 1 ? [] : [side.along]
  if (staying.length === 1)
    return [
      [1, 0],
      [0, 1],
    ]
  if (staying.length > 2) return []
  const [, [a, b, c, d]] = staying as [Mirror, Mirror]
  if (a * d - b * c > 0) return []
  // The axis of a mirror of angle 2φ.
  const angle = Math.atan2(b, a) / 2
  return [[Math.cos(angle), Math.sin(angle)]]
}

/** Two places on a line through the centre of gravity: the first moves freely, the second on the line beyond the centre. */
export function pairLayout(centre: Point, first: Point, second: Point): Layout {
  const length = Math.hypot(second[0] - centre[0], second[1] - centre[1])
  return {
    params: [0, 0, 0],
    place: ([dx = 0, dy = 0, further = 0]) => {
      const at: Point = [first[0] + dx, first[1] + dy]
      const [ux, uy] = [centre[0] - at[0], centre[1] - at[1]]
      const by = (length + further) / Math.hypot(ux, uy)
      return [at, [centre[0] + ux * by, centre[1] + uy * by]]
    },
  }
}

/** Two places on sides of the outline and on a line through the centre of gravity: the first moves along its side. */
export function edgePairLayout(
  centre: Point,
  [first, second]: readonly [Point, Point],
  sides: readonly [Side, Side],
): Layout {
  const [from, to] = sides
  return {
    params: [0],
    sides,
    place: ([s = 0]) => {
      const at: Point = [first[0] + s * from.along[0], first[1] + s * from.along[1]]
      const [ux, uy] = [centre[0] - at[0], centre[1] - at[1]]
      const across = ux * to.along[1] - uy * to.along[0]
      const by = ((to.from[0] - centre[0]) * to.along[1] - (to.from[1] - centre[1]) * to.along[0]) / across
      const other: Point = Number.isFinite(by) ? [centre[0] + ux * by, centre[1] + uy * by] : second
      return [at, other]
    },
  }
}
