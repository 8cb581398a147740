import {
  Clipper,
  ClipType,
  EndType,
  FillRule,
  JoinType,
  type Path64,
  type Paths64,
  type PolyPath64,
  PolyTree64,
} from 'clipper2-ts'
import { distance, type Point, type Ring } from './point.ts'
import { area, distanceToRing, edges, placeInRing, ringsMeet, signedArea } from './polygon.ts'

/** One connected piece of concrete seen from above: outline counter-clockwise, holes clockwise. */
export interface Piece {
  readonly outline: Ring
  readonly holes: readonly Ring[]
}

/**
 * A flat region: pieces that do not touch. Clipping works on whole micrometres, exact there; coordinates come back in mm.
 */
export type Region = readonly Piece[]

const PER_MM = 1000

/**
 * `outline` less every opening. Openings may overlap each other and the outline. Where every opening lies clear inside and
 * clear of the others nothing is clipped: the corners stay exactly as drawn.
 */
export function subtract(outline: Ring, openings: readonly Ring[]): Region {
  if (clearInside(outline, openings)) {
    return [{ outline: turned(outline, true), holes: openings.map((opening) => turned(opening, false)) }]
  }
  return withoutSlivers(clip(ClipType.Difference, [outline], openings))
}

function clearInside(outline: Ring, openings: readonly Ring[]): boolean {
  return openings.every((opening, index) => {
    const corner = opening[0]
    if (corner === undefined || placeInRing(corner, outline) !== 'inside' || ringsMeet(opening, outline)) {
      return false
    }
    return openings.slice(index + 1).every((other) => {
      const its = other[0]
      if (its === undefined) return false
      // Rings that do not meet are apart or one inside the other.
      return (
        placeInRing(its, opening) === 'outside' &&
        placeInRing(corner, other) === 'outside' &&
        !ringsMeet(opening, other)
      )
    })
  })
}

/** Mean width below which a ring is the rounding of clipping along a skew edge and not concrete or opening, mm. */
const SLIVER = 0.01

function withoutSlivers(region: Region): Region {
  return region
    .filter(({ outline }) => !isSliver(outline))
    .map(({ outline, holes }) => ({ outline, holes: holes.filter((hole) => !isSliver(hole)) }))
}

function isSliver(ring: Ring): boolean {
  const around = edges(ring).reduce((sum, [a, b]) => sum + distance(a, b), 0)
  return area(ring) < (SLIVER * around) / 2
}

/** What two sets of rings share. */
export function intersect(subject: readonly Ring[], other: readonly Ring[]): Region {
  return clip(ClipType.Intersection, subject, other)
}

/** All the rings together. */
export function unite(rings: readonly Ring[]): Region {
  return clip(ClipType.Union, rings, [])
}

/** Two regions with their holes: what both cover, what either covers, or the first less the second. */
export function clipRegions(how: 'both' | 'either' | 'less', one: Region, other: Region): Region {
  const type = { both: ClipType.Intersection, either: ClipType.Union, less: ClipType.Difference }[how]
  const tree = new PolyTree64()
  // Outlines and holes keep their directions, so that NonZero leaves the holes open.
  Clipper.booleanOpWithPolyTree(
    type,
    ringsOf(one).map(toGrid),
    ringsOf(other).map(toGrid),
    tree,
    FillRule.NonZero,
  )
  return pieces(tree)
}

/** The region grown by `by` mm, or shrunk where negative; corners mitred to twice the distance. */
export function offset(region: Region, by: number): Region {
  const grown = Clipper.inflatePaths(
    ringsOf(region).map(toGrid),
    by * PER_MM,
    JoinType.Miter,
    EndType.Polygon,
    2,
  )
  return unitePaths(grown)
}

/** Every ring of a region, outlines and holes. */
export function ringsOf(region: Region): Ring[] {
  return region.flatMap((piece) => [piece.outline, ...piece.holes])
}

/** mm² */
export function regionArea(region: Region): number {
  return region.reduce(
    (sum, piece) => sum + area(piece.outline) - piece.holes.reduce((holes, hole) => holes + area(hole), 0),
    0,
  )
}

/** Whether a point lies in the region, its edges included. */
export function covers(region: Region, point: Point): boolean {
  return region.some(
    (piece) =>
      placeInRing(point, piece.outline) !== 'outside' &&
      piece.holes.every((hole) => placeInRing(point, hole) !== 'inside'),
  )
}

/** Nearest distance from a point to any edge of the region, mm. */
export function distanceToEdge(region: Region, point: Point): number {
  return ringsOf(region).reduce(
    (least, ring) => Math.min(least, distanceToRing(point, ring)),
    Number.POSITIVE_INFINITY,
  )
}

function clip(type: ClipType, subject: readonly Ring[], other: readonly Ring[]): Region {
  const tree = new PolyTree64()
  // Same direction for all rings, so that NonZero means the union of each side.
  const clipPaths = other.length > 0 ? other.map(alignedGrid) : null
  Clipper.booleanOpWithPolyTree(type, subject.map(alignedGrid), clipPaths, tree, FillRule.NonZero)
  return pieces(tree)
}

function unitePaths(paths: Paths64): Region {
  const tree = new PolyTree64()
  Clipper.booleanOpWithPolyTree(ClipType.Union, paths, null, tree, FillRule.NonZero)
  return pieces(tree)
}

function pieces(tree: PolyTree64): Region {
  const found: Piece[] = []
  const walk = (node: PolyPath64): void => {
    for (let i = 0; i < node.count; i += 1) {
      const child = node.child(i)
      if (!child.isHole && child.poly) {
        const holes: Ring[] = []
        for (let j = 0; j < child.count; j += 1) {
          const hole = child.child(j).poly
          if (hole) holes.push(turned(toMm(hole), false))
        }
        found.push({ outline: turned(toMm(child.poly), true), holes })
      }
      walk(child)
    }
  }
  walk(tree)
  return found
}

function turned(ring: Ring, counterClockwise: boolean): Ring {
  return signedArea(ring) > 0 === counterClockwise ? ring : [...ring].reverse()
}

function alignedGrid(ring: Ring): Path64 {
  return toGrid(turned(ring, true))
}

function toGrid(ring: Ring): Path64 {
  return ring.map(([x, y]) => ({ x: Math.round(x * PER_MM), y: Math.round(y * PER_MM) }))
}

function toMm(path: Path64): Ring {
  return path.map((point): Point => [point.x / PER_MM, point.y / PER_MM])
}
