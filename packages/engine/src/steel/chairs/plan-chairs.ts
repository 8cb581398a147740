import type { CodeFamily } from '../../codes/family.ts'
import { isMat } from '../../panel/drawing.ts'
import type { Panel } from '../../panel/panel.ts'
import type { Point, Ring } from '../../panel/point.ts'
import { placeInRing } from '../../panel/polygon.ts'
import type { Asked } from '../../working/asked.ts'
import type { Check } from '../../working/check.ts'
import { notAboveZero } from '../../working/guard.ts'
import { GEOMETRY } from '../../working/source.ts'
import type { Assumed, Step } from '../../working/worked.ts'
import type { SteelPlan } from '../steel-plan.ts'
import { type LayerRows, layerRows, type MatRowLine, widestGap } from '../tie-plan/mat-rows.ts'
import type { ChairLayer, ChairPlan } from './chair-plan.ts'
import { type ChairSpacingFound, chairSpacing } from './chair-spacing.ts'
import { layChairs } from './lay-chairs.ts'

export interface ChairsInput {
  readonly panel: Panel
  readonly steel: Pick<SteelPlan, 'bars' | 'placed' | 'laps'>
  readonly family: CodeFamily
  /** Weight of one person with tools, kN; assumed where missing. */
  readonly person?: number
  /** Largest sag, mm, by the yard; the family's cover tolerance where missing. */
  readonly sag?: number
  /** Spacing that the yard uses, mm; by rule or sag where missing. */
  readonly spacing?: number
}

/**
 * Chairs under each layer: how far apart by the family's rule, else by the sag of the mat; where they stand and how high.
 *
 * A layer whose spacing or height cannot be known is named in `unknown` and has no chairs. Left out: bars that are no mat, and
 * the strength of the chair itself.
 */
export function planChairs(input: ChairsInput): ChairPlan {
  const bad = notAboveZero({
    person: input.person ?? 1,
    sag: input.sag ?? 1,
    spacing: input.spacing ?? 1,
  })
  if (bad.length > 0) return { layers: [], checks: [], toRecord: [], working: [], assumed: [], unknown: bad }
  const layers: ChairLayer[] = []
  const checks: Check[] = []
  const working: Step[] = []
  const assumed: Assumed[] = []
  const unknown = notCarried(input)
  for (const rows of layerRows(input.steel)) {
    const mat = matOf(rows)
    if (mat === null) {
      unknown.push(`cover.${rows.layer}: sets the height of the chairs`)
      continue
    }
    if (!(mat.underside > 0)) {
      unknown.push(`chairs, ${rows.layer} layer: cover and mats are thicker than the panel`)
      continue
    }
    const found = chairSpacing({ ...input, ...mat, layer: rows.layer })
    checks.push(...found.checks)
    working.push(...found.working)
    assumed.push(...found.assumed.filter(({ field }) => !assumed.some((line) => line.field === field)))
    unknown.push(...found.gaps)
    if (found.spacing === null) continue
    const edge = input.panel.drawing.cover?.edge
    if (edge === undefined) {
      unknown.push(`chairs, ${rows.layer} layer: cover.edge: how far bars end from the edges, mm`)
      continue
    }
    const layer = laid({ panel: input.panel, rows, mat, found, spacing: found.spacing, edge })
    layers.push(layer)
    unknown.push(
      ...layer.formers.map(
        (mark) =>
          `chairs, ${rows.layer} layer: over void former ${mark} the mat is carried off it; how is not computed`,
      ),
    )
    working.push(heightStep(layer, mat), countStep(layer))
  }
  return { layers, checks, toRecord: layers.map(chairsAsked), working, assumed, unknown }
}

/** Layers that hold steel and get no chairs: bars without a mat, or a mat that is not laid out. */
function notCarried({ panel, steel }: ChairsInput): string[] {
  const drawn = panel.drawing.steel ?? []
  return (['mould', 'top'] as const).flatMap((layer) => {
    if (steel.placed.some((bar) => bar.layer === layer && bar.use === 'mat')) return []
    if (drawn.some((each) => isMat(each) && each.layer === layer))
      return panel.drawing.cover?.[layer] === undefined
        ? [`cover.${layer}: sets the height of the chairs`]
        : [`chairs, ${layer} layer: cover.edge: its bars are not laid out`]
    return steel.placed.some((bar) => bar.layer === layer)
      ? [`chairs, ${layer} layer: bars without a mat; place them by hand`]
      : []
  })
}

