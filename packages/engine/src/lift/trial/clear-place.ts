import type { DrawnInsert } from '../../panel/drawing.ts'
import type { Point } from '../../panel/point.ts'
import { edges, nearestOnSegment } from '../../panel/polygon.ts'
import { covers, offset, type Region, ringsOf } from '../../panel/region.ts'

/** A face insert that is moved keeps this far off every edge, mm: less cannot be cast, more is the insert kind's own rule. */
export const LEAST_EDGE = 20

export interface ClearPlaceInput {
  readonly region: Region
  readonly kind: DrawnInsert['kind']
  /** Where it is wanted, mm. */
  readonly at: Point
}

/**
 * The place nearest to a wanted one where an insert of that kind can stand, mm: a face insert in the concrete and `LEAST_EDGE` off its
 * edges, where the concrete is that wide; an edge insert on an edge of it. Null where there is no such place, or the wanted one is not finite.
 */
export function clearPlace({ region, kind, at }: ClearPlaceInput): Point | null {
  if (!at.every(Number.isFinite)) return null
  if (kind === 'edge') return nearestOn(region, at)
  const room = clearRoom(region)
  if (room.length === 0) return null
  return covers(room, at) ? at : nearestOn(room, at)
}

const rooms = new WeakMap<Region, Region>()

/** Made once a panel: a finger asks for it at every move. */
function clearRoom(region: Region): Region {
  let room = rooms.get(region)
  if (room === undefined) {
    room = offset(region, -LEAST_EDGE)
    rooms.set(region, room)
  }
  return room
}

function nearestOn(region: Region, at: Point): Point | null {
  let [nearest, least]: [Point | null, number] = [null, Number.POSITIVE_INFINITY]
  for (const side of ringsOf(region).flatMap(edges)) {
    const foot = nearestOnSegment(at, side)
    const apart = Math.hypot(foot[0] - at[0], foot[1] - at[1])
    if (apart < least) [nearest, least] = [foot, apart]
  }
  return nearest
}
