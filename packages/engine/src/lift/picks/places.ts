import type { Point } from '../../panel/point.ts'
import { bounds, edges } from '../../panel/polygon.ts'
import { offset, type Piece, regionArea, ringsOf } from '../../panel/region.ts'
import type { Limits, Side } from './limits.ts'
import { ITSELF, MIRROR_TOLERANCE, type Mirror, mapped, Places } from './symmetry.ts'

/** A place where an insert may be; on which side of the outline, for an edge insert. */
export interface Place {
  readonly at: Point
  readonly side?: Side
}

export interface PlacesInput {
  readonly piece: Piece
  readonly limits: Limits
  readonly centre: Point
  /** Direction of the rows, radians. */
  readonly along: number
  readonly mirrors: readonly Mirror[]
  /** About so many. */
  readonly wanted: number
}

/** Rows of places about the centre of gravity, and the rim of what the limits leave; closed under the mirrors. */
export function facePlaces({ piece, limits, centre, along, mirrors, wanted }: PlacesInput): Place[] {
  const room = offset([piece], -limits.edge)
  const rim = ringsOf(room)
  const step = Math.max(
    Math.sqrt(regionArea(room) / wanted),
    ringsOf(room)
      .flatMap(edges)
      .reduce((sum, [a, b]) => sum + Math.hypot(b[0] - a[0], b[1] - a[1]), 0) /
      (2 * wanted),
    longerOf(piece) / (2 * wanted),
    Math.sqrt(boxArea(piece) / (20 * wanted)),
  )
  const found: Place[] = []
  const seen = new Places([])
  const take = (at: Point): void => {
    const images = mirrors.map((mirror) => mapped(mirror, centre, at))
    for (const image of mirrors.length > 1 ? images : [at]) {
      if (seen.near(image) >= 0 || !limits.fits(image)) continue
      seen.add(image)
      found.push({ at: image })
    }
  }
  const [co, si] = [Math.cos(along), Math.sin(along)]
  const box = bounds(piece.outline)
  const reach = Math.ceil((2 * longerOf(piece)) / step)
  for (let j = 0; j <= 2 * reach; j += 1) {
    const v = step * (j % 2 === 0 ? -j / 2 : (j + 1) / 2)
    for (let i = 0; i <= 2 * reach; i += 1) {
      const u = step * (i % 2 === 0 ? -i / 2 : (i + 1) / 2)
      const [x, y] = [centre[0] + u * co - v * si, centre[1] + u * si + v * co]
      if (x > box.left && x < box.right && y > box.bottom && y < box.top) take([x, y])
    }
  }
  for (const ring of rim) {
    for (const [a, b] of edges(ring)) {
      const parts = Math.max(1, Math.round(Math.hypot(b[0] - a[0], b[1] - a[1]) / (1.5 * step)))
      for (let k = 0; k < parts; k += 1) {
        take([a[0] + ((b[0] - a[0]) * k) / parts, a[1] + ((b[1] - a[1]) * k) / parts])
      }
    }
  }
  return found
}

/** Places along the sides of the outline, each side from its middle outward; closed under the mirrors. */
export function edgePlaces({ limits, centre, mirrors, wanted }: PlacesInput): Place[] {
  const round = limits.sides.reduce((sum, { length }) => sum + length, 0)
  const step = round / wanted
  const found: Place[] = []
  const seen = new Places([])
  const take = (at: Point): void => {
    if (seen.near(at) >= 0) return
    const side = limits.sides.find((one) => onSide(one, at) && limits.fitsOn(one, at))
    if (side === undefined) return
    seen.add(at)
    found.push({ at, side })
  }
  for (const { from, along, length } of limits.sides) {
    const half = Math.max(1, Math.round(length / (2 * step)))
    const own = [limits.edge, length - limits.edge].filter((s) => s > 0 && s < length)
    const rows = Array.from({ length: 2 * half - 1 }, (_, k) => (length * (k + 1)) / (2 * half))
    for (const s of [...rows, ...own]) {
      const at: Point = [from[0] + s * along[0], from[1] + s * along[1]]
      for (const mirror of [ITSELF, ...mirrors]) take(mapped(mirror, centre, at))
    }
  }
  return found
}

