import type { Corner } from '../steel-plan.ts'

/** A straight part of a bar in space. */
export interface Solid {
  /** Of the bar that it is part of. */
  readonly id: string
  readonly from: Corner
  readonly to: Corner
  readonly radius: number
}

/** Bars that lie in the mould already, to be asked whether another has room. */
export interface Space {
  add(solids: readonly Solid[]): void
  /** First bar that one of these would run into, or null. Parts of the same bar do not count. */
  clash(solids: readonly Solid[]): Solid | null
  /** Every bar that one of these would run into. */
  clashes(solids: readonly Solid[]): string[]
}

/** Bars overlap by less than this where they only touch, mm: the rounding of clipping in whole micrometres, and more. */
const TOUCH = 0.5

/** Side of the squares that bars are filed by, mm. */
const CELL = 1000

/** Straight parts of a bar whose centreline is known. */
export function solidsOf({
  id,
  centreline,
  diameter,
}: {
  readonly id: string
  readonly centreline: readonly Corner[] | null
  readonly diameter: number
}): Solid[] {
  if (centreline === null) return []
  return centreline.slice(1).map((to, i) => ({ id, from: centreline[i] as Corner, to, radius: diameter / 2 }))
}

/** An empty space. */
export function emptySpace(): Space {
  const cells = new Map<number, Filed[]>()
  // Each question has a number: a bar that lies in several squares is tried once a question.
  let question = 0
  const visit = (solids: readonly Solid[], found: (other: Solid) => boolean): void => {
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
  }
}

interface Filed {
  readonly solid: Solid
  tried: number
}

/** Squares across the widest panel that can be drawn, and more. */
const ACROSS = 1 << 20

/** Squares that the part touches, walked along it so that a long bar files in a line of them and not in its whole rectangle. */
function cellsOf({ from, to, radius }: Solid): number[] {
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
    if (Math.max(a.from[axis], a.to[axis]) + reach <= Math.min(b.from[axis], b.to[axis])) return false
    if (Math.max(b.from[axis], b.to[axis]) + reach <= Math.min(a.from[axis], a.to[axis])) return false
  }
  return segmentsApart(a, b) < reach
}

type Line = Pick<Solid, 'from' | 'to'>

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
