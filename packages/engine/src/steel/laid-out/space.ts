import type { Corner } from '../steel-plan.ts'
import { bentLine } from './bent-line.ts'
import { besideSpace } from './beside-space.ts'
import { type BesideInput, besideOf, crowdedMoves } from './side-by-side.ts'
import { type Straight, straightOf } from './straights.ts'

/** A straight part of a bar in space, or one of its bends. */
export interface Solid {
  /** Of the bar that it is part of. */
  readonly id: string
  /** Points of its centreline, mm: two of a straight, more along a bend. */
  readonly line: readonly Corner[]
  readonly radius: number
  /** Corners of the box around the centreline, mm. */
  readonly low: Corner
  readonly high: Corner
}

/** Bars that lie in the mould already, to be asked whether another has room. */
export interface Space {
  add(solids: readonly Solid[]): void
  /** First bar that one of these would run into, or null. Parts of the same bar do not count. */
  clash(solids: Iterable<Solid>): Solid | null
  /** Every bar that one of these would run into. */
  clashes(solids: readonly Solid[]): string[]
  /**
   * Tells of a move of these along `way`, a unit vector, by at most `most` mm either way, whether a straight of them would then run side by side with
   * another, neither in contact nor clear. Never where no clear distance is known.
   */
  crowding(solids: readonly Solid[], way: Corner, most: number): (by: number) => boolean
}

/** Bars overlap by less than this where they only touch, mm: the rounding of clipping in whole micrometres, and more. */
const TOUCH = 0.5

/** Side of the squares that bars are filed by, mm. */
const CELL = 1000

interface BarInSpace {
  readonly id: string
  readonly centreline: readonly Corner[] | null
  readonly diameter: number
  /** Inside diameter of its bends, mm; without it its corners are sharp. */
  readonly inside?: number | null
}

/** Straights, then bends of a bar whose centreline is known; sharp corners where its bends are not. */
export function solidsOf({ id, centreline, diameter, inside = null }: BarInSpace): Solid[] {
  if (centreline === null) return []
  const radius = diameter / 2
  if (inside === null || centreline.length < 3)
    return centreline.slice(1).map((to, i) => solidOf(id, [centreline[i] as Corner, to], radius))
  const { straights, bends } = bentLine(centreline, inside / 2 + radius)
  return [...straights, ...bends()].map((line) => solidOf(id, line, radius))
}

function solidOf(id: string, line: readonly Corner[], radius: number): Solid {
  return { id, line, radius, ...boxOf(line) }
}

function boxOf(line: readonly Corner[]): Pick<Solid, 'low' | 'high'> {
  const [first] = line as [Corner]
  const [low, high]: [[number, number, number], [number, number, number]] = [[...first], [...first]]
  for (const corner of line) {
    for (const axis of [0, 1, 2] as const) {
      low[axis] = Math.min(low[axis], corner[axis])
      high[axis] = Math.max(high[axis], corner[axis])
    }
  }
  return { low, high }
}

/** An empty space; `asked` is the clear distance beside a bar of that diameter, mm, null where not known. */
export function emptySpace(asked?: (diameter: number) => number | null): Space {
  const cells = new Map<number, Filed[]>()
  const beside = asked === undefined ? null : besideSpace()
  let thickest = 0
  // Each question has a number: a bar that lies in several squares is tried once a question.
  let question = 0
  const visit = (solids: Iterable<Solid>, found: (other: Solid) => boolean): void => {
    for (const solid of solids) {
      question += 1
      for (const key of cellsOf(solid)) {
        for (const other of cells.get(key) ?? []) {
          if (other.tried === question || other.solid.id === solid.id) continue
          other.tried = question
          if (overlap(solid, other.solid) && !found(other.solid)) return
        }
      }
    }
  }
  return {
    add(solids) {
      for (const solid of solids) {
        thickest = Math.max(thickest, 2 * solid.radius)
        if (beside !== null) beside.add(straightsIn(solid))
        const filed = { solid, tried: 0 }
        for (const key of cellsOf(solid)) {
          const cell = cells.get(key)
          if (cell === undefined) cells.set(key, [filed])
          else cell.push(filed)
        }
      }
    },
    clash(solids) {
      let first: Solid | null = null
      visit(solids, (other) => {
        first = other
        return false
      })
      return first
    },
    clashes(solids) {
      const ids = new Set<string>()
      visit(solids, (other) => {
        ids.add(other.id)
        return true
      })
      return [...ids]
    },
    crowding(solids, way, most) {
      if (beside === null || asked === undefined) return () => false
      const stretches: (readonly [number, number])[] = []
      const tried: BesideInput[] = []
      for (const one of solids.flatMap(straightsIn)) {
        const thicker = Math.max(thickest, one.diameter)
        for (const other of beside.near(one, (asked(thicker) ?? 0) + thicker + most)) {
          const clear = asked(Math.max(one.diameter, other.diameter))
          if (clear === null) continue
          const pair = { one, other, asked: clear }
          const moves = crowdedMoves(pair, way)
          if (moves === null) tried.push(pair)
          else stretches.push(...moves)
        }
      }
      return (by) =>
        stretches.some(([from, to]) => by > from && by < to) ||
        tried.some(({ one, other, asked }) => {
          const moved = { ...one, from: movedBy(one.from, way, by), to: movedBy(one.to, way, by) }
          return besideOf({ one: moved, other, asked })?.kind === 'crowded'
        })
    },
  }
}