export interface CarriedMat {
  readonly direction: 'x' | 'y'
  /** Rows that lie on the chairs: the lowest of the layer. */
  readonly carried: readonly MatRowLine[]
  readonly crossing: readonly MatRowLine[]
  readonly diameter: number
  /** Spacing of the rows, mm; the largest gap where they are not even. */
  readonly carriedSpacing: number | null
  readonly crossingSpacing: number | null
  readonly crossingDiameter: number | null
  /** Underside of the bars that lie on the chairs above the mould face, mm. */
  readonly underside: number
}

/** The rows that the chairs touch; null where no height is known. */
function matOf({ alongX, alongY }: LayerRows): CarriedMat | null {
  const lowest = (rows: readonly MatRowLine[]): number =>
    rows.reduce(
      (least, { height, diameter }) => (height === null ? least : Math.min(least, height - diameter / 2)),
      Number.POSITIVE_INFINITY,
    )
  const [underX, underY] = [lowest(alongX), lowest(alongY)]
  const underside = Math.min(underX, underY)
  if (!Number.isFinite(underside)) return null
  const direction = underX <= underY ? 'x' : 'y'
  const [own, other] = direction === 'x' ? [alongX, alongY] : [alongY, alongX]
  const carried = own.filter(
    (row) => row.height !== null && row.height - row.diameter / 2 <= underside + 1e-6,
  )
  const thinnest = other.length === 0 ? null : Math.min(...other.map((row) => row.diameter))
  return {
    direction,
    carried,
    crossing: other,
    diameter: Math.min(...carried.map((row) => row.diameter)),
    carriedSpacing: widestGap(carried),
    crossingSpacing: widestGap(other),
    crossingDiameter: thinnest,
    underside,
  }
}

function laid({
  panel,
  rows: { layer },
  mat: { carried, direction, diameter, underside },
  found,
  spacing,
  edge,
}: {
  readonly panel: Panel
  readonly rows: LayerRows
  readonly mat: CarriedMat
  readonly found: ChairSpacingFound
  /** mm */
  readonly spacing: number
  /** Cover at edges and openings, mm. */
  readonly edge: number
}): ChairLayer {
  const at = layChairs({ region: panel.region, lines: carried, direction, spacing, edge })
  const { raise, sag, source } = found
  const height = underside + raise
  return {
    layer,
    direction,
    diameter,
    height,
    raise,
    spacing,
    spacingSource: source,
    sag: sag?.sag ?? null,
    stress: sag?.stress ?? null,
    yield: found.yield,
    at: at.filter((place) => formerUnder(panel, place, height) === null),
    formers: [...new Set(at.flatMap((place) => formerUnder(panel, place, height) ?? []))],
  }
}

/** Void former that stands where a chair from the bed up to a height would. */
function formerUnder({ drawing }: Panel, at: Point, height: number): string | null {
  const former = (drawing.voids ?? []).find(
    ({ above, outline }) => above < height && placeInRing(at, outline as unknown as Ring) !== 'outside',
  )
  return former?.mark ?? null
}

function heightStep({ layer, height, raise, diameter }: ChairLayer, { underside }: CarriedMat): Step {
  return {
    symbol: 'h_chair',
    formula: 'z − d / 2 + r',
    given: { z: underside + diameter / 2, d: diameter, r: raise },
    result: height,
    unit: 'mm',
    source: GEOMETRY,
    note: `${layer} layer: z to the middle of the bars that lie on the chairs, r higher than drawn`,
  }
}

function countStep({ at, spacing, layer }: ChairLayer): Step {
  return {
    symbol: 'n_chair',
    formula: 'chairs under the lowest bars, rows and pitch at most s, staggered, edges and openings held',
    given: { s: spacing },
    result: at.length,
    unit: '',
    source: GEOMETRY,
    by: 'search',
    note: `${layer} layer`,
  }
}

/** What is looked at before the pour. */
function chairsAsked({ layer, at, height, spacing, formers }: ChairLayer): Asked {
  const under = layer === 'mould' ? 'steel at the mould' : 'top steel'
  return {
    id: `chairs:${layer}`,
    step: 'set',
    what: `${at.length} chairs, ${Math.round(height)} mm, under the ${under}`,
    kind: 'tick',
    unit: '',
    source: GEOMETRY,
    note: `Not more than ${Math.round(spacing)} mm apart; none knocked over.${
      formers.length > 0 ? ` Over ${formers.join(', ')} the mat is carried off the former.` : ''
    }`,
  }
}
