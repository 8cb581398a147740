import type { DrawnTrimmers, Layer } from '../../panel/drawn-steel.ts'
import type { Point } from '../../panel/point.ts'
import { type Check, compare } from '../../working/check.ts'
import { enteredBy } from '../../working/source.ts'
import type { Assumed, Worked } from '../../working/worked.ts'
import { NO_RULE } from './bend-of.ts'
import { diagonalsAt } from './diagonals.ts'
import { type EdgeRun, runsAt } from './edge-runs.ts'
import { anchorageOf, anchorCheck, leftOutCheck } from './laid-checks.ts'
import {
  type LaidBar,
  type LaidBars,
  type LaidLine,
  type LayContext,
  NOTHING,
  ROUNDING,
} from './lay-context.ts'
import { flatBar, stackFlat } from './stack-flat.ts'
import { behindWeb } from './webs.ts'
import { partsWithin } from './within.ts'

/** A straight bar in plan with what it reaches past the corners at its ends, mm; an end at the edge of the panel has none. */
interface Trimmer {
  readonly from: Point
  readonly to: Point
  readonly past: readonly number[]
}

/** Sides of an opening shorter than this many bars get no trimmers: it is round there. Common practice, no source. */
const SHORTEST_SIDE = 10

/**
 * Trimmers beside every straight side of an opening, the first at the edge cover or inside the U-bars there, each reaching past the corners; cut where the concrete
 * less its cover ends, and told where less than the anchorage is left. All of one direction and layer lie at one height, beside the
 * bars of the mat that runs the same way or over what crosses them. Diagonals lie over all.
 */
export function trimmers(drawn: DrawnTrimmers, key: string, context: LayContext): LaidLine {
  const { runs, panel, rules } = context
  const { diameter, grade, count } = drawn
  const clear = rules.clearSpacing({ diameter, aggregate: panel.drawing.concrete.aggregate ?? null })
  const apart = drawn.apart ?? (clear.known ? clear.value + diameter : null)
  const needsClear = (count > 1 && drawn.apart === undefined) || (drawn.diagonals?.count ?? 1) > 1
  if (needsClear && !clear.known) return { ...NOTHING, gaps: clear.gaps.map((gap) => `${key}: ${gap}`) }
  const sides = runsAt(drawn.trim === 'all' ? 'openings' : drawn.trim, runs)
  const long = sides.filter(({ length }) => length >= SHORTEST_SIDE * diameter)
  const layers: readonly Layer[] = drawn.layer === 'both' ? ['mould', 'top'] : [drawn.layer]
  const laid = long.map((run) => ({ run, bars: besideRun(drawn, run, apart ?? 0, context) }))
  const past = laid.flatMap(({ bars }) => bars.flatMap(({ past: ends }) => [...ends]))
  const groups = layers.flatMap((layer) => placed(laid, drawn, layer, context))
  const leftOut = long.length * count - laid.reduce((sum, { bars }) => sum + bars.length, 0)
  const base = { named: drawn.mark !== undefined, grade, role: 'main', inside: null, least: null } as const
  const lines = layers.map(
    (layer): LaidBars => ({
      ...base,
      prefix: drawn.mark ?? `${layer === 'mould' ? 'M' : 'T'}R`,
      use: 'trimmer',
      layer,
      diameter,
      bars: groups.filter((group) => group.layer === layer).map(({ bar }) => bar),
    }),
  )
  const diagonal = drawn.diagonals === undefined ? null : diagonalsAt(drawn, key, sides, layers, context)
  return {
    bars: [...lines, ...(diagonal?.bars ?? [])],
    checks: [
      ...(sides.length > long.length
        ? [leftOutCheck(`${key}-sides`, sides.length - long.length, 'sides shorter than ten bars get none')]
        : []),
      leftOutCheck(
        key,
        leftOut * layers.length,
        'the concrete less its cover leaves no room beside the opening',
      ),
      ...clearCheck(key, count, (apart ?? 0) - diameter, clear),
      ...reachChecks(drawn, key, past, layers, context, (apart ?? 0) - diameter),
      ...(diagonal?.checks ?? []),
    ],
    assumed: [...(count > 1 && drawn.apart === undefined ? [apartAssumed(key, apart ?? 0)] : [])],
    gaps: groups.some(({ bar }) => bar.centreline === null)
      ? layers.flatMap((layer) =>
          panel.drawing.cover?.[layer] === undefined ? [`${key}: cover.${layer}: cover to the bars, mm`] : [],
        )
      : [],
  }
}

/** Clear between trimmers of one side against the least of the code. */
function clearCheck(key: string, count: number, found: number, least: Worked<number>): Check[] {
  if (count < 2) return []
  return [
    compare({
      id: `clear:${key}`,
      step: 'set',
      what: `Clear between the trimmers of ${key}`,
      demand: found,
      limit: least.known ? least.value : null,
      unit: 'mm',
      sense: 'at least',
      source: least.known ? (least.working.at(-1)?.source ?? NO_RULE) : NO_RULE,
      working: least.known ? least.working : [],
      missing: least.known ? [] : least.gaps,
    }),
  ]
}

