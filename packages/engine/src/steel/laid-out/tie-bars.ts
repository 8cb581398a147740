import type { DrawnTieBars } from '../../panel/drawn-steel.ts'
import { distance, type Point } from '../../panel/point.ts'
import { type Assumed, known, unknown, type Worked } from '../../working/worked.ts'
import { leastEndLeg } from '../bend-legs.ts'
import type { Corner } from '../steel-plan.ts'
import { type BendOf, bendOf } from './bend-of.ts'
import { type Depths, depthPairs } from './depth-pairs.ts'
import { seenFromAbove } from './edge-bars.ts'
import { fitCheck, leftOutCheck, spacingLaid } from './laid-checks.ts'
import { heightAt, type LaidBar, type LaidLine, type LayContext, NOTHING } from './lay-context.ts'
import { solidsOf } from './space.ts'
import { spreadEven } from './spread.ts'
import { isWithin } from './within.ts'

/** Turn of the hooks of a closed tie, degrees. */
const HOOK = 135

/** Where ties stand: places along a line, and the direction of their width. */
interface Stand {
  readonly from: Point
  readonly along: Point
  readonly across: Point
  /** null: one tie, at its place. */
  readonly spacing: number | null
  readonly low: number
  readonly high: number
}

/**
 * Closed ties across the thickness, along a line or one at each point: width as drawn, height what the covers and the bars that run
 * the same way leave; hooks of 135° at one corner, not drawn in the picture but cut. Their pieces along the faces lie beside the bars of the
 * mats that run the same way, or on them.
 */
export function tieBars(drawn: DrawnTieBars, key: string, context: LayContext): LaidLine {
  const { panel, rules } = context
  const { diameter, grade, width } = drawn
  const bend = bendOf({ rules, key, diameter, grade, role: 'stirrup', inside: drawn.inside })
  const gaps = (['mould', 'top'] as const)
    .filter((layer) => panel.drawing.cover?.[layer] === undefined)
    .map((layer) => `${key}: cover.${layer}: cover to the bars, mm`)
  const hook = hookOf(drawn, bend, context)
  if (!hook.known) gaps.push(...hook.gaps.map((gap) => `${key}: tail: ${gap}`))
  const base = { ...NOTHING, checks: [bend.check], assumed: bend.assumed }
  if (gaps.length > 0 || !hook.known || bend.inside === null) return { ...base, gaps }
  const inside = bend.inside
  const standing = standsOf(drawn).map((stand) => stood(drawn, stand, inside, key, context))
  const bars = standing.flatMap(({ lines, depths }) =>
    lines.map((centreline): LaidBar => {
      const height = heightOf(depths, context)
      const legs = [hook.value, width, height, width, height, hook.value]
      return { path: seenFromAbove(centreline), centreline, legs, turns: [HOOK, 90, 90, 90, HOOK] }
    }),
  )
  const spacings = standing.flatMap((each) => each.widest ?? [])
  const heights = standing
    .filter(({ lines }) => lines.length > 0)
    .map(({ depths }) => heightOf(depths, context))
  const least = Math.min(width, ...heights)
  return {
    bars: [
      {
        prefix: drawn.mark ?? 'SL',
        named: drawn.mark !== undefined,
        use: 'tie',
        layer: 'both',
        diameter,
        grade,
        role: 'stirrup',
        inside,
        least: bend.least,
        bars,
      },
    ],
    checks: [
      bend.check,
      ...(drawn.spacing === undefined ? [] : spacingLaid(key, spacings, drawn.spacing)),
      leftOutCheck(
        key,
        standing.reduce((sum, { leftOut }) => sum + leftOut, 0),
        'they would leave the concrete less its cover',
      ),
      fitCheck({ key, height: least, inside, diameter, bends: 2 }),
    ],
    assumed: [...bend.assumed, ...tailAssumed(drawn, key, hook.value, inside)],
    gaps: [],
  }
}

/** Outside dimension of the hooks, mm: the drawing's straight past the bend, else the least end leg of the code. */
function hookOf({ diameter, tail }: DrawnTieBars, { inside }: BendOf, { rules }: LayContext): Worked<number> {
  if (inside === null) return unknown('inside: inside diameter of the bends, mm')
  if (tail !== undefined) return known(inside / 2 + diameter + tail, [])
  return leastEndLeg({ rules, diameter, inside, turn: HOOK, role: 'stirrup', plain: false })
}

function tailAssumed({ tail, diameter }: DrawnTieBars, key: string, hook: number, inside: number): Assumed[] {
  if (tail !== undefined) return []
  const why = 'the drawing gives no straight past the hooks: the least end leg that the code allows'
  return [{ field: `steel.${key}.tail`, value: hook - inside / 2 - diameter, unit: 'mm', why }]
}

function standsOf({ ties, spacing, across }: DrawnTieBars): Stand[] {
  const places = ties as unknown as readonly Point[]
  if (spacing === undefined) {
    const direction: Point = across === 'x' ? [1, 0] : [0, 1]
    const along: Point = [direction[1], direction[0]]
    return places.map((from) => ({ from, along, across: direction, spacing: null, low: 0, high: 0 }))
  }
  const [a, b] = places as [Point, Point]
  const length = distance(a, b)
  const along: Point = [(b[0] - a[0]) / length, (b[1] - a[1]) / length]
  return [
    {
      from: a,
      along,
      across: [-along[1] + 0, along[0]],
      spacing,
      low: 0,
      high: length,
    },
  ]
}

function stood(drawn: DrawnTieBars, stand: Stand, inside: number, key: string, context: LayContext) {
  const { space, roomFor, panel, inserts } = context
  const { diameter, width } = drawn
  const room = roomFor(diameter)
  const { from, along, across, low, high } = stand
  const needed = inside + 2 * diameter
  const levels = depthPairs(context, { direction: across, diameter, needed }) ?? []
  const half = width / 2 - diameter / 2
  const side = (at: number, by: number): Point => [
    from[0] + along[0] * at + across[0] * by,
    from[1] + along[1] * at + across[1] * by,
  ]
  const bar = (at: number, depths: Depths): Corner[] => {
    const [a, b] = [side(at, -half), side(at, half)]
    const bottom = heightAt(panel.drawing.thickness, 'mould', depths.mould, diameter)
    const lid = heightAt(panel.drawing.thickness, 'top', depths.top, diameter)
    return [
      [...a, lid],
      [...a, bottom],
      [...b, bottom],
      [...b, lid],
      [...a, lid],
    ]
  }
  const fits = (at: number) => half > 0 && isWithin(room, side(at, -half), side(at, half))
  const spacing = stand.spacing ?? Number.POSITIVE_INFINITY
  const laid = spreadEven({ space, diameter, inside, spacing, low, high, levels, bar, fits, inserts })
  const depths = laid?.level ?? { mould: 0, top: 0 }
  const lines = (laid?.at ?? []).map((at, i) => {
    const centreline = bar(at, depths)
    space.add(solidsOf({ id: `tie ${key} ${from.join()} ${i}`, centreline, diameter, inside }))
    return centreline
  })
  if (lines.length > 0) {
    context.stacked.mould.push(depths.mould + diameter)
    context.stacked.top.push(depths.top + diameter)
  }
  return { lines, depths, widest: laid?.widest ?? null, leftOut: laid?.leftOut ?? 0 }
}

/** Outside, across the thickness, mm. */
function heightOf({ mould, top }: Depths, { panel }: LayContext): number {
  return panel.drawing.thickness - mould - top
}
