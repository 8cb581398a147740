import type { Point } from '../../panel/point.ts'
import { depthsFor, type LayContext } from './lay-context.ts'

/** How deep the pieces of a bar lie at both faces, mm to its outer side. */
export interface Depths {
  readonly mould: number
  readonly top: number
}

export interface DepthPairsInput {
  /** Of the pieces along the faces. */
  readonly direction: Point
  readonly diameter: number
  /** Height outside that its bends take, mm; null where not known. */
  readonly needed: number | null
  /** Layer that a piece lies in; the bar then ends at the cover of the other face. Missing: both. */
  readonly only?: 'mould' | 'top' | undefined
}

/**
 * Depths at both faces to try, nearest the faces first; those that leave less height than the bends take are left out, but the first
 * always stays. Null without covers.
 */
export function depthPairs(
  context: LayContext,
  { direction, diameter, needed, only }: DepthPairsInput,
): Depths[] | null {
  const { cover, thickness } = context.panel.drawing
  const at = (layer: 'mould' | 'top') => {
    const face = cover?.[layer]
    if (face === undefined) return null
    return only === undefined || only === layer ? depthsFor(context, layer, direction, diameter) : [face]
  }
  const [mould, top] = [at('mould'), at('top')]
  if (mould === null || top === null) return null
  const pairs = mould
    .flatMap((m, i) => top.map((t, j) => ({ depths: { mould: m, top: t }, order: i + j })))
    .sort((a, b) => a.order - b.order)
    .map(({ depths }) => depths)
  const high = pairs.filter((pair) => thickness - pair.mould - pair.top >= (needed ?? 0))
  return high.length > 0 ? high : pairs.slice(0, 1)
}
