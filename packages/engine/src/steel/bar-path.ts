import { distance, type Point } from '../panel/point.ts'
import { known, unknown, type Worked } from '../working/worked.ts'

export interface PathShape {
  /** Outside dimensions of the legs as `cutLength` takes them, mm. */
  readonly legs: readonly number[]
  /** degrees */
  readonly turns: readonly number[]
  /** Every bend turns to the same side. */
  readonly oneWay: boolean
}

export interface PathInput {
  readonly diameter: number
  /** Inside diameter of every bend, mm; null for a straight path. */
  readonly inside: number | null
  /** Corners of the centreline, where its straights would meet, mm. */
  readonly path: readonly Point[]
}

/** Turns smaller than this are drawing noise, degrees. */
const STRAIGHT = 1e-6

/**
 * Legs and turns of a bar that is drawn by the corners of its centreline. Corners without a turn are left out.
 *
 * Unknown where a corner is repeated or the path folds back on itself, and for a bent path without `inside`.
 */
export function pathShape({ diameter, inside, path }: PathInput): Worked<PathShape> {
  const centre: number[] = []
  const turns: number[] = []
  const sides = new Set<number>()
  for (let i = 1; i < path.length; i += 1) {
    const [a, b] = [path[i - 1] as Point, path[i] as Point]
    const length = distance(a, b)
    if (!(length > 0 && Number.isFinite(length)))
      return unknown(`path[${i}]: a corner away from the one before`)
    const signed = i === 1 ? 0 : turnAt(path[i - 2] as Point, a, b)
    const turn = Math.abs(signed)
    if (turn > 180 - STRAIGHT) return unknown(`path[${i - 1}]: the path folds back on itself`)
    if (i > 1 && turn > STRAIGHT) {
      turns.push(turn)
      sides.add(Math.sign(signed))
    }
    if (i === 1 || turn > STRAIGHT) centre.push(length)
    else centre[centre.length - 1] = (centre.at(-1) ?? 0) + length
  }
  if (centre.length === 0) return unknown('path: at least two corners')
  if (turns.length === 0) return known({ legs: centre, turns, oneWay: true }, [])
  if (inside === null) return unknown('inside: inside diameter of the bends, mm')
  const legs = centre.map((length, leg) =>
    [turns[leg - 1], turns[leg]].reduce<number>(
      (sum, turn) => (turn === undefined ? sum : sum + overCentre({ diameter, inside, turn })),
      length,
    ),
  )
  return known({ legs, turns, oneWay: sides.size < 2 }, [])
}

/** From the corner of the centreline out to where the leg's outside dimension ends, mm. */
function overCentre({ diameter, inside, turn }: { diameter: number; inside: number; turn: number }): number {
  const half = Math.tan((turn * Math.PI) / 360)
  const centreline = (inside / 2 + diameter / 2) * half
  const outer = inside / 2 + diameter
  return (turn <= 90 ? outer * half : outer) - centreline
}

/** Turn at b, degrees, positive to the left. */
function turnAt(a: Point, b: Point, c: Point): number {
  const [ux, uy, vx, vy] = [b[0] - a[0], b[1] - a[1], c[0] - b[0], c[1] - b[1]]
  return (Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy) * 180) / Math.PI
}
