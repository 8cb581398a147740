import { misplacedInserts, type Panel } from '../panel/panel.ts'
import { distance } from '../panel/point.ts'
import { distanceToSegment, edges } from '../panel/polygon.ts'
import { distanceToEdge, ringsOf } from '../panel/region.ts'
import { type Check, compare } from '../working/check.ts'
import { enteredBy, GEOMETRY, type Source } from '../working/source.ts'
import type { DrawnKinds } from './insert-kinds.ts'

/** Every insert where its kind says: inside the concrete, or on an edge of it. Decided before the pour: step `set`. */
export function insertPositionCheck({ panel }: { readonly panel: Panel }): Check[] {
  const inserts = panel.drawing.inserts ?? []
  if (inserts.length === 0) return []
  const misplaced = misplacedInserts(panel)
  return [
    compare({
      id: 'insert-position',
      step: 'set',
      what: 'Inserts that are not in the concrete, or not on its edge',
      demand: misplaced.length,
      limit: 0,
      unit: '',
      sense: 'at most',
      source: GEOMETRY,
      ...(misplaced.length > 0
        ? { note: misplaced.map(({ found, expected }) => `${found}: expected ${expected}`).join('; ') }
        : {}),
    }),
  ]
}

/** Distances that a maker asks for, where the yard lists them. Decided before the pour: step `set`. */
export function insertPlaceChecks({
  panel,
  kinds,
}: {
  readonly panel: Panel
  readonly kinds: DrawnKinds
}): Check[] {
  return kinds.kinds.flatMap(({ kind, inserts }) => {
    const source: Source = enteredBy(`the yard: insert ${kind.mark}`)
    const checks: Check[] = []
    if (kind.leastEdge !== undefined) {
      const nearest = Math.min(
        ...inserts.map(({ at }) =>
          kind.kind === 'face' ? distanceToEdge(panel.region, at) : distanceAlongEdge(panel, at),
        ),
      )
      checks.push(
        compare({
          id: `insert-edge:${kind.mark}`,
          step: 'set',
          what: `Distance of ${kind.mark} from ${kind.kind === 'face' ? 'an edge or opening' : 'a corner'}`,
          demand: nearest,
          limit: kind.leastEdge,
          unit: 'mm',
          sense: 'at least',
          source,
        }),
      )
    }
    if (kind.leastSpacing !== undefined && inserts.length > 1) {
      const apart = Math.min(
        ...inserts.flatMap((a, index) => inserts.slice(index + 1).map((b) => distance(a.at, b.at))),
      )
      checks.push(
        compare({
          id: `insert-spacing:${kind.mark}`,
          step: 'set',
          what: `Distance between inserts ${kind.mark}`,
          demand: apart,
          limit: kind.leastSpacing,
          unit: 'mm',
          sense: 'at least',
          source,
        }),
      )
    }
    return checks
  })
}

/** From an insert on an edge to the nearer end of that edge, mm. */
function distanceAlongEdge(panel: Panel, at: readonly [number, number]): number {
  let [nearest, along] = [Number.POSITIVE_INFINITY, 0]
  for (const edge of ringsOf(panel.region).flatMap(edges)) {
    const off = distanceToSegment(at, edge)
    if (off < nearest) [nearest, along] = [off, Math.min(distance(at, edge[0]), distance(at, edge[1]))]
  }
  return along
}
