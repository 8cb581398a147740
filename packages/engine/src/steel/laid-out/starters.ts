import type { DrawnStarters } from '../../panel/drawn-steel.ts'
import { distance, type Point } from '../../panel/point.ts'
import { type Check, compare } from '../../working/check.ts'
import { enteredBy } from '../../working/source.ts'
import type { Corner } from '../steel-plan.ts'
import { type BendOf, bendOf } from './bend-of.ts'
import { seenFromAbove } from './edge-bars.ts'
import { runsAt } from './edge-runs.ts'
import { anchorageOf, anchorCheck, leftOutCheck, spacingLaid } from './laid-checks.ts'
import { depthsFor, heightAt, type LaidBar, type LaidLine, type LayContext, NOTHING } from './lay-context.ts'
import { solidsOf } from './space.ts'
import { spreadEven } from './spread.ts'
import { footCheck } from './starter-foot.ts'
import { isWithin } from './within.ts'

interface Stood {
  readonly bars: readonly LaidBar[]
  readonly widest: number | null
  readonly leftOut: number
}

/** Starters out of edges lie flat in a layer; those on a line stand in the top face, with a foot or without. */
export function starters(drawn: DrawnStarters, key: string, context: LayContext): LaidLine {
  const onEdge = typeof drawn.starters === 'string'
  const { diameter, grade } = drawn
  const bend =
    drawn.foot === undefined
      ? null
      : bendOf({ rules: context.rules, key, diameter, grade, role: 'main', inside: drawn.inside })
  const gaps = coverGaps(drawn, key, context)
  if (gaps.length > 0) return { ...NOTHING, gaps }
  const stood = onEdge ? outOfEdges(drawn, context) : onLine(drawn, bend?.inside ?? null, context)
  const spacings = stood.flatMap((each) => each.widest ?? [])
  const leftOut = stood.reduce((sum, each) => sum + each.leftOut, 0)
  return {
    bars: [
      {
        prefix: drawn.mark ?? 'ST',
        named: drawn.mark !== undefined,
        use: 'starter',
        layer: drawn.layer ?? 'both',
        diameter,
        grade,
        role: 'main',
        inside: bend?.inside ?? null,
        least: bend?.least ?? null,
        bars: stood.flatMap(({ bars }) => bars),
      },
    ],
    checks: [
      ...(bend === null ? [] : [bend.check]),
      ...spacingLaid(key, spacings, drawn.spacing),
      leftOutCheck(key, leftOut, 'they would leave the concrete less its cover'),
      ...(onEdge ? [] : [faceCheck(drawn, key, context)]),
      embedCheck(drawn, key, bend, context),
    ],
    assumed: bend?.assumed ?? [],
    gaps: [],
  }
}

function coverGaps({ layer }: DrawnStarters, key: string, { panel }: LayContext): string[] {
  const face = layer ?? 'mould'
  return panel.drawing.cover?.[face] === undefined ? [`${key}: cover.${face}: cover to the bars, mm`] : []
}

function outOfEdges(drawn: DrawnStarters, context: LayContext): Stood[] {
  const { panel, space, edgeCover, roomFor, runs, inserts } = context
  const { diameter, embed, project, spacing, layer = 'mould' } = drawn
  if (typeof drawn.starters !== 'string') return []
  const room = roomFor(diameter)
  return runsAt(drawn.starters, runs).flatMap((run): Stood[] => {
    const levels = depthsFor(context, layer, run.inward, diameter)
    if (levels === null) return []
    const { from, along, inward } = run
    const margin = (inner: boolean) => (inner ? diameter / 2 : edgeCover + diameter / 2)
    const [low, high] = [margin(run.inner[0]), run.length - margin(run.inner[1])]
    const place = (at: number, into: number): Point => [
      from[0] + along[0] * at + inward[0] * into,
      from[1] + along[1] * at + inward[1] * into,
    ]
    const bar = (at: number, depth: number): Corner[] => {
      const height = heightAt(panel.drawing.thickness, layer, depth, diameter)
      return [
        [...place(at, embed), height],
        [...place(at, -project), height],
      ]
    }
    // Its own edge it passes; from there on it needs the room that every bar needs.
    const fits = (at: number) =>
      isWithin(room, place(at, Math.min(embed, edgeCover + diameter / 2)), place(at, embed))
    const laid = spreadEven({ space, diameter, inside: null, spacing, low, high, levels, bar, fits, inserts })
    if (laid === null) return []
    const bars = laid.at.map((at, i): LaidBar => {
      const centreline = bar(at, laid.level)
      space.add(solidsOf({ id: `starter ${from.join()} ${i} ${layer} ${diameter}`, centreline, diameter }))
      return { path: seenFromAbove(centreline), centreline, legs: [embed + project], turns: [] }
    })
    context.stacked[layer].push(laid.level + diameter)
    return [{ bars, widest: laid.widest, leftOut: laid.leftOut }]
  })
}

