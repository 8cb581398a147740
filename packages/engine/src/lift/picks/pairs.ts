import { distance, type Point } from '../../panel/point.ts'
import { bounds } from '../../panel/polygon.ts'
import { OUT, scoreOf } from './exchange.ts'
import type { Side } from './limits.ts'
import { gridPlaces, onSide, type Place } from './places.ts'
import type { SearchInput } from './search.ts'
import { Table } from './table.ts'

/** Lines through the centre of gravity that are looked along. */
const LINES = 16
/** Places on each half of a line. */
const ON_HALF = 7
/** A pair on a grid may miss the centre of gravity by this, mm. */
const OFF_LINE = 1

type Pair = readonly [number, number]

/** Pairs of places on lines through the centre of gravity, best first. */
export function pairSets(input: SearchInput): {
  readonly places: readonly Place[]
  readonly sets: readonly Pair[]
} {
  const { influence, centre, limits, sharing } = input
  const { places, pairs } = input.grid === null ? onLines(input) : onGrid(input, input.grid)
  if (pairs.length === 0) return { places, sets: [] }
  const table = new Table(influence, influence.responses(places.map(({ at }) => at)))
  const sets = pairs
    .filter(([i, j]) => distance(places[i]!.at, places[j]!.at) >= limits.spacing)
    .map((pair) => ({
      pair,
      score: scoreOf(table, pair, { sharing: sharing === 'equalised' ? 'equalised' : 'rigid', centre }, OUT),
    }))
    .filter(({ score }) => score < OUT)
    .sort((p, q) => p.score - q.score)
    .map(({ pair }) => pair)
  return { places, sets }
}

function onLines({ piece, limits, centre, along }: SearchInput): { places: Place[]; pairs: Pair[] } {
  const box = bounds(piece.outline)
  const reach = Math.hypot(box.right - box.left, box.top - box.bottom)
  const places: Place[] = []
  const pairs: Pair[] = []
  for (let k = 0; k < LINES; k += 1) {
    const angle = along + (Math.PI * k) / LINES
    const halves = [0, Math.PI].map((turn) => {
      const direction: Point = [Math.cos(angle + turn), Math.sin(angle + turn)]
      const found =
        limits.kind === 'edge'
          ? edgeHits(limits.sides, centre, direction).filter(({ at, side }) =>
              limits.fitsOn(side as Side, at),
            )
          : halfLine(centre, direction, reach).filter(({ at }) => limits.fits(at))
      const thinned = found.filter((_, i) => i % Math.max(1, Math.ceil(found.length / ON_HALF)) === 0)
      return thinned.map((place) => places.push(place) - 1)
    }) as [number[], number[]]
    for (const i of halves[0]) for (const j of halves[1]) pairs.push([i, j])
  }
  return { places, pairs }
}

function halfLine(centre: Point, [dx, dy]: Point, reach: number): Place[] {
  const step = reach / 60
  return Array.from({ length: 60 }, (_, k) => ({
    at: [centre[0] + (k + 0.5) * step * dx, centre[1] + (k + 0.5) * step * dy] as Point,
  }))
}

/** Where a half line from the centre meets sides of the outline. */
function edgeHits(sides: readonly Side[], [cx, cy]: Point, [dx, dy]: Point): Place[] {
  return sides.flatMap((side) => {
    const across = dx * side.along[1] - dy * side.along[0]
    if (Math.abs(across) < 1e-9) return []
    const [px, py] = [side.from[0] - cx, side.from[1] - cy]
    const by = (px * side.along[1] - py * side.along[0]) / across
    const at: Point = [cx + by * dx, cy + by * dy]
    return by > 0 && onSide(side, at) ? [{ at, side }] : []
  })
}

function onGrid(input: SearchInput, pitch: Point): { places: Place[]; pairs: Pair[] } {
  const places = gridPlaces({ ...input, wanted: 4 * input.effort.places }, pitch)
  const pairs: Pair[] = []
  const { centre } = input
  for (const [i, { at: p }] of places.entries()) {
    for (let j = 0; j < i; j += 1) {
      const q = places[j]!.at
      const [ux, uy] = [p[0] - centre[0], p[1] - centre[1]]
      const [vx, vy] = [q[0] - centre[0], q[1] - centre[1]]
      const off = Math.abs(ux * vy - uy * vx) / Math.hypot(p[0] - q[0], p[1] - q[1])
      if (off <= OFF_LINE && ux * vx + uy * vy < 0) pairs.push([j, i])
    }
  }
  return { places, pairs }
}
