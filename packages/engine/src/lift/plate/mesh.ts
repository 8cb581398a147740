import { orient2d } from 'robust-predicates'
import type { Point, Ring } from '../../panel/point.ts'
import type { Piece } from '../../panel/region.ts'
import { InputError } from '../../working/issue.ts'
import { insideOf, type Side, type Triangles, triangulate } from './triangulate.ts'

/** Triangles over the concrete. Counter-clockwise; sides have the concrete on their left. */
export interface PlateMesh {
  /** mm */
  readonly x: Float64Array
  readonly y: Float64Array
  /** Three nodes a triangle. */
  readonly triangles: Int32Array
  readonly sides: readonly Side[]
  /** Node of each point that was asked for, in their order. */
  readonly pointNodes: readonly number[]
  /** Least angle of all triangles, degrees. */
  readonly leastAngle: number
}

/** A place where the mesh must be fine: side length there and how fast it may grow with distance. */
export interface Fine {
  readonly at: Point
  /** mm */
  readonly size: number
}

export interface PlateMeshInput {
  readonly piece: Piece
  /** Made nodes; inside or on an edge of the concrete. */
  readonly points: readonly Point[]
  readonly fine: readonly Fine[]
  /** Longest side anywhere, mm. */
  readonly coarsest: number
  /** Growth of the side length per mm of distance from a fine place. */
  readonly growth: number
}

/** Least angle that refinement brings about where the drawing has none smaller, degrees. */
export const LEAST_ANGLE = 25
/** More nodes than this and the panel is refused: what its outline asks for cannot be computed in bounded time. */
export const MOST_NODES = 12_000
/** No side is split below this, mm: nothing of a panel is cast finer. */
export const SHORTEST_SIDE = 0.05

interface Draft {
  readonly x: number[]
  readonly y: number[]
  sides: Side[]
  /** 1 at corners of the drawing sharper than a right angle: sides there are split at distances of a power of two. */
  readonly sharp: Set<number>
}

/**
 * Delaunay refinement: a side that is too long, missing or has a node in the circle over it is halved; a triangle that is too large or too
 * thin gets a node at its circumcentre, or the side that this would crowd is halved. Deterministic.
 *
 * Source: J. Ruppert, A Delaunay refinement algorithm for quality 2-dimensional mesh generation, Journal of Algorithms 18 (1995) (from memory).
 *
 * @throws InputError where the outline asks for more nodes than `MOST_NODES` or for sides shorter than `SHORTEST_SIDE`.
 */
export function plateMesh(input: PlateMeshInput): PlateMesh {
  const size = sizeAt(input)
  const draft: Draft = { x: [], y: [], sides: [], sharp: new Set() }
  for (const ring of [input.piece.outline, ...input.piece.holes]) addRing(draft, ring)
  const pointNodes = input.points.map((point) => addPoint(draft, point))
  presplit(draft, size)
  for (let round = 0; round < ROUNDS; round += 1) {
    if (draft.x.length > MOST_NODES) throw tooFine(`more than ${MOST_NODES} nodes`)
    const made = triangulate(draft.x, draft.y)
    if (splitCrowded(draft, made)) continue
    const inside = insideOf(made, draft.sides)
    if (!addCentres(draft, made, inside, size)) return finish(draft, made, inside, pointNodes)
  }
  throw tooFine('refinement does not end')
}

const ROUNDS = 400

function tooFine(found: string): InputError {
  return new InputError([
    { path: 'outline', found, expected: `an outline and openings without parts under ${SHORTEST_SIDE} mm` },
  ])
}

function sizeAt({ fine, coarsest, growth }: PlateMeshInput): (x: number, y: number) => number {
  return (x, y) => {
    let least = coarsest
    for (const { at, size } of fine) {
      const dx = x - at[0]
      const dy = y - at[1]
      const room = (least - size) / growth
      const square = dx * dx + dy * dy
      if (room > 0 && square < room * room) least = size + growth * Math.sqrt(square)
    }
    return least
  }
}

