import type { DrawnTrimmers, Layer } from '../../panel/drawn-steel.ts'
import type { Point } from '../../panel/point.ts'
import { type Check, compare } from '../../working/check.ts'
import { enteredBy } from '../../working/source.ts'
import type { EdgeRun } from './edge-runs.ts'
import { type LaidBars, type LayContext, ROUNDING } from './lay-context.ts'
import { flatBar, stackFlat } from './stack-flat.ts'
import { partsWithin } from './within.ts'

interface Diagonal {
  readonly from: Point
  readonly to: Point
  readonly along: Point
}

/**
 * Diagonals at the corners of openings where the concrete goes round them: square to the line that halves the corner, the first at
 * the edge cover from it, half their length to either side. Cut where the concrete less its cover ends, and told.
 */
export function diagonalsAt(
  drawn: DrawnTrimmers,
  key: string,
  sides: readonly EdgeRun[],
  layers: readonly Layer[],
  context: LayContext,
): { readonly bars: readonly LaidBars[]; readonly checks: readonly Check[] } {
  const { diagonals } = drawn
  if (diagonals === undefined) return { bars: [], checks: [] }
  const { diameter, grade, length } = diagonals
  const bars = sides.flatMap((run) => atCorner(run, sides, diagonals, context))
  const shortest = bars.reduce(
    (least, { from, to }) => Math.min(least, Math.hypot(to[0] - from[0], to[1] - from[1])),
    Number.POSITIVE_INFINITY,
  )
  const lines = layers.map((layer): LaidBars => {
    const directions = new Map<string, Diagonal[]>()
    for (const bar of bars) {
      const name = bar.along.map((part) => part.toFixed(4)).join(' ')
      directions.set(name, [...(directions.get(name) ?? []), bar])
    }
    return {
      prefix: drawn.mark === undefined ? `${layer === 'mould' ? 'M' : 'T'}D` : `${drawn.mark}-D`,
      named: drawn.mark !== undefined,
      use: 'diagonal',
      layer,
      diameter,
      grade,
      role: 'main',
      inside: null,
      least: null,
      bars: [...directions.values()].flatMap((same) => {
        const [{ along }] = same as [Diagonal]
        const heights = stackFlat({ bars: same, along, diameter, layer, name: 'diagonal', context })
        return same.map(({ from, to }, i) => flatBar(from, to, heights[i] ?? null))
      }),
    }
  })
  return {
    bars: lines,
    checks:
      bars.length === 0
        ? []
        : [
            compare({
              id: `beyond:${key}-diagonals`,
              step: 'cage',
              what: `Shortest diagonal of ${key}, as drawn`,
              demand: shortest,
              limit: length,
              unit: 'mm',
              sense: 'at least',
              source: enteredBy('the drawing'),
              ...(shortest < length - 1e-6 ? { note: 'cut at the edge cover' } : {}),
            }),
          ],
  }
}

/** Diagonals at the end of a side where the next side of the opening begins. */
function atCorner(
  run: EdgeRun,
  sides: readonly EdgeRun[],
  { diameter, length, count }: NonNullable<DrawnTrimmers['diagonals']>,
  { edgeCover, roomFor, rules, panel, webs }: LayContext,
): Diagonal[] {
  const next = sides.find(({ from }) => from[0] === run.to[0] && from[1] === run.to[1])
  if (next === undefined || !run.inner[1]) return []
  const [x, y] = [run.inward[0] + next.inward[0], run.inward[1] + next.inward[1]]
  const size = Math.hypot(x, y)
  if (!(size > 0)) return []
  const into: Point = [x / size, y / size]
  const along: Point = [-into[1] + 0, into[0]]
  const clear = rules.clearSpacing({ diameter, aggregate: panel.drawing.concrete.aggregate ?? null })
  const apart = diameter + (clear.known ? clear.value : diameter)
  const room = roomFor(diameter)
  const web = Math.max(webs.get(run)?.diameter ?? 0, webs.get(next)?.diameter ?? 0)
  return Array.from({ length: count }, (_, k) => k).flatMap((k): Diagonal[] => {
    const deep = edgeCover + web + diameter / 2 + k * apart
    const at = (place: number): Point => [
      run.to[0] + into[0] * deep + along[0] * place,
      run.to[1] + into[1] * deep + along[1] * place,
    ]
    const [low, high] = [-length / 2, length / 2]
    const part = throughCorner(
      partsWithin(room, at(low), at(high)),
      gapAt(deep, run, into, edgeCover, diameter) / length,
    )
    if (part === null) return []
    const start = part[0] > 0 ? low + part[0] * length + ROUNDING : low
    const end = part[1] < 1 ? low + part[1] * length - ROUNDING : high
    return [{ from: at(start), to: at(end), along }]
  })
}

/**
 * How far to either side of a corner a diagonal runs outside the room whose corners are mitred, though it keeps the cover to the corner
 * itself, mm.
 */
function gapAt(deep: number, { inward }: EdgeRun, into: Point, edgeCover: number, diameter: number): number {
  const cosine = into[0] * inward[0] + into[1] * inward[1]
  const mitre = (edgeCover + diameter / 2) / cosine
  return mitre > deep ? ((mitre - deep) * cosine) / Math.sqrt(1 - cosine * cosine) + 1 : 0
}

/** The stretch through the middle, where one of at most `gap` to either side of it does not count. */
function throughCorner(
  parts: readonly (readonly [from: number, to: number])[],
  gap: number,
): readonly [from: number, to: number] | null {
  const before = parts.find(([from, to]) => from <= 0.5 && to >= 0.5 - gap)
  const after = parts.findLast(([from, to]) => to >= 0.5 && from <= 0.5 + gap)
  return before === undefined || after === undefined ? null : [before[0], after[1]]
}