/** The parts of a bar elsewhere, one by one in their order. */
export function* movedSolids(solids: readonly Solid[], way: Corner, by: number): Generator<Solid> {
  for (const { id, line, radius, low, high } of solids) {
    yield {
      id,
      line: line.map((corner) => movedBy(corner, way, by)),
      radius,
      low: movedBy(low, way, by),
      high: movedBy(high, way, by),
    }
  }
}

function movedBy([x, y, z]: Corner, way: Corner, by: number): Corner {
  return [x + by * way[0], y + by * way[1], z + by * way[2]]
}

function straightsIn({ id, line, radius }: Solid): Straight[] {
  const [from, to] = line
  if (line.length !== 2 || from === undefined || to === undefined) return []
  const straight = straightOf(id, from, to, 2 * radius)
  return straight === null ? [] : [straight]
}

interface Filed {
  readonly solid: Solid
  tried: number
}

/** Squares across the widest panel that can be drawn, and more. */
const ACROSS = 1 << 20

/** Squares that the part touches, walked along it so that a long bar files in a line of them and not in its whole rectangle. */
function cellsOf({ line, radius, low, high }: Solid): number[] {
  const [from, to] = line.length === 2 ? (line as [Corner, Corner]) : [low, high]
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const steps = Math.max(1, Math.ceil(Math.max(Math.abs(dx), Math.abs(dy)) / CELL))
  const keys: number[] = []
  for (let step = 0; step < steps; step += 1) {
    const [x, y] = [from[0] + (step / steps) * dx, from[1] + (step / steps) * dy]
    const [u, v] = [x + dx / steps, y + dy / steps]
    const [right, top] = [Math.max(x, u) + radius, Math.max(y, v) + radius]
    for (let i = Math.floor((Math.min(x, u) - radius) / CELL); i <= right / CELL; i += 1) {
      for (let j = Math.floor((Math.min(y, v) - radius) / CELL); j <= top / CELL; j += 1) {
        const key = i * ACROSS + j
        if (!keys.includes(key)) keys.push(key)
      }
    }
  }
  return keys
}

function overlap(a: Solid, b: Solid): boolean {
  const reach = a.radius + b.radius - TOUCH
  if (reach <= 0) return false
  for (const axis of [2, 0, 1] as const) {
    if (a.high[axis] + reach <= b.low[axis] || b.high[axis] + reach <= a.low[axis]) return false
  }
  if (a.line.length === 2 && b.line.length === 2 && endToEnd(a, b)) return false
  for (let i = 1; i < a.line.length; i += 1) {
    const one = { from: a.line[i - 1] as Corner, to: a.line[i] as Corner }
    for (let j = 1; j < b.line.length; j += 1) {
      if (segmentsApart(one, { from: b.line[j - 1] as Corner, to: b.line[j] as Corner }) < reach) return true
    }
  }
  return false
}

/** Two parallel straights of which one ends where the other begins: their ends are flat. */
function endToEnd({ line: [a, b] }: Solid, { line: [c, d] }: Solid): boolean {
  const [u, v] = [less(b as Corner, a as Corner), less(d as Corner, c as Corner)]
  const [length, other, along] = [Math.sqrt(dot(u, u)), Math.sqrt(dot(v, v)), dot(u, v)]
  if (!(Math.abs(along) > (1 - 1e-9) * length * other)) return false
  const [from, to] = [
    dot(less(c as Corner, a as Corner), u) / length,
    dot(less(d as Corner, a as Corner), u) / length,
  ]
  return Math.max(from, to) <= TOUCH || Math.min(from, to) >= length - TOUCH
}

interface Line {
  readonly from: Corner
  readonly to: Corner
}

/** Least distance between two straight parts, mm. */
export function segmentsApart(a: Line, b: Line): number {
  const [u, v, w] = [less(a.to, a.from), less(b.to, b.from), less(a.from, b.from)]
  const [uu, uv, vv, uw, vw] = [dot(u, u), dot(u, v), dot(v, v), dot(u, w), dot(v, w)]
  const square = uu * vv - uv * uv
  let s = square > 1e-9 * uu * vv ? clamp((uv * vw - vv * uw) / square) : 0
  let t = vv > 0 ? (uv * s + vw) / vv : 0
  if (t < 0 || t > 1 || !(square > 1e-9 * uu * vv)) {
    t = clamp(t)
    s = uu > 0 ? clamp((uv * t - uw) / uu) : 0
    if (vv > 0) t = clamp((uv * s + vw) / vv)
  }
  const gap: Corner = [w[0] + s * u[0] - t * v[0], w[1] + s * u[1] - t * v[1], w[2] + s * u[2] - t * v[2]]
  return Math.sqrt(dot(gap, gap))
}

function clamp(part: number): number {
  return Math.min(1, Math.max(0, part))
}

function less(a: Corner, b: Corner): Corner {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

function dot(a: Corner, b: Corner): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}