function addRing(draft: Draft, ring: Ring): void {
  const first = draft.x.length
  const n = ring.length
  for (let i = 0; i < n; i += 1) {
    const [p, q, r] = [ring[(i + n - 1) % n]!, ring[i]!, ring[(i + 1) % n]!]
    draft.x.push(q[0])
    draft.y.push(q[1])
    draft.sides.push({ a: first + i, b: first + ((i + 1) % n) })
    const dot = (p[0] - q[0]) * (r[0] - q[0]) + (p[1] - q[1]) * (r[1] - q[1])
    const lengths = Math.hypot(p[0] - q[0], p[1] - q[1]) * Math.hypot(r[0] - q[0], r[1] - q[1])
    if (dot > SHARP * lengths) draft.sharp.add(first + i)
  }
}

/** Cosine above which a corner counts as sharp. */
const SHARP = 0.05

/** A point is on a side when it stands off it by no more than this, mm. */
const ON_SIDE = 1e-6
/** Points closer than this are one node, mm. */
const SAME = 1e-3

function addPoint(draft: Draft, [px, py]: Point): number {
  for (let i = 0; i < draft.x.length; i += 1) {
    if (Math.hypot(draft.x[i]! - px, draft.y[i]! - py) <= SAME) return i
  }
  const node = draft.x.length
  draft.x.push(px)
  draft.y.push(py)
  draft.sides = draft.sides.flatMap((side) => {
    const [ax, ay, bx, by] = [draft.x[side.a]!, draft.y[side.a]!, draft.x[side.b]!, draft.y[side.b]!]
    const length = Math.hypot(bx - ax, by - ay)
    const off = Math.abs((bx - ax) * (py - ay) - (by - ay) * (px - ax)) / length
    const along = ((px - ax) * (bx - ax) + (py - ay) * (by - ay)) / length
    if (off > ON_SIDE || along <= 0 || along >= length) return [side]
    return [
      { a: side.a, b: node },
      { a: node, b: side.b },
    ]
  })
  return node
}

/** Halves a side, or cuts it at a power of two from a sharp corner, and gives the two parts. */
function halve(draft: Draft, { a, b }: Side): [Side, Side] {
  const [ax, ay, bx, by] = [draft.x[a]!, draft.y[a]!, draft.x[b]!, draft.y[b]!]
  const length = Math.hypot(bx - ax, by - ay)
  if (length < 2 * SHORTEST_SIDE) throw tooFine(`a part at (${ax.toFixed(1)}, ${ay.toFixed(1)}) too narrow`)
  let along = 0.5
  const [sharpA, sharpB] = [draft.sharp.has(a), draft.sharp.has(b)]
  if (sharpA !== sharpB) {
    const shell = 2 ** Math.round(Math.log2(length / 2)) / length
    const share = shell > 0.75 ? shell / 2 : shell
    along = sharpA ? share : 1 - share
  }
  const node = draft.x.length
  draft.x.push(ax + along * (bx - ax))
  draft.y.push(ay + along * (by - ay))
  return [
    { a, b: node },
    { a: node, b },
  ]
}

/** Sides to the size asked for, before the first triangulation. */
function presplit(draft: Draft, size: (x: number, y: number) => number): void {
  const done: Side[] = []
  const open = [...draft.sides].reverse()
  while (open.length > 0) {
    const side = open.pop() as Side
    const [ax, ay, bx, by] = [draft.x[side.a]!, draft.y[side.a]!, draft.x[side.b]!, draft.y[side.b]!]
    const length = Math.hypot(bx - ax, by - ay)
    const wanted = Math.min(
      size((ax + bx) / 2, (ay + by) / 2),
      1.2 * size(ax, ay) + length / 4,
      1.2 * size(bx, by) + length / 4,
    )
    if (length <= LONG * wanted || length < 2 * SHORTEST_SIDE) done.push(side)
    else open.push(...halve(draft, side).reverse())
    if (draft.x.length > MOST_NODES) throw tooFine(`more than ${MOST_NODES} nodes`)
  }
  draft.sides = done
}

/** A side may be this much longer than asked. */
const LONG = 1.25

