import { orient2d } from 'robust-predicates'
import type { Point, Ring } from '../../panel/point.ts'
import type { Piece } from '../../panel/region.ts'

/** A turn or mirror about the centre of gravity: x' = a x + b y, y' = c x + d y. */
export type Mirror = readonly [a: number, b: number, c: number, d: number]

export const ITSELF: Mirror = [1, 0, 0, 1]
const HALF_TURN: Mirror = [-1, 0, 0, -1]

/** A mirrored corner must meet one of the drawing within this, mm. */
export const MIRROR_TOLERANCE = 1

/**
 * How a panel maps onto itself: itself alone; with one mirror; with a half turn; or with two mirrors at a right angle and the half turn. Of a shape with more
 * mirrors (square, hexagon) the pair is taken whose first axis lies nearest along the longest side.
 */
export function mirrorsOf(piece: Piece, centre: Point): readonly Mirror[] {
  const rings = [piece.outline, ...piece.holes].map(plainCorners)
  const points = rings.flatMap((ring) =>
    ring.flatMap((corner, i): Point[] => {
      const next = ring[(i + 1) % ring.length]!
      return [corner, [(corner[0] + next[0]) / 2, (corner[1] + next[1]) / 2]]
    }),
  )
  const seen = new Places(points)
  const holds = (mirror: Mirror): boolean =>
    points.every((point) => seen.near(mapped(mirror, centre, point)) >= 0)
  const along = longestSide(piece)
  const axes = axesOf(rings[0] ?? [], centre)
    .filter((axis) => holds(mirrorAt(axis)))
    .sort((p, q) => offAxis(p, along) - offAxis(q, along))
  const first = axes[0]
  if (first === undefined) return holds(HALF_TURN) ? [ITSELF, HALF_TURN] : [ITSELF]
  const across = mirrorAt(first + Math.PI / 2)
  return holds(across) ? [ITSELF, mirrorAt(first), across, HALF_TURN] : [ITSELF, mirrorAt(first)]
}

export function mapped([a, b, c, d]: Mirror, centre: Point, [x, y]: Point): Point {
  const [dx, dy] = [x - centre[0], y - centre[1]]
  return [centre[0] + a * dx + b * dy, centre[1] + c * dx + d * dy]
}

function mirrorAt(angle: number): Mirror {
  const [co, si] = [Math.cos(2 * angle), Math.sin(2 * angle)]
  return [co, si, si, -co]
}

/** Angles, radians, of all axes that map the first corner on some corner as far from the centre: no other can hold. */
function axesOf(ring: Ring, centre: Point): number[] {
  const first = ring[0]
  if (first === undefined) return []
  const [ux, uy] = [first[0] - centre[0], first[1] - centre[1]]
  const away = Math.hypot(ux, uy)
  return ring.flatMap(([x, y]) => {
    const [vx, vy] = [x - centre[0], y - centre[1]]
    if (Math.abs(Math.hypot(vx, vy) - away) > MIRROR_TOLERANCE) return []
    return [
      (Math.atan2(uy, ux) + Math.atan2(vy, vx)) / 2,
      (Math.atan2(uy, ux) + Math.atan2(vy, vx) + 2 * Math.PI) / 2,
    ]
  })
}

/** How far an axis lies from a direction, 0 … π/2; rounded, so that equal ones keep their order. */
function offAxis(angle: number, along: number): number {
  const turn = Math.abs(angle - along) % Math.PI
  return Math.round(Math.min(turn, Math.PI - turn) * 1e6)
}

/** Direction of the longest side of the outline, radians. */
export function longestSide({ outline }: Piece): number {
  let [angle, most] = [0, 0]
  const ring = plainCorners(outline)
  for (const [i, [ax, ay]] of ring.entries()) {
    const [bx, by] = ring[(i + 1) % ring.length]!
    const length = Math.hypot(bx - ax, by - ay)
    if (length > most * (1 + 1e-9)) [angle, most] = [Math.atan2(by - ay, bx - ax), length]
  }
  return angle
}

/** The corners of a ring without those on a straight run. */
export function plainCorners(ring: Ring): Ring {
  return ring.filter((corner, i) => {
    const [p, q] = [ring[(i + ring.length - 1) % ring.length]!, ring[(i + 1) % ring.length]!]
    const twice = Math.abs(orient2d(p[0], p[1], corner[0], corner[1], q[0], q[1]))
    return twice > 1e-6 * Math.hypot(q[0] - p[0], q[1] - p[1]) ** 2
  })
}

/** Points found again by place, within `MIRROR_TOLERANCE`. */
export class Places {
  readonly #cells = new Map<string, number[]>()
  readonly #points: Point[] = []

  constructor(points: readonly Point[]) {
    for (const point of points) this.add(point)
  }

  add(point: Point): void {
    const key = cellKey(Math.floor(point[0] / CELL), Math.floor(point[1] / CELL))
    const cell = this.#cells.get(key)
    if (cell === undefined) this.#cells.set(key, [this.#points.length])
    else cell.push(this.#points.length)
    this.#points.push(point)
  }

  /** Index of the nearest point within the tolerance, or −1. */
  near([x, y]: Point): number {
    let [best, least] = [-1, MIRROR_TOLERANCE]
    const [i, j] = [Math.floor(x / CELL), Math.floor(y / CELL)]
    for (let di = -1; di <= 1; di += 1) {
      for (let dj = -1; dj <= 1; dj += 1) {
        for (const index of this.#cells.get(cellKey(i + di, j + dj)) ?? []) {
          const [px, py] = this.#points[index]!
          const off = Math.hypot(px - x, py - y)
          if (off <= least) [best, least] = [index, off]
        }
      }
    }
    return best
  }
}

const CELL = 50

function cellKey(i: number, j: number): string {
  return `${i},${j}`
}