function apartAssumed(key: string, apart: number): Assumed {
  return {
    field: `steel.${key}.apart`,
    value: apart,
    unit: 'mm',
    why: 'the drawing gives no distance between trimmers: the least clear distance of the code',
  }
}

/** Trimmers of one side of an opening in plan; those with no room are left out. */
function besideRun(drawn: DrawnTrimmers, run: EdgeRun, apart: number, context: LayContext): Trimmer[] {
  const { diameter, beyond, count } = drawn
  const { from, along, inward, length } = run
  const room = context.roomFor(diameter)
  const layers: readonly Layer[] = drawn.layer === 'both' ? ['mould', 'top'] : [drawn.layer]
  // Trimmers may come to lie over what crosses them: they stand where the legs run straight.
  const behind = behindWeb({ web: context.webs.get(run), diameter, over: layers })
  return Array.from({ length: count }, (_, k) => k).flatMap((k): Trimmer[] => {
    const into = context.edgeCover + behind + diameter / 2 + k * apart
    const at = (place: number): Point => [
      from[0] + along[0] * place + inward[0] * into,
      from[1] + along[1] * place + inward[1] * into,
    ]
    // At the edge of the panel there is no corner to reach past.
    const [low, high] = [run.inner[0] ? -beyond : 0, run.inner[1] ? length + beyond : length]
    const middle = (length / 2 - low) / (high - low)
    const part = partsWithin(room, at(low), at(high)).find(([a, b]) => a <= middle && b >= middle)
    if (part === undefined) return []
    const start = part[0] > 0 ? low + part[0] * (high - low) + ROUNDING : low
    const end = part[1] < 1 ? low + part[1] * (high - low) - ROUNDING : high
    return [
      {
        from: at(start),
        to: at(end),
        past: [...(run.inner[0] ? [-start] : []), ...(run.inner[1] ? [end - length] : [])],
      },
    ]
  })
}

interface PlacedTrimmer {
  readonly layer: Layer
  readonly bar: LaidBar
}

/** Heights: the bars of a direction at the first depth at which all of them have room. */
function placed(
  laid: readonly { readonly run: EdgeRun; readonly bars: readonly Trimmer[] }[],
  { diameter }: DrawnTrimmers,
  layer: Layer,
  context: LayContext,
): PlacedTrimmer[] {
  const { thickness } = context.panel.drawing
  const directions = new Map<string, { along: Point; bars: Trimmer[] }>()
  for (const { run, bars } of laid) {
    const flip = run.along[0] < -1e-9 || (Math.abs(run.along[0]) <= 1e-9 && run.along[1] < 0) ? -1 : 1
    const name = run.along.map((part) => (part * flip).toFixed(6)).join(' ')
    const same = directions.get(name) ?? { along: run.along, bars: [] }
    same.bars.push(...bars)
    directions.set(name, same)
  }
  return [...directions.values()].flatMap(({ along, bars }) =>
    stackFlat({ bars, along, diameter, layer, name: 'trimmer', context }).map((height, i) => {
      const { from, to } = bars[i] as Trimmer
      return { layer, bar: flatBar(from, to, height === null ? null : Math.min(height, thickness)) }
    }),
  )
}

/** What trimmers keep past the corners: as drawn, and against the anchorage of the code. */
function reachChecks(
  { diameter, grade, beyond }: DrawnTrimmers,
  key: string,
  past: readonly number[],
  layers: readonly Layer[],
  context: LayContext,
  gap: number,
): Check[] {
  if (past.length === 0) return []
  const least = Math.min(...past)
  const cut = past.filter((length) => length < beyond - 1e-6).length
  const { cover, thickness } = context.panel.drawing
  // Of two layers the one that asks for more: least cover, deepest fresh concrete below.
  const covers = layers.map((layer) => cover?.[layer] ?? null)
  const depth = covers.includes(null) ? null : Math.min(...(covers as number[]))
  const below = layers.includes('top') ? thickness - (cover?.top ?? 0) - diameter : (cover?.mould ?? 0)
  const anchorage = anchorageOf(context, {
    diameter,
    grade,
    depth,
    gap: gap > 0 ? gap : (depth ?? diameter),
    below,
  })
  return [
    anchorCheck({
      key,
      what: `Trimmers of ${key} past the corner`,
      found: least,
      anchorage,
      ...(cut > 0 ? { note: `${cut} ends cut at the edge cover, drawn ${beyond} mm past the corner` } : {}),
    }),
    compare({
      id: `beyond:${key}`,
      step: 'cage',
      what: `Trimmers of ${key} past the corner, as drawn`,
      demand: least,
      limit: beyond,
      unit: 'mm',
      sense: 'at least',
      source: enteredBy('the drawing'),
    }),
  ]
}
