import type { Corner } from '../steel-plan.ts'

/** A bend in space: points along its arc, mm, the first and last where its straights begin. */
export type Arc = readonly Corner[]

/** A chord lies this far inside its arc at most, mm. */
const SAGITTA = 0.6

/**
 * The straights and bends of a bar whose corners are where its straights would meet, in order along it; `radius` of the centreline of
 * its bends, mm. A bar that ends where it began bends there too. The points of the bends are worked out when asked for. Bends without the room are drawn as wide as there is.
 */
export function bentLine(
  corners: readonly Corner[],
  radius: number,
): { readonly straights: readonly (readonly [Corner, Corner])[]; readonly bends: () => Arc[] } {
  const last = corners.length - 1
  const isClosed = last > 2 && apart(corners[0] as Corner, corners[last] as Corner) === 0
  const arcs = corners.map((corner, i): Bend | null => {
    const before = i === 0 ? (isClosed ? corners[last - 1] : undefined) : corners[i - 1]
    const after = i === last ? (isClosed ? corners[1] : undefined) : corners[i + 1]
    if (before === undefined || after === undefined) return null
    // A straight between two bends is shared, one that ends the bar is not.
    const parts = [isClosed || i > 1 ? 0.5 : 1, isClosed || i < last - 1 ? 0.5 : 1] as const
    return bend([before, corner, after], radius, parts)
  })
  const straights = corners.slice(1).map((corner, i): readonly [Corner, Corner] => {
    const from = corners[i] as Corner
    return [arcs[i]?.end ?? from, arcs[i + 1]?.start ?? corner]
  })
  // A closed bar bends once where it begins and ends.
  const bends = (isClosed ? arcs.slice(1) : arcs).filter((arc) => arc !== null)
  return { straights, bends: () => bends.map(({ points }) => points()) }
}

interface Bend {
  readonly start: Corner
  readonly end: Corner
  readonly points: () => Arc
}

function bend(
  [before, corner, after]: readonly [Corner, Corner, Corner],
  radius: number,
  parts: readonly [before: number, after: number],
): Bend | null {
  const [a, b] = [apart(before, corner), apart(corner, after)]
  if (!(a > 0 && b > 0)) return null
  const u = scaled(less(corner, before), 1 / a)
  const v = scaled(less(after, corner), 1 / b)
  const cosine = Math.min(1, Math.max(-1, u[0] * v[0] + u[1] * v[1] + u[2] * v[2]))
  const turn = Math.acos(cosine)
  if (turn < 1e-6 || turn > Math.PI - 1e-6) return null
  const half = Math.tan(turn / 2)
  const tangent = Math.min(radius * half, a * parts[0], b * parts[1])
  const start = less(corner, scaled(u, tangent))
  const end = less(corner, scaled(v, -tangent))
  const side = scaled(less(v, scaled(u, cosine)), 1 / Math.sin(turn))
  return { start, end, points: () => arcOf({ start, along: u, side, turn, radius: tangent / half }) }
}

function arcOf({
  start,
  along: u,
  side,
  turn,
  radius: bent,
}: {
  readonly start: Corner
  readonly along: Corner
  readonly side: Corner
  readonly turn: number
  readonly radius: number
}): Arc {
  const steps = Math.max(2, Math.ceil(turn / (2 * Math.acos(Math.max(0, 1 - SAGITTA / Math.max(bent, 1))))))
  return Array.from({ length: steps + 1 }, (_, k): Corner => {
    const angle = (k / steps) * turn
    const [along, aside] = [bent * Math.sin(angle), bent * (1 - Math.cos(angle))]
    return [
      start[0] + along * u[0] + aside * side[0],
      start[1] + along * u[1] + aside * side[1],
      start[2] + along * u[2] + aside * side[2],
    ]
  })
}

function apart(a: Corner, b: Corner): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2])
}

function less(a: Corner, b: Corner): Corner {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

function scaled([x, y, z]: Corner, by: number): Corner {
  return [x * by, y * by, z * by]
}
