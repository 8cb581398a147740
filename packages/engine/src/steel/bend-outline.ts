import type { Point } from '../panel/point.ts'
import { known, unknown, type Worked } from '../working/worked.ts'
import { type CutLengthInput, cutLength, setback } from './cut-length.ts'

export { TRANSPORT_BOX } from '../codes/eu/bs8666-2020/transport-box.ts'

export interface OutlineInput extends CutLengthInput {
  /** Side of each turn: 1 to the left, −1 to the right; one a bend. */
  readonly senses: readonly (1 | -1)[]
}

/** An arc is drawn with a corner for every this many degrees. */
const FINE = 1

/**
 * Centreline of a bar bent in one plane, mm: from the origin along +x, arcs as chords.
 *
 * Unknown as `cutLength` is, and where the sides of the turns are not one a bend.
 */
export function bentOutline(input: OutlineInput): Worked<readonly Point[]> {
  const { diameter, legs, turns, senses } = input
  const cut = cutLength(input)
  if (!cut.known) return cut
  if (senses.length !== legs.length - 1) return unknown('senses: one for each bend')
  const inside = input.inside ?? 0
  const each = legs.slice(1).map((_, index) => (turns.length === 1 ? turns[0] : turns[index]) ?? 0)
  const points: Point[] = [[0, 0]]
  let heading = 0
  for (const [index, leg] of legs.entries()) {
    const taken = [each[index - 1], each[index]].reduce<number>(
      (sum, turn) => (turn === undefined ? sum : sum + setback({ diameter, inside, turn })),
      0,
    )
    points.push(onwards(points, heading, leg - taken))
    const turn = each[index]
    if (turn === undefined) break
    const sense = senses[index] ?? 1
    const steps = Math.ceil(turn / FINE)
    const step = (sense * turn * Math.PI) / 180 / steps
    const chord = 2 * (inside / 2 + diameter / 2) * Math.sin(Math.abs(step) / 2)
    for (let at = 0; at < steps; at += 1) {
      points.push(onwards(points, heading + step / 2, chord))
      heading += step
    }
  }
  return known(points, [])
}

function onwards(points: readonly Point[], heading: number, length: number): Point {
  const [x, y] = points.at(-1) as Point
  return [x + length * Math.cos(heading), y + length * Math.sin(heading)]
}

export interface EnclosingBox {
  /** Longer and shorter side of the narrowest rectangle around the bar, its thickness included, mm. */
  readonly long: number
  readonly short: number
}

/**
 * The narrowest rectangle around a bar in one plane, mm: one of its sides lies along the bar's hull. At a bar's end it may be half a diameter
 * larger than the bar, never smaller.
 */
export function enclosingBox(points: readonly Point[], diameter: number): EnclosingBox {
  const hull = hullOf(points)
  let best: { along: number; across: number } | null = null
  for (const [index, from] of hull.entries()) {
    const to = hull[(index + 1) % hull.length] as Point
    const length = Math.hypot(to[0] - from[0], to[1] - from[1])
    if (!(length > 0)) continue
    const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
    // Widths without a list in between: a closed tie has some hundred corners, and a job some thousand bent bars.
    let [low, high, left, right] = [Infinity, -Infinity, Infinity, -Infinity]
    for (const [x, y] of hull) {
      const [forward, aside] = [x * ux + y * uy, y * ux - x * uy]
      if (forward < low) low = forward
      if (forward > high) high = forward
      if (aside < left) left = aside
      if (aside > right) right = aside
    }
    const [along, across] = [high - low, right - left]
    if (best === null || Math.min(along, across) < Math.min(best.along, best.across)) {
      best = { along, across }
    }
  }
  const { along, across } = best ?? { along: 0, across: 0 }
  return { long: Math.max(along, across) + diameter, short: Math.min(along, across) + diameter }
}

/** Convex hull, anticlockwise (Andrew 1979). */
function hullOf(points: readonly Point[]): Point[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1])
  const half = (ordered: readonly Point[]): Point[] => {
    const chain: Point[] = []
    for (const point of ordered) {
      while (chain.length > 1 && !leftTurn(chain.at(-2) as Point, chain.at(-1) as Point, point)) chain.pop()
      chain.push(point)
    }
    return chain.slice(0, -1)
  }
  const hull = [...half(sorted), ...half(sorted.toReversed())]
  return hull.length > 0 ? hull : sorted.slice(0, 1)
}

function leftTurn(a: Point, b: Point, c: Point): boolean {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) > 0
}
