import type { Drawing } from '../../panel/drawing.ts'
import type { DrawnDuct, DrawnVoid } from '../../panel/drawn-voids.ts'
import type { Point, Ring } from '../../panel/point.ts'
import { edges, placeInRing } from '../../panel/polygon.ts'
import { parts, partsApart } from '../../panel/way.ts'
import { type Check, compare } from '../../working/check.ts'
import { GEOMETRY } from '../../working/source.ts'
import type { Corner, PlacedBar } from '../steel-plan.ts'
import { segmentsApart, solidsOf } from './space.ts'

/** Bars that a check names. */
const NAMED = 4
/** A bar that only touches is not in the way, mm. */
const TOUCH = 0.5

/** Bars whose bodies run through each void former or duct, at the heights that both have; missing says what keeps bars from being laid out. */
export function bodyClashes(
  drawing: Drawing,
  placed: readonly PlacedBar[],
  missing: readonly string[],
): Check[] {
  const { voids = [], ducts = [] } = drawing
  if (placed.length === 0 && missing.length === 0) return []
  return [
    ...voids.map((one) =>
      clashCheck(
        'void',
        one.mark,
        through(placed, (part) => inVoid(part, one)),
        missing,
      ),
    ),
    ...ducts.map((one) =>
      clashCheck(
        'duct',
        one.mark,
        through(placed, (part) => inDuct(part, one)),
        missing,
      ),
    ),
  ]
}

interface Part {
  readonly from: Corner
  readonly to: Corner
  readonly radius: number
}

function through(placed: readonly PlacedBar[], meets: (part: Part) => boolean): string[] {
  const marks = placed.flatMap((bar) => {
    for (const { line, radius } of solidsOf(bar)) {
      const hit = line.slice(1).some((to, i) => meets({ from: line[i] as Corner, to, radius }))
      if (hit) return [bar.mark]
    }
    return []
  })
  return marks
}

function clashCheck(
  kind: 'void' | 'duct',
  mark: string,
  bars: readonly string[],
  missing: readonly string[],
): Check {
  const names = [...new Set(bars)]
  return compare({
    id: `${kind}-clash:${mark}`,
    step: 'cage',
    what: `Bars that run through ${kind === 'void' ? 'void former' : 'duct'} ${mark}`,
    demand: bars.length,
    limit: 0,
    unit: '',
    sense: 'at most',
    source: GEOMETRY,
    // A bar that is in the way is told though others are not laid out.
    missing: bars.length > 0 ? [] : missing,
    ...(names.length > 0
      ? { note: `${names.slice(0, NAMED).join(', ')}${names.length > NAMED ? ' and more' : ''}` }
      : {}),
  })
}

function inVoid({ from, to, radius }: Part, { above, depth, outline }: DrawnVoid): boolean {
  const reach = radius - TOUCH
  const within = cut(from, to, above - reach, above + depth + reach)
  if (within === null) return false
  const ring = outline as unknown as Ring
  if (within.some((end) => placeInRing(end, ring) === 'inside')) return true
  return edges(ring).some((edge) => partsApart(within, edge) < reach)
}

/** The part of a straight between two heights, seen from above; null where it has none. */
function cut(from: Corner, to: Corner, low: number, high: number): [Point, Point] | null {
  const rise = to[2] - from[2]
  if (rise === 0) {
    return from[2] > low && from[2] < high
      ? [
          [from[0], from[1]],
          [to[0], to[1]],
        ]
      : null
  }
  const [a, b] = [(low - from[2]) / rise, (high - from[2]) / rise].sort((s, t) => s - t) as [number, number]
  const [first, last] = [Math.max(0, a), Math.min(1, b)]
  if (!(first < last)) return null
  const at = (share: number): Point => [
    from[0] + share * (to[0] - from[0]),
    from[1] + share * (to[1] - from[1]),
  ]
  return [at(first), at(last)]
}

function inDuct({ from, to, radius }: Part, { line, diameter, height }: DrawnDuct): boolean {
  const reach = radius + diameter / 2 - TOUCH
  return parts(line as unknown as readonly Point[]).some(
    ([a, b]) => segmentsApart({ from, to }, { from: [...a, height], to: [...b, height] }) < reach,
  )
}