/** Halves the sides that are not edges of the triangles or have a node in the circle over them. */
function splitCrowded(draft: Draft, { corners, edge, count }: Triangles): boolean {
  let split = false
  draft.sides = draft.sides.flatMap((side) => {
    const half = edge.get(side.a * count + side.b)
    const apex = half === undefined ? -1 : corners[half - (half % 3) + ((half + 2) % 3)]!
    if (apex >= 0 && !crowds(draft, side, draft.x[apex]!, draft.y[apex]!)) return [side]
    const [ax, ay] = [draft.x[side.a]!, draft.y[side.a]!]
    const length = Math.hypot(draft.x[side.b]! - ax, draft.y[side.b]! - ay)
    if (apex >= 0 && length < 4 * SHORTEST_SIDE) return [side]
    split = true
    return halve(draft, side)
  })
  return split
}

function crowds(draft: Draft, { a, b }: Side, px: number, py: number): boolean {
  const ux = draft.x[a]! - px
  const uy = draft.y[a]! - py
  const vx = draft.x[b]! - px
  const vy = draft.y[b]! - py
  return ux * vx + uy * vy < -1e-9 * Math.sqrt((ux * ux + uy * uy) * (vx * vx + vy * vy))
}

interface Centre {
  readonly x: number
  readonly y: number
  readonly radius: number
}

function addCentres(
  draft: Draft,
  { corners }: Triangles,
  inside: Uint8Array,
  size: (x: number, y: number) => number,
): boolean {
  const wanted: Centre[] = []
  for (let t = 0; t < inside.length; t += 1) {
    if (!inside[t]) continue
    const centre = centreWanted(draft, corners, t, size)
    if (centre !== null) wanted.push(centre)
  }
  wanted.sort((p, q) => q.radius - p.radius || p.x - q.x || p.y - q.y)
  const split = new Set<number>()
  const taken = new Room(wanted[0]?.radius ?? 1)
  let added = false
  for (const centre of wanted) {
    const free = !crowdsSides(draft, centre, split)
    if (!free || !taken.take(centre)) continue
    draft.x.push(centre.x)
    draft.y.push(centre.y)
    added = true
  }
  if (split.size > 0) {
    draft.sides = draft.sides.flatMap((side, s) => (split.has(s) ? halve(draft, side) : [side]))
  }
  return added || split.size > 0
}

/** Whether a new node would crowd sides; marks those that can be split for it. */
function crowdsSides(draft: Draft, centre: Centre, split: Set<number>): boolean {
  let crowded = false
  for (let s = 0; s < draft.sides.length; s += 1) {
    const side = draft.sides[s]!
    if (!near(draft, side, centre) || !crowds(draft, side, centre.x, centre.y)) continue
    crowded = true
    const length = Math.hypot(draft.x[side.a]! - draft.x[side.b]!, draft.y[side.a]! - draft.y[side.b]!)
    if (length >= 4 * SHORTEST_SIDE) split.add(s)
  }
  return crowded
}

function near(draft: Draft, { a, b }: Side, { x, y }: Centre): boolean {
  const ax = draft.x[a]!
  const ay = draft.y[a]!
  const bx = draft.x[b]!
  const by = draft.y[b]!
  const dx = 2 * x - ax - bx
  const dy = 2 * y - ay - by
  return dx * dx + dy * dy < (bx - ax) * (bx - ax) + (by - ay) * (by - ay)
}

