import type { Point } from '../../panel/point.ts'
import { type ListedBar, partsOnPath } from '../listed-bars.ts'
import type { Corner } from '../steel-plan.ts'
import { depthsFor, heightAt, type LayContext } from './lay-context.ts'
import { solidsOf } from './space.ts'
import { isWithin } from './within.ts'

/** Where one listed bar lies. */
export interface ListedPlace {
  /** Height of its centreline, mm; null where cover is not known. */
  readonly height: number | null
  /** Side of its path to which every other piece lies where it is lapped: 1 left, −1 right. */
  readonly side: 1 | -1
}

/** The direction of no mat: over all of them. */
const NO_WAY: Point = [Number.NaN, Number.NaN]

/** Listed bars lie over the mats of their layer, each at the first height at which it runs into no other. */
export function listedPlaces(
  placed: readonly ListedBar[],
  context: LayContext,
): ReadonlyMap<string, readonly ListedPlace[]> {
  return new Map(placed.map((bar) => [bar.mark, bar.paths.map((path, i) => placeOf(bar, path, i, context))]))
}

function placeOf(bar: ListedBar, path: readonly Point[], index: number, context: LayContext): ListedPlace {
  const { space, panel, stacked, mats } = context
  const { mark, drawn, inside } = bar
  const { layer, diameter } = drawn
  const face = layer === undefined ? undefined : panel.drawing.cover?.[layer]
  if (layer === undefined || face === undefined) return { height: null, side: 1 }
  const over = mats.reduce((depth, { mat }) => (mat.layer === layer ? depth + mat.diameter : depth), face)
  const room = context.roomFor(diameter)
  const sides = ([1, -1] as const).map((side) => ({ side, parts: partsOnPath(bar, path, side) }))
  // A lapped bar lies to the side where all of it has its cover; both alike where it is not lapped.
  const { side, parts } =
    sides.find((each) => each.parts.every(([a, b]) => isWithin(room, a as Point, b as Point))) ??
    (sides[0] as (typeof sides)[number])
  const solidsAt = (depth: number) => {
    const height = heightAt(panel.drawing.thickness, layer, depth, diameter)
    return parts.flatMap((part, piece) => {
      const centreline = part.map(([x, y]): Corner => [x, y, height])
      return solidsOf({ id: `listed ${mark} ${index} ${piece}`, centreline, diameter, inside })
    })
  }
  const depths = (depthsFor(context, layer, NO_WAY, diameter) ?? []).filter((depth) => depth >= over)
  const depth = depths.find((each) => space.clash(solidsAt(each)) === null) ?? over
  space.add(solidsAt(depth))
  stacked[layer].push(depth + diameter)
  return { height: heightAt(panel.drawing.thickness, layer, depth, diameter), side }
}
