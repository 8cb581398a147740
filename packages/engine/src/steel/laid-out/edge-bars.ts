import type { DrawnEdgeBars, Layer } from '../../panel/drawn-steel.ts'
import type { Point } from '../../panel/point.ts'
import type { Region } from '../../panel/region.ts'
import type { Corner } from '../steel-plan.ts'
import { bendOf } from './bend-of.ts'
import { type Depths, depthPairs } from './depth-pairs.ts'
import { type EdgeRun, runsAt } from './edge-runs.ts'
import { fitCheck, leftOutCheck, spacingLaid } from './laid-checks.ts'
import { heightAt, type LaidBar, type LaidLine, type LayContext, NOTHING } from './lay-context.ts'
import { solidsOf } from './space.ts'
import { type Spread, spreadEven } from './spread.ts'
import { isWithin } from './within.ts'

interface Run {
  readonly run: EdgeRun
  readonly laid: Spread<Depths>
}

/** Bars at a corner of the outline start this many diameters inside the cover of the other edge: their webs and legs pass each other. */
const CORNER = 2

/**
 * U-bars or hooks along edges. The web stands at the edge cover; the legs lie beside the bars of the mats that run the same way, or
 * on them. Rows are even at no more than the spacing; a bar moves along the edge to lie beside another. Bars whose legs would leave the
 * concrete less its cover are left out and told.
 */
export function edgeBars(drawn: DrawnEdgeBars, key: string, context: LayContext): LaidLine {
  const { rules, runs, panel } = context
  const { diameter, grade, form } = drawn
  const bend = bendOf({ rules, key, diameter, grade, role: 'main', inside: drawn.inside })
  const gaps = (['mould', 'top'] as const)
    .filter((layer) => panel.drawing.cover?.[layer] === undefined)
    .map((layer) => `${key}: cover.${layer}: cover to the bars, mm`)
  if (gaps.length > 0) return { ...NOTHING, gaps, checks: [bend.check], assumed: bend.assumed }
  const placed = runsAt(drawn.edge, runs).flatMap((run): Run[] => {
    const found = alongRun(drawn, run, bend.inside, context)
    return found === null ? [] : [found]
  })
  const bars = placed.flatMap(({ run, laid }) =>
    laid.at.map((at): LaidBar => {
      const centreline = barAt(drawn, run, context)(at, laid.level)
      return { path: seenFromAbove(centreline), centreline, ...shapeOf(drawn, laid.level, context) }
    }),
  )
  const heights = placed.map(({ laid }) => heightOf(drawn, laid.level, context))
  const spacings = placed.flatMap(({ laid }) => laid.widest ?? [])
  const leftOut = placed.reduce((sum, each) => sum + each.laid.leftOut, 0)
  return {
    bars: [
      {
        prefix: drawn.mark ?? (form === 'u' ? 'EU' : 'EH'),
        named: drawn.mark !== undefined,
        use: 'edge',
        layer: form === 'u' ? 'both' : (drawn.layer ?? 'both'),
        diameter,
        grade,
        role: 'main',
        inside: bend.inside,
        least: bend.least,
        bars,
      },
    ],
    checks: [
      bend.check,
      ...spacingLaid(key, spacings, drawn.spacing),
      leftOutCheck(key, leftOut, 'their legs would leave the concrete less its cover'),
      ...(heights.length > 0
        ? [
            fitCheck({
              key,
              height: Math.min(...heights),
              inside: bend.inside,
              diameter,
              bends: form === 'u' ? 2 : 1,
            }),
          ]
        : []),
    ],
    assumed: bend.assumed,
    gaps: [],
  }
}

function alongRun(
  drawn: DrawnEdgeBars,
  run: EdgeRun,
  inside: number | null,
  context: LayContext,
): Run | null {
  const { space, edgeCover, roomFor, inserts, stacked } = context
  const { diameter, spacing, form, layer } = drawn
  const bends = inside === null ? null : form === 'u' ? inside + 2 * diameter : inside / 2 + diameter
  const levels = depthPairs(context, { direction: run.inward, diameter, needed: bends, only: layer })
  if (levels === null) return null
  const margin = (inner: boolean) => (inner ? diameter / 2 : edgeCover + CORNER * diameter)
  const [low, high] = [margin(run.inner[0]), run.length - margin(run.inner[1])]
  const bar = barAt(drawn, run, context)
  const room = roomFor(diameter)
  const fits = (at: number, level: Depths) => hasRoom(bar(at, level), room)
  const laid = spreadEven({ space, diameter, inside, spacing, low, high, levels, bar, fits, inserts })
  if (laid === null) return null
  for (const [i, place] of laid.at.entries()) {
    const id = `edge ${run.from.join()} ${run.to.join()} ${drawn.form} ${i}`
    space.add(solidsOf({ id, centreline: bar(place, laid.level), diameter, inside }))
  }
  if (form === 'u' || layer === 'mould') stacked.mould.push(laid.level.mould + diameter)
  if (form === 'u' || layer === 'top') stacked.top.push(laid.level.top + diameter)
  return { run, laid }
}

/** Outside, across the thickness, mm. */
function heightOf({ form, layer }: DrawnEdgeBars, depths: Depths, { panel }: LayContext): number {
  const { cover, thickness } = panel.drawing
  if (form === 'u') return thickness - depths.mould - depths.top
  return layer === 'mould'
    ? thickness - depths.mould - (cover?.top ?? 0)
    : thickness - depths.top - (cover?.mould ?? 0)
}

function shapeOf(drawn: DrawnEdgeBars, depths: Depths, context: LayContext): Pick<LaidBar, 'legs' | 'turns'> {
  const height = heightOf(drawn, depths, context)
  return drawn.form === 'u'
    ? { legs: [drawn.leg, height, drawn.leg], turns: [90, 90] }
    : { legs: [drawn.leg, height], turns: [90] }
}

/** Centreline of the bar at a place along its edge. */
function barAt(
  { diameter, leg, form, layer }: DrawnEdgeBars,
  { from, along, inward }: EdgeRun,
  { panel, edgeCover }: LayContext,
): (at: number, depths: Depths) => Corner[] {
  const { thickness, cover } = panel.drawing
  return (at, depths) => {
    const place = (into: number): Point => [
      from[0] + along[0] * at + inward[0] * into,
      from[1] + along[1] * at + inward[1] * into,
    ]
    const [web, end] = [place(edgeCover + diameter / 2), place(edgeCover + leg)]
    const height = (face: Layer) => heightAt(thickness, face, depths[face], diameter)
    if (form === 'u') {
      const [low, high] = [height('mould'), height('top')]
      return [
        [...end, low],
        [...web, low],
        [...web, high],
        [...end, high],
      ]
    }
    const tip = layer === 'mould' ? thickness - (cover?.top ?? 0) : (cover?.mould ?? 0)
    const level = height(layer ?? 'mould')
    return [
      [...end, level],
      [...web, level],
      [...web, tip],
    ]
  }
}

function hasRoom(centreline: readonly Corner[], room: Region): boolean {
  const path = seenFromAbove(centreline)
  return path.slice(1).every((to, i) => isWithin(room, path[i] as Point, to))
}

/** Corners seen from above, each once: a bar that stands up is a line or a point there. */
export function seenFromAbove(centreline: readonly Corner[]): Point[] {
  const points: Point[] = []
  for (const [x, y] of centreline) {
    if (!points.some((point) => point[0] === x && point[1] === y)) points.push([x, y])
  }
  return points
}
