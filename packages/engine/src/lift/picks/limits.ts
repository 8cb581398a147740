import { distance, type Point } from '../../panel/point.ts'
import { bounds, edges, nearestOnSegment } from '../../panel/polygon.ts'
import { covers, type Piece } from '../../panel/region.ts'
import { plainCorners } from './symmetry.ts'

/** Something that inserts keep clear of: a point or a line of points, mm. */
export interface KeptClear {
  readonly what: string
  readonly path: readonly Point[]
  /** Least distance to it, mm. */
  readonly distance: number
}

export interface LimitsInput {
  readonly piece: Piece
  readonly kind: 'face' | 'edge'
  /** Least distance to edges and openings, mm; of an edge insert: to the ends of its edge, other edges and openings. */
  readonly edge: number
  /** Least distance between inserts, mm. */
  readonly spacing: number
  readonly clear: readonly KeptClear[]
}

/** A straight thing to stay away from. */
interface Wall {
  readonly from: Point
  readonly to: Point
  readonly least: number
}

/** A straight piece of the outline that edge inserts may stand on. */
export interface Side {
  readonly from: Point
  readonly to: Point
  readonly along: Point
  readonly length: number
}

/** One linear limit on small moves of a place: slack + normal · d ≥ 0. */
export interface Bound {
  readonly normal: Point
  readonly slack: number
}

/** Rounding that still counts as kept, mm. */
export const KEPT = 1e-4

/** Sides that turn by less than this from the side an insert stands on are no edge to it: cosine of 30°. */
const SAME_WAY = Math.cos(Math.PI / 6)

/** Where inserts may be. */
export class Limits {
  readonly kind: 'face' | 'edge'
  readonly edge: number
  readonly spacing: number
  readonly sides: readonly Side[]
  readonly #piece: Piece
  readonly #walls: readonly Wall[]
  readonly #holes: readonly Wall[]
  readonly #clear: readonly Wall[]
  readonly #cells: Cells

  constructor({ piece, kind, edge, spacing, clear }: LimitsInput) {
    this.kind = kind
    this.edge = edge
    this.spacing = spacing
    this.#piece = piece
    const wallsOf = (ring: readonly Point[]): Wall[] =>
      edges(ring).map(([from, to]) => ({ from, to, least: edge }))
    this.#holes = piece.holes.flatMap(wallsOf)
    this.#walls = [...wallsOf(piece.outline), ...this.#holes]
    this.#clear = clear.flatMap(({ path, distance: least }) =>
      path.length === 1
        ? [{ from: path[0]!, to: path[0]!, least }]
        : path.slice(1).map((to, i) => ({ from: path[i]!, to, least })),
    )
    this.sides = edges(plainCorners(piece.outline)).map(([from, to]) => {
      const length = distance(from, to)
      return { from, to, length, along: [(to[0] - from[0]) / length, (to[1] - from[1]) / length] }
    })
    const most = [...this.#walls, ...this.#clear].reduce((sum, { least }) => Math.max(sum, least), 0)
    this.#cells = new Cells(piece, [...this.#walls, ...this.#clear], most)
  }

  /** Whether a face insert may stand here. */
  fits(at: Point): boolean {
    if (!covers([this.#piece], at)) return false
    return this.#cells.near(at, 0).every((wall) => room(at, wall) >= -KEPT)
  }

  /** Whether an edge insert may stand here on this side. */
  fitsOn(side: Side, at: Point): boolean {
    return this.#wallsBeside(side).every((wall) => room(at, wall) >= -KEPT)
  }

  #wallsBeside(side: Side): Wall[] {
    const others = this.sides.filter(
      (other) =>
        other !== side &&
        Math.abs(other.along[0] * side.along[0] + other.along[1] * side.along[1]) < SAME_WAY,
    )
    return [...others.map(({ from, to }) => ({ from, to, least: this.edge })), ...this.#holes, ...this.#clear]
  }

  /** Limits on moves of up to `reach` mm from a place. */
  bounds(at: Point, reach: number, side?: Side): Bound[] {
    const walls =
      side === undefined
        ? this.#cells.near(at, reach)
        : [
            ...this.#wallsBeside(side),
            { from: side.from, to: side.from, least: Math.min(this.edge, side.length / 2) },
            { from: side.to, to: side.to, least: Math.min(this.edge, side.length / 2) },
          ]
    return walls.flatMap((wall) => {
      const slack = room(at, wall)
      if (slack > 1.5 * reach) return []
      const foot = nearestOnSegment(at, [wall.from, wall.to])
      const off = distance(at, foot)
      if (!(off > 0)) return []
      return [
        { normal: [(at[0] - foot[0]) / off, (at[1] - foot[1]) / off] as Point, slack: Math.max(0, slack) },
      ]
    })
  }

  /** Whether all places of a set stand far enough from each other. */
  apart(places: readonly Point[]): boolean {
    return places.every((at, i) =>
      places.slice(0, i).every((other) => distance(at, other) >= this.spacing - KEPT),
    )
  }
}

function room(at: Point, { from, to, least }: Wall): number {
  return distance(at, nearestOnSegment(at, [from, to])) - least
}

/** Walls by place, so that 300 openings do not make every question slow. */
class Cells {
  readonly #walls: readonly Wall[]
  readonly #most: number
  readonly #size: number
  readonly #cells = new Map<number, number[]>()

  constructor({ outline }: Piece, walls: readonly Wall[], most: number) {
    this.#walls = walls
    this.#most = most
    const box = bounds(outline)
    this.#size = Math.max(1, (box.right - box.left + box.top - box.bottom) / 40)
    for (const [index, { from, to }] of walls.entries()) {
      for (let i = this.#cell(Math.min(from[0], to[0])); i <= this.#cell(Math.max(from[0], to[0])); i += 1) {
        for (
          let j = this.#cell(Math.min(from[1], to[1]));
          j <= this.#cell(Math.max(from[1], to[1]));
          j += 1
        ) {
          const cell = this.#cells.get(key(i, j))
          if (cell === undefined) this.#cells.set(key(i, j), [index])
          else cell.push(index)
        }
      }
    }
  }

  #cell(value: number): number {
    return Math.floor(value / this.#size)
  }

  /** Walls whose limit may be met within `reach` of a place. */
  near([x, y]: Point, reach: number): Wall[] {
    const around = this.#most + 1.5 * reach
    const found = new Set<number>()
    for (let i = this.#cell(x - around); i <= this.#cell(x + around); i += 1) {
      for (let j = this.#cell(y - around); j <= this.#cell(y + around); j += 1) {
        for (const index of this.#cells.get(key(i, j)) ?? []) found.add(index)
      }
    }
    return [...found].sort((p, q) => p - q).map((index) => this.#walls[index]!)
  }
}

function key(i: number, j: number): number {
  return i * 100_003 + j
}
