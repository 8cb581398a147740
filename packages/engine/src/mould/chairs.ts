import { type Drawing, isListed, isMat, type Layer } from '../panel/drawing.ts'
import type { Panel } from '../panel/panel.ts'
import type { Point } from '../panel/point.ts'
import { edges } from '../panel/polygon.ts'
import { offset, type Region, ringsOf } from '../panel/region.ts'
import { notAboveZero } from '../working/guard.ts'
import { GEOMETRY, type Source } from '../working/source.ts'
import { known, type Step, unknown, type Worked } from '../working/worked.ts'
import type { ChairGrid } from './mould-plan.ts'

const SPACING_SOURCE: Source = { standard: 'BS 7973-2:2001', clause: '50 d, staggered rows', status: 'seen' }
const CAP_SOURCE: Source = { standard: 'BS 7973-2:2001', clause: 'cap of 1000 mm', status: 'from memory' }

/** Largest distance between supports of a bar: 50 diameters, at most 1000 mm. */
export function chairSpacing(diameter: number): number {
  return Math.min(50 * diameter, 1000)
}

/**
 * Chairs of one layer: under the mat that is nearest the mould in it, in staggered rows, inside the concrete and clear of edges and
 * openings by the edge cover.
 *
 * Chairs for mould steel are as high as the mould cover; for top steel they reach the underside of the lowest top mat.
 * Unknown where the cover that sets the height is not drawn, or where the layer holds single bars but no mat. Left
 * out: the bar that each chair sits under; move a chair to the nearest bar.
 */
export function chairGrid(panel: Panel, layer: Layer): Worked<ChairGrid> | null {
  const { drawing } = panel
  const mats = (drawing.steel ?? []).filter(isMat).filter((mat) => mat.layer === layer)
  const carried = layer === 'mould' ? mats[0] : mats.at(-1)
  if (carried === undefined) {
    const bars = (drawing.steel ?? []).some((steel) => isListed(steel) && steel.layer === layer)
    return bars ? unknown(`chairs, ${layer} layer: bars without a mat; place them by hand`) : null
  }
  const height = chairHeight(drawing, layer)
  if (!height.known) return height
  const spacing = chairSpacing(carried.diameter)
  const at = supportPoints(panel.region, drawing.cover?.edge ?? drawing.cover?.mould ?? 0, spacing)
  return known({ layer, height: height.value, spacing, at }, [
    ...height.working,
    {
      symbol: 's_chair',
      formula: 'min(50 d, 1000)',
      given: { d: carried.diameter },
      result: spacing,
      unit: 'mm',
      source: spacing < 1000 ? SPACING_SOURCE : CAP_SOURCE,
    },
    {
      symbol: 'n_chair',
      formula: 'staggered rows at even pitch, both ends of each row held',
      given: { s_chair: spacing },
      result: at.length,
      unit: '',
      source: GEOMETRY,
      by: 'search',
    },
  ])
}

function chairHeight(drawing: Drawing, layer: Layer): Worked<number> {
  if (layer === 'mould') {
    const cover = drawing.cover?.mould
    return cover === undefined ? unknown('cover.mould: sets the height of the chairs') : known(cover, [])
  }
  const cover = drawing.cover?.top
  if (cover === undefined) return unknown('cover.top: sets the height of the chairs')
  const mats = (drawing.steel ?? []).filter(isMat).filter((mat) => mat.layer === 'top')
  const depth = mats.reduce((sum, mat) => sum + mat.diameter, 0)
  const height = drawing.thickness - cover - depth
  if (notAboveZero({ height }).length > 0)
    return unknown('chairs, top layer: cover and mats are thicker than the panel')
  const step: Step = {
    symbol: 'h_chair',
    formula: 't − c − d',
    given: { t: drawing.thickness, c: cover, d: depth },
    result: height,
    unit: 'mm',
    source: GEOMETRY,
    note: 'up to the underside of the lowest top mat',
  }
  return known(height, [step])
}

/**
 * Points in staggered rows at not more than `spacing`, inside the region shrunk by `clear`, ends of rows included. Where shrinking
 * leaves nothing, half as much is tried, and so on.
 */
export function supportPoints(region: Region, clear: number, spacing: number): Point[] {
  let inner: Region = region
  for (let by = clear; by > 1; by /= 2) {
    inner = offset(region, -by)
    if (inner.length > 0) break
    inner = region
  }
  return inner.flatMap((piece) => rowsOf([piece], spacing))
}

function rowsOf(region: Region, spacing: number): Point[] {
  const rings = ringsOf(region)
  const heights = rings.flat().map(([, y]) => y)
  const [low, high] = [Math.min(...heights), Math.max(...heights)]
  const gaps = Math.max(1, Math.ceil((high - low) / spacing - 1e-9))
  const points: Point[] = []
  for (let row = 0; row <= gaps; row += 1) {
    // The outermost rows lie a hair inside, where a horizontal edge would have no clear crossing.
    const y = Math.min(high - 0.01, Math.max(low + 0.01, low + ((high - low) * row) / gaps))
    for (const [from, to] of crossings(rings, y))
      points.push(...rowPoints(from, to, y, spacing, row % 2 === 1))
  }
  return points
}

/** Stretches of a horizontal line that lie in the region, left to right. */
function crossings(rings: readonly (readonly Point[])[], y: number): [number, number][] {
  const xs = rings
    .flatMap((ring) => edges(ring))
    .filter(([a, b]) => a[1] > y !== b[1] > y)
    .map(([a, b]) => a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0]))
    .sort((a, b) => a - b)
  const found: [number, number][] = []
  for (let i = 0; i + 1 < xs.length; i += 2) found.push([xs[i] as number, xs[i + 1] as number])
  return found
}

function rowPoints(from: number, to: number, y: number, spacing: number, staggered: boolean): Point[] {
  const gaps = Math.max(1, Math.ceil((to - from) / spacing - 1e-9))
  const step = (to - from) / gaps
  if (!staggered || gaps < 2) return Array.from({ length: gaps + 1 }, (_, i): Point => [from + i * step, y])
  // Staggered: ends held, the others half a step aside.
  return [[from, y], ...Array.from({ length: gaps }, (_, i): Point => [from + (i + 0.5) * step, y]), [to, y]]
}
