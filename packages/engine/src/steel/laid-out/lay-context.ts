import type { SteelRules } from '../../codes/steel-rules.ts'
import type { Layer } from '../../panel/drawn-steel.ts'
import type { Panel } from '../../panel/panel.ts'
import type { Point } from '../../panel/point.ts'
import { offset, type Region } from '../../panel/region.ts'
import type { Check } from '../../working/check.ts'
import type { Assumed, Worked } from '../../working/worked.ts'
import type { PlannedMat } from '../mats.ts'
import type { BarUse, Corner } from '../steel-plan.ts'
import type { EdgeRun } from './edge-runs.ts'
import type { Space } from './space.ts'
import type { KeptClear } from './spread.ts'
import type { Web } from './webs.ts'

/** Bars of one line of the drawing that share size, use and bend. */
export interface LaidBars {
  readonly prefix: string
  /** The drawing names this line: the prefix is its mark. */
  readonly named: boolean
  readonly use: BarUse
  readonly layer: Layer | 'both'
  readonly diameter: number
  readonly grade: string
  readonly role: 'main' | 'stirrup'
  readonly inside: number | null
  /** Least inside diameter by the code, for bent bars. */
  readonly least: Worked<number> | null
  readonly bars: readonly LaidBar[]
}

export interface LaidBar {
  readonly path: readonly Point[]
  readonly centreline: readonly Corner[] | null
  /** Outside dimensions as `cutLength` takes them, mm. */
  readonly legs: readonly number[]
  /** degrees */
  readonly turns: readonly number[]
}

/** What one line of the drawing comes to. */
export interface LaidLine {
  readonly bars: readonly LaidBars[]
  readonly checks: readonly Check[]
  readonly assumed: readonly Assumed[]
  /** What is missing to lay it out, by field. */
  readonly gaps: readonly string[]
}

export const NOTHING: LaidLine = { bars: [], checks: [], assumed: [], gaps: [] }

/** What every kind of bar is laid out in. */
export interface LayContext {
  readonly panel: Panel
  readonly rules: SteelRules
  readonly mats: readonly PlannedMat[]
  readonly runs: readonly EdgeRun[]
  /** U-bars and hooks along edges: other bars lie inside them. */
  readonly webs: ReadonlyMap<EdgeRun, Web>
  readonly space: Space
  /** Clear distance that the code asks beside a bar of that diameter, mm; null where not known. */
  readonly clearBeside: (diameter: number) => number | null
  /** Inserts whose kind says how far bars keep from them. */
  readonly inserts: readonly KeptClear[]
  /** Cover at edges and openings, mm. */
  readonly edgeCover: number
  /** Concrete less edge cover and half a bar, for bars of a diameter; a hundredth of a millimetre is left for rounding. */
  readonly roomFor: (diameter: number) => Region
  /** Depths from the face at which bars over the mats of a layer may lie, mm: grows as bars are laid. */
  readonly stacked: Record<Layer, number[]>
}

/** Left to rooms for the rounding of clipping, mm; bars that a room cuts give it back. */
export const ROUNDING = 0.01

export function roomIn(panel: Panel, edgeCover: number): (diameter: number) => Region {
  const rooms = new Map<number, Region>()
  return (diameter) => {
    const room = rooms.get(diameter) ?? offset(panel.region, ROUNDING - edgeCover - diameter / 2)
    rooms.set(diameter, room)
    return room
  }
}

/**
 * Depths from the face of a layer at which a bar of that direction may lie, nearest first, mm: beside the bars of a mat that runs
 * the same way, over all mats, over bars laid on them already; none that takes the cover of the other face, but the first always.
 * Null where the drawing gives the layer no cover.
 */
export function depthsFor(
  { panel, mats, stacked }: Pick<LayContext, 'panel' | 'mats' | 'stacked'>,
  layer: Layer,
  [x, y]: Point,
  diameter: number,
): number[] | null {
  const face = panel.drawing.cover?.[layer]
  if (face === undefined) return null
  const own = mats.filter(({ mat }) => mat.layer === layer)
  const beside = own.flatMap(({ mat, cover }) =>
    cover !== null && Math.abs(mat.direction === 'x' ? y : x) < 1e-6 ? [cover] : [],
  )
  const over = own.reduce((depth, { mat }) => depth + mat.diameter, face)
  const all = [...beside, over, ...stacked[layer].filter((depth) => depth > over)]
  const sorted = [...new Set(all)].sort((a, b) => a - b)
  const { thickness, cover } = panel.drawing
  const deepest = thickness - (cover?.[layer === 'mould' ? 'top' : 'mould'] ?? 0) - diameter
  const within = sorted.filter((depth) => depth <= deepest)
  return within.length > 0 ? within : sorted.slice(0, 1)
}

/** Height of a bar's centreline above the mould face, mm, from the depth of its outer side. */
export function heightAt(thickness: number, layer: Layer, depth: number, diameter: number): number {
  return layer === 'mould' ? depth + diameter / 2 : thickness - depth - diameter / 2
}