/** Within 0.01 mm of the side. */
export function onSide({ from, along, length }: Side, [x, y]: Point): boolean {
  const [dx, dy] = [x - from[0], y - from[1]]
  const s = dx * along[0] + dy * along[1]
  return Math.abs(dx * along[1] - dy * along[0]) < 0.01 && s > -0.01 && s < length + 0.01
}

/** Places at multiples of a pitch from the drawing's origin, thinned to about `wanted`; closed under the mirrors as far as the grid is. */
export function gridPlaces({ piece, limits, centre, mirrors, wanted }: PlacesInput, pitch: Point): Place[] {
  const box = bounds(piece.outline)
  const whole = ((box.right - box.left) * (box.top - box.bottom)) / (pitch[0] * pitch[1])
  const every = Math.max(1, Math.floor(Math.sqrt(whole / (2 * wanted))))
  const found: Place[] = []
  const seen = new Places([])
  const take = (at: Point): void => {
    for (const mirror of mirrors) {
      const place = gridPlace(limits, mapped(mirror, centre, at), pitch)
      if (place === null || seen.near(place.at) >= 0) continue
      seen.add(place.at)
      found.push(place)
    }
  }
  if (limits.kind === 'face') {
    for (let j = Math.ceil(box.bottom / pitch[1]); j * pitch[1] <= box.top; j += every) {
      for (let i = Math.ceil(box.left / pitch[0]); i * pitch[0] <= box.right; i += every) {
        take([i * pitch[0], j * pitch[1]])
      }
    }
    return found
  }
  for (const side of limits.sides) {
    const axis = axisOf(side)
    const [low, high] = [Math.min(side.from[axis], side.to[axis]), Math.max(side.from[axis], side.to[axis])]
    const parts = (high - low) / pitch[axis]
    const stride = Math.max(1, Math.floor(parts / 30))
    for (let i = Math.ceil(low / pitch[axis]); i * pitch[axis] <= high; i += stride) {
      const s = (i * pitch[axis] - side.from[axis]) / side.along[axis]
      take([side.from[0] + s * side.along[0], side.from[1] + s * side.along[1]])
    }
  }
  return found
}

/** Coordinate in which a side runs more: the one that lies on the grid for inserts on it. */
function axisOf({ along }: Side): 0 | 1 {
  return Math.abs(along[0]) >= Math.abs(along[1]) ? 0 : 1
}

/** The place of the grid within a millimetre of a point, where an insert fits; else null. */
export function gridPlace(limits: Limits, at: Point, pitch: Point): Place | null {
  const near: Point = [Math.round(at[0] / pitch[0]) * pitch[0], Math.round(at[1] / pitch[1]) * pitch[1]]
  if (limits.kind === 'face') {
    const off = Math.max(Math.abs(near[0] - at[0]), Math.abs(near[1] - at[1]))
    return off <= MIRROR_TOLERANCE && limits.fits(near) ? { at: near } : null
  }
  for (const side of limits.sides) {
    const axis = axisOf(side)
    if (Math.abs(near[axis] - at[axis]) > MIRROR_TOLERANCE) continue
    const s = (near[axis] - side.from[axis]) / side.along[axis]
    const place: Point = [side.from[0] + s * side.along[0], side.from[1] + s * side.along[1]]
    const off = Math.hypot(place[0] - at[0], place[1] - at[1])
    if (off > 2 * MIRROR_TOLERANCE || s < 0 || s > side.length) continue
    if (limits.fitsOn(side, place)) return { at: place, side }
  }
  return null
}

function longerOf({ outline }: Piece): number {
  const box = bounds(outline)
  return Math.max(box.right - box.left, box.top - box.bottom)
}

function boxArea({ outline }: Piece): number {
  const box = bounds(outline)
  return (box.right - box.left) * (box.top - box.bottom)
}
