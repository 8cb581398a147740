import { distance, type Point, type Ring } from '../panel/point.ts'
import { edges } from '../panel/polygon.ts'

export interface LongWay {
  /** Unit vector along the longer side of the least rectangle around it. */
  readonly along: Point
  /** Of that rectangle, mm. */
  readonly length: number
  readonly width: number
}

/** The way a former is long: the least rectangle around it that lies along one of its sides. */
export function longWay(ring: Ring): LongWay {
  let best: LongWay = { along: [1, 0], length: 0, width: 0 }
  let least = Number.POSITIVE_INFINITY
  for (const [a, b] of edges(ring)) {
    const side = distance(a, b)
    if (!(side > 0)) continue
    const u: Point = [(b[0] - a[0]) / side, (b[1] - a[1]) / side]
    const [along, across] = [extent(ring, u), extent(ring, [-u[1], u[0]])]
    if (along * across >= least * (1 - 1e-9)) continue
    least = along * across
    best =
      along >= across
        ? { along: u, length: along, width: across }
        : { along: [-u[1], u[0]], length: across, width: along }
  }
  return best
}

function extent(ring: Ring, [ux, uy]: Point): number {
  const places = ring.map(([x, y]) => x * ux + y * uy)
  return Math.max(...places) - Math.min(...places)
}

/** Straps square across a former, evenly along it, half a spacing from its ends: where each crosses its outline first and last, mm. */
export function strapPlaces(ring: Ring, count: number): (readonly [Point, Point])[] {
  const { along: u, length } = longWay(ring)
  const first = Math.min(...ring.map(([x, y]) => x * u[0] + y * u[1]))
  return Array.from({ length: count }, (_, i) => {
    const station = first + ((i + 0.5) / count) * length
    const crossed = edges(ring).flatMap(([a, b]): number[] => {
      const [s, t] = [a[0] * u[0] + a[1] * u[1] - station, b[0] * u[0] + b[1] * u[1] - station]
      if (s > 0 === t > 0) return []
      const share = s / (s - t)
      const [x, y] = [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])]
      return [-x * u[1] + y * u[0]]
    })
    const at = (across: number): Point => [station * u[0] - across * u[1], station * u[1] + across * u[0]]
    return [at(Math.min(...crossed)), at(Math.max(...crossed))] as const
  })
}
