import type { Drawing } from '../../panel/drawing.ts'
import type { Point } from '../../panel/point.ts'
import { distanceToSegment } from '../../panel/polygon.ts'
import { type Check, compare } from '../../working/check.ts'
import { enteredBy } from '../../working/source.ts'
import type { Yard } from '../../yard/yard.ts'
import type { PlacedBar } from '../steel-plan.ts'
import { insertClear } from './row-obstacles.ts'

export interface InsertChecksInput {
  readonly drawing: Drawing
  readonly yard: Yard | null
  readonly placed: readonly PlacedBar[]
  /** What keeps bars of the drawing from being laid out, by field. */
  readonly notLaid: readonly string[]
}

/** Bars that a check names. */
const NAMED = 4

/**
 * One check an insert: how near the bars come to its axis, seen from above, against the distance that its kind asks for. The height at
 * which a bar passes is not counted: an insert and its recess reach through the layers.
 */
export function insertChecks({ drawing, yard, placed, notLaid }: InsertChecksInput): Check[] {
  if (placed.length === 0 && notLaid.length === 0) return []
  return (drawing.inserts ?? []).map(({ mark, at, type }, index) => {
    const clear = insertClear(yard, type)
    const near = placed
      .map((bar) => ({ mark: bar.mark, clear: clearOf(bar, at as Point) }))
      .sort((a, b) => a.clear - b.clear)
    const within = clear === null ? [] : near.filter((bar) => bar.clear < clear - 1e-6)
    const marks = [...new Set(within.map((bar) => bar.mark))]
    return compare({
      id: `insert:${mark}`,
      step: 'cage',
      what: `Bars clear of the axis of insert ${mark}`,
      demand: near[0]?.clear ?? null,
      limit: clear,
      unit: 'mm',
      sense: 'at least',
      source: enteredBy('the yard: insert kinds'),
      // A bar that is too near is told though others are not laid out.
      missing: clear === null ? [missingOf(yard, type, index)] : within.length > 0 ? [] : notLaid,
      ...(marks.length > 0
        ? { note: `${marks.slice(0, NAMED).join(', ')}${marks.length > NAMED ? ' and more' : ''} in its way` }
        : {}),
    })
  })
}

function missingOf(yard: Yard | null, type: string | undefined, index: number): string {
  if (type === undefined) return `inserts[${index}].type: mark of an insert kind`
  if (yard === null) return 'yard: its insert kinds'
  const known = (yard.insertKinds ?? []).some(({ mark }) => mark === type)
  return known
    ? `insertKinds.${type}.clear: how far bars keep from its axis, mm`
    : `insertKinds: no kind ${type} in the yard`
}

/** From a point to the bar itself, seen from above, mm. */
function clearOf({ path, diameter }: PlacedBar, at: Point): number {
  const parts = path.length < 2 ? [[path[0], path[0]]] : path.slice(1).map((to, i) => [path[i], to])
  return (
    parts.reduce(
      (least, [from, to]) => Math.min(least, distanceToSegment(at, [from as Point, to as Point])),
      Number.POSITIVE_INFINITY,
    ) -
    diameter / 2
  )
}