/** Circumcentre of a triangle that is too large or too thin, else null. */
function centreWanted(
  draft: Draft,
  corners: Int32Array,
  t: number,
  size: (x: number, y: number) => number,
): Centre | null {
  const i = corners[3 * t]!
  const j = corners[3 * t + 1]!
  const k = corners[3 * t + 2]!
  const ax = draft.x[i]!
  const ay = draft.y[i]!
  const bx = draft.x[j]! - ax
  const by = draft.y[j]! - ay
  const cx = draft.x[k]! - ax
  const cy = draft.y[k]! - ay
  const twice = bx * cy - by * cx
  const ab = Math.sqrt(bx * bx + by * by)
  const ac = Math.sqrt(cx * cx + cy * cy)
  const bc = Math.sqrt((cx - bx) ** 2 + (cy - by) ** 2)
  const radius = (ab * ac * bc) / (2 * twice)
  const shortest = Math.min(ab, ac, bc)
  const limit = ROUND * size(ax + (bx + cx) / 3, ay + (by + cy) / 3)
  if (radius <= limit) {
    const sine = shortest / (2 * radius)
    if (sine >= LEAST_SINE) return null
    // The thin end of a sharp corner of the drawing stays.
    const tip = shortest === bc ? i : shortest === ac ? j : k
    if (draft.sharp.has(tip)) return null
    if (shortest < 2 * SHORTEST_SIDE)
      throw tooFine(`a part at (${ax.toFixed(1)}, ${ay.toFixed(1)}) too narrow`)
  }
  const [b2, c2] = [bx * bx + by * by, cx * cx + cy * cy]
  return {
    x: ax + (cy * b2 - by * c2) / (2 * twice),
    y: ay + (bx * c2 - cx * b2) / (2 * twice),
    radius,
  }
}

/** Circumradius allowed beside the side length asked for; 0.58 is that of an equilateral triangle. */
const ROUND = 0.8
const LEAST_SINE = Math.sin((LEAST_ANGLE * Math.PI) / 180)

/** Keeps the new nodes of one round apart from each other. */
class Room {
  private readonly cells = new Map<string, Centre[]>()
  private readonly cell: number
  constructor(cell: number) {
    this.cell = cell
  }

  take(centre: Centre): boolean {
    const [i, j] = [Math.floor(centre.x / this.cell), Math.floor(centre.y / this.cell)]
    for (let di = -1; di <= 1; di += 1) {
      for (let dj = -1; dj <= 1; dj += 1) {
        for (const other of this.cells.get(`${i + di},${j + dj}`) ?? []) {
          const apart = Math.hypot(other.x - centre.x, other.y - centre.y)
          if (apart < 0.9 * Math.max(centre.radius, Math.min(other.radius, 1.5 * centre.radius))) return false
        }
      }
    }
    const key = `${i},${j}`
    const cell = this.cells.get(key)
    if (cell === undefined) this.cells.set(key, [centre])
    else cell.push(centre)
    return true
  }
}

function finish(draft: Draft, { corners }: Triangles, inside: Uint8Array, pointNodes: number[]): PlateMesh {
  const nodeOf = new Int32Array(draft.x.length).fill(-1)
  const [x, y]: [number[], number[]] = [[], []]
  const take = (i: number): number => {
    if (nodeOf[i]! < 0) {
      nodeOf[i] = x.length
      x.push(draft.x[i]!)
      y.push(draft.y[i]!)
    }
    return nodeOf[i]!
  }
  const triangles: number[] = []
  let least = 180
  for (let t = 0; t < inside.length; t += 1) {
    if (!inside[t]) continue
    const nodes = [take(corners[3 * t]!), take(corners[3 * t + 1]!), take(corners[3 * t + 2]!)]
    if (
      !(
        orient2d(x[nodes[0]!]!, y[nodes[0]!]!, x[nodes[1]!]!, y[nodes[1]!]!, x[nodes[2]!]!, y[nodes[2]!]!) < 0
      )
    ) {
      throw new Error(`mesh: triangle ${nodes.join(', ')}: expected counter-clockwise`)
    }
    triangles.push(...nodes)
    for (let k = 0; k < 3; k += 1) {
      const [p, q, r] = [nodes[k]!, nodes[(k + 1) % 3]!, nodes[(k + 2) % 3]!]
      const [ux, uy, vx, vy] = [x[q]! - x[p]!, y[q]! - y[p]!, x[r]! - x[p]!, y[r]! - y[p]!]
      least = Math.min(least, (Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy) * 180) / Math.PI)
    }
  }
  return {
    x: Float64Array.from(x),
    y: Float64Array.from(y),
    triangles: Int32Array.from(triangles),
    sides: draft.sides.map(({ a, b }) => ({ a: take(a), b: take(b) })),
    pointNodes: pointNodes.map(take),
    leastAngle: least,
  }
}