function onLine(drawn: DrawnStarters, inside: number | null, context: LayContext): Stood[] {
  const { panel, space, roomFor, inserts } = context
  const { diameter, embed, project, spacing, foot } = drawn
  if (typeof drawn.starters === 'string') return []
  const [a, b] = drawn.starters as readonly [Point, Point]
  const length = distance(a, b)
  const along: Point = [(b[0] - a[0]) / length, (b[1] - a[1]) / length]
  const left: Point = [-along[1] + 0, along[0]]
  const { thickness } = panel.drawing
  const room = roomFor(diameter)
  const place = (at: number, aside: number): Point => [
    a[0] + along[0] * at + left[0] * aside,
    a[1] + along[1] * at + left[1] * aside,
  ]
  const low = thickness - embed
  const bar = (at: number): Corner[] => {
    const [stem, tip] = [place(at, 0), thickness + project]
    if (foot === undefined)
      return [
        [...stem, low],
        [...stem, tip],
      ]
    const level = low + diameter / 2
    return [
      [...place(at, foot - diameter / 2), level],
      [...stem, level],
      [...stem, tip],
    ]
  }
  const fits = (at: number) =>
    isWithin(room, place(at, 0), place(at, (foot ?? 0) - (foot === undefined ? 0 : diameter)))
  const laid = spreadEven({
    space,
    diameter,
    inside,
    spacing,
    low: 0,
    high: length,
    levels: [0],
    bar,
    fits,
    inserts,
  })
  if (laid === null) return []
  const legs = foot === undefined ? [embed + project] : [foot, embed + project]
  const bars = laid.at.map((at, i): LaidBar => {
    const centreline = bar(at)
    space.add(solidsOf({ id: `starter ${a.join()} ${i} ${diameter}`, centreline, diameter, inside }))
    return { path: seenFromAbove(centreline), centreline, legs, turns: foot === undefined ? [] : [90] }
  })
  return [{ bars, widest: laid.widest, leftOut: laid.leftOut }]
}

/** What a standing starter leaves to the mould face. */
function faceCheck({ embed }: DrawnStarters, key: string, { panel }: LayContext): Check {
  const { thickness, cover } = panel.drawing
  return compare({
    id: `face:${key}`,
    step: 'cage',
    what: `Cover of ${key} at the mould face`,
    demand: thickness - embed,
    limit: cover?.mould ?? null,
    unit: 'mm',
    sense: 'at least',
    source: enteredBy('the drawing'),
    missing: cover?.mould === undefined ? ['cover.mould: cover to the bars, mm'] : [],
  })
}

/** Length in the concrete against the anchorage of a straight bar, or of a standard hook where it has a foot. */
function embedCheck(drawn: DrawnStarters, key: string, bend: BendOf | null, context: LayContext): Check {
  const { diameter, grade, embed, spacing, layer, foot } = drawn
  const what = `Length of ${key} in the concrete`
  const { cover, thickness } = context.panel.drawing
  const depth = layer === undefined ? context.edgeCover : (cover?.[layer] ?? null)
  const below = layer === 'top' ? thickness - (depth ?? 0) - diameter : (depth ?? 0)
  const gap = spacing - diameter
  if (bend === null || foot === undefined) {
    const anchorage = anchorageOf(context, { diameter, grade, depth, gap, below })
    return anchorCheck({ key, what, found: embed, anchorage })
  }
  return footCheck({ drawn, foot, key, inside: bend.inside, gap }, context)
}
