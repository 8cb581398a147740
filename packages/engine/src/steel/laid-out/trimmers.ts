import type { DrawnTrimmers, Layer } from '../../panel/drawn-steel.ts'
import { type Check, compare } from '../../working/check.ts'
import { enteredBy } from '../../working/source.ts'
import type { Assumed, Worked } from '../../working/worked.ts'
import { NO_RULE } from './bend-of.ts'
import { diagonalsAt } from './diagonals.ts'
import { runsAt } from './edge-runs.ts'
import { anchorageOf, anchorCheck, leftOutCheck } from './laid-checks.ts'
import { type LaidBars, type LaidLine, type LayContext, NOTHING } from './lay-context.ts'
import { flatBar } from './stack-flat.ts'
import { trimmerPlaces } from './trimmer-places.ts'

/** Sides of an opening shorter than this many bars get no trimmers: it is round there. Common practice, no source. */
const SHORTEST_SIDE = 10

/**
 * Trimmers beside every straight side of an opening, the first at the edge cover or inside the U-bars there, each reaching past the corners; cut where the concrete
 * less its cover ends, and told where less than the anchorage is left. All of one direction and layer lie at one height, beside the
 * bars of the mat that runs the same way or over what crosses them, moved from the opening to be clear of other bars or in contact. Diagonals lie over all.
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
  const laid = layers.map((layer) => ({
    layer,
    bars: trimmerPlaces({ drawn, sides: long, layer, apart: apart ?? 0, context }),
  }))
  const all = laid.flatMap(({ bars }) => bars)
  const past = all.flatMap(({ past: ends }) => [...ends])
  const base = { named: drawn.mark !== undefined, grade, role: 'main', inside: null, least: null } as const
  const lines = laid.map(
    ({ layer, bars }): LaidBars => ({
      ...base,
      prefix: drawn.mark ?? `${layer === 'mould' ? 'M' : 'T'}R`,
      use: 'trimmer',
      layer,
      diameter,
      bars: bars.map(({ from, to, height }) => flatBar(from, to, height)),
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
        long.length * count * layers.length - all.length,
        'the concrete less its cover leaves no room beside the opening',
      ),
      ...clearCheck(key, count, (apart ?? 0) - diameter, clear),
      ...reachChecks(drawn, key, past, layers, context, (apart ?? 0) - diameter),
      ...(diagonal?.checks ?? []),
    ],
    assumed: [...(count > 1 && drawn.apart === undefined ? [apartAssumed(key, apart ?? 0)] : [])],
    gaps: all.some(({ height }) => height === null)
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
