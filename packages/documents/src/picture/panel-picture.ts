import {
  bounds,
  counterClockwise,
  type Drawing,
  intersect,
  type Point,
  type Region,
  type Ring,
  ringsOf,
  subtract,
} from '@castwright/engine/panel'
import { dimensionShapes } from './dimensions.ts'
import { type Chains, type Layout, layOut } from './layout.ts'
import type { Frame, KeyLine, Picture, Shape } from './picture.ts'
import { voidGround, voidKey, voidLines, voidNames } from './void-shapes.ts'

/** More places than this in one chain cannot be read: only the whole length is given. */
const MOST_PLACES = 24

export interface BaseInput {
  readonly drawing: Drawing
  readonly frame: Frame
  /** Chains instead of those of outline and openings. */
  readonly chains?: Chains
  readonly halo?: number
  /** Space over and under everything for words and a legend, units. */
  readonly above?: number
  readonly below?: number
}

/** The panel alone, laid out: concrete, crossed openings, void formers dashed, ducts dash-dot, dimensions, and the layout to draw more on it. */
export interface Base {
  readonly drawing: Drawing
  readonly layout: Layout
  /** Concrete and openings, painted first. */
  readonly under: readonly Shape[]
  /** Outline and dimensions, painted after what lies on the concrete. */
  readonly over: readonly Shape[]
}

export function basePicture({ drawing, frame, chains, halo = 0, above = 0, below = 0 }: BaseInput): Base {
  const outline = drawing.outline as unknown as Ring
  const layout = layOut({ outline, frame, chains: chains ?? shapeChains(drawing), halo, above, below })
  const rings = ringsOf(concreteOf(drawing)).map((ring) => ring.map(layout.at))
  return {
    drawing,
    layout,
    under: [
      { kind: 'polygon', role: 'concrete', rings },
      ...(drawing.openings ?? []).flatMap((hole) =>
        openingShapes(hole.outline as unknown as Ring, outline, layout),
      ),
      ...voidGround(layout, drawing),
    ],
    over: [
      ...voidLines(layout, drawing),
      { kind: 'polygon', role: 'outline', rings },
      ...dimensionShapes(layout),
    ],
  }
}

/** The panel with its dimensions: the picture of every step that needs no more. */
export function panelPicture({ drawing, frame }: BaseInput): Picture {
  return finishPicture({
    base: basePicture({ drawing, frame }),
    title: `${sizeTitle(drawing)}, with its dimensions.`,
  })
}

export interface Finish {
  readonly base: Base
  /** Painted on the concrete, under outline and dimensions. */
  readonly inside?: readonly Shape[]
  /** Painted last. */
  readonly onTop?: readonly Shape[]
  readonly title: string
  readonly key?: readonly KeyLine[]
  readonly notes?: readonly string[]
}

export function finishPicture({
  base,
  inside = [],
  onTop = [],
  title,
  key = [],
  notes = [],
}: Finish): Picture {
  const { drawing, layout, under, over } = base
  // Last, so that they give way to what the picture is for.
  const names = voidNames(layout, drawing)
  return {
    width: layout.width,
    height: layout.height,
    scale: layout.scale,
    ratio: layout.ratio,
    origin: layout.origin,
    shapes: [...under, ...inside, ...over, ...onTop, ...names.shapes],
    title,
    key: [...key, ...voidKey(drawing)],
    notes: [...notes, ...names.notes],
  }
}

export function sizeTitle(drawing: Drawing): string {
  const box = bounds(drawing.outline as unknown as Ring)
  const holes = drawing.openings?.length ?? 0
  const openings = holes === 0 ? '' : holes === 1 ? ', one opening' : `, ${holes} openings`
  const inside = [
    counted(drawing.voids?.length ?? 0, 'void former'),
    counted(drawing.ducts?.length ?? 0, 'duct'),
  ].join('')
  return `Panel ${drawing.mark}, ${Math.round(box.right - box.left)} by ${Math.round(box.top - box.bottom)} mm${openings}${inside}`
}

function counted(count: number, what: string): string {
  return count === 0 ? '' : `, ${count === 1 ? 'one' : count} ${what}${count === 1 ? '' : 's'}`
}

/** Outline less openings. A drawing that is still being typed and has no concrete left is shown by its outline. */
export function concreteOf(drawing: Drawing): Region {
  const outline = counterClockwise(drawing.outline as unknown as Ring)
  const region = subtract(
    outline,
    (drawing.openings ?? []).map((opening) => opening.outline as unknown as Ring),
  )
  return region.length > 0 ? region : [{ outline, holes: [] }]
}

/** Where corners of outline and openings, and places beside them, lie along both sides, then the whole length. */
export function shapeChains(drawing: Drawing, more: readonly Point[] = []): Chains {
  const box = bounds(drawing.outline as unknown as Ring)
  const corners = [
    ...(drawing.outline as unknown as Ring),
    ...(drawing.openings ?? []).flatMap((hole) => measuredCorners(hole.outline as unknown as Ring)),
    ...more,
  ].filter(([x, y]) => x >= box.left && x <= box.right && y >= box.bottom && y <= box.top)
  return {
    bottom: chainsOf(
      corners.map(([x]) => x),
      box.left,
      box.right,
    ),
    left: chainsOf(
      corners.map(([, y]) => y),
      box.bottom,
      box.top,
    ),
  }
}

/** An opening of more corners than this is round or free: it is measured by its extent. */
const MOST_OPENING_CORNERS = 8

function measuredCorners(ring: Ring): Ring {
  if (ring.length <= MOST_OPENING_CORNERS) return ring
  const box = bounds(ring)
  return [
    [box.left, box.bottom],
    [box.right, box.top],
  ]
}

/** The chain of places between two ends, and outside it the whole; the whole alone where there is nothing between. */
export function chainsOf(places: readonly number[], from: number, to: number): number[][] {
  const whole = [from, to]
  const chain = distinct([from, ...places, to]).filter((place) => place >= from - 1e-6 && place <= to + 1e-6)
  return chain.length <= 2 || chain.length > MOST_PLACES ? [whole] : [chain, whole]
}

/** Places nearer to each other than half a millimetre are one. */
export function distinct(places: readonly number[]): number[] {
  const sorted = [...places].sort((a, b) => a - b)
  return sorted.filter((place, index) => index === 0 || place - (sorted[index - 1] ?? 0) >= 0.5)
}

/** An opening is crossed: diagonals where it has four corners, else a pattern of crosses. */
function openingShapes(ring: Ring, outline: Ring, layout: Layout): Shape[] {
  return ringsOf(intersect([ring], [outline])).flatMap((part): Shape[] => {
    const corners = part.map(layout.at)
    const [a, b, c, d] = corners
    const edge: Shape = { kind: 'polygon', role: 'opening', rings: [corners] }
    if (corners.length !== 4 || !a || !b || !c || !d) return [{ ...edge, pattern: 'cross' }]
    return [edge, cross(a, c), cross(b, d)]
  })
}

function cross(from: Point, to: Point): Shape {
  return { kind: 'line', role: 'opening', points: [from, to] }
}
