import type { Layer } from '../../panel/drawn-steel.ts'
import type { Point } from '../../panel/point.ts'
import type { Corner } from '../steel-plan.ts'
import { depthsFor, heightAt, type LaidBar, type LayContext } from './lay-context.ts'
import { solidsOf } from './space.ts'

/** A straight bar that lies flat. */
export function flatBar(from: Point, to: Point, height: number | null): LaidBar {
  const centreline =
    height === null
      ? null
      : ([
          [...from, height],
          [...to, height],
        ] as readonly Corner[])
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  return { path: [from, to], centreline, legs: [length], turns: [] }
}

/**
 * Heights of bars of one direction, all alike where one depth has room for all; else each at the first depth that has, and where none
 * has over everything. Null without cover. The bars are added to the space.
 */
export function stackFlat({
  bars,
  along,
  diameter,
  layer,
  name,
  context,
}: {
  readonly bars: readonly { readonly from: Point; readonly to: Point }[]
  readonly along: Point
  readonly diameter: number
  readonly layer: Layer
  readonly name: string
  readonly context: LayContext
}): (number | null)[] {
  const { space, panel, stacked } = context
  const depths = depthsFor(context, layer, along, diameter)
  if (depths === null) return bars.map(() => null)
  const solidAt = (i: number, depth: number) => {
    const { from, to } = bars[i] as { from: Point; to: Point }
    const height = heightAt(panel.drawing.thickness, layer, depth, diameter)
    const id = `${name} ${layer} ${from.join()} ${to.join()} ${diameter}`
    return solidsOf({
      id,
      centreline: [
        [...from, height],
        [...to, height],
      ],
      diameter,
    })
  }
  const free = (i: number, depth: number) => space.clash(solidAt(i, depth)) === null
  const common = depths.find((depth) => bars.every((_, i) => free(i, depth)))
  const chosen = bars.map(
    (_, i) => common ?? depths.find((depth) => free(i, depth)) ?? (depths.at(-1) as number),
  )
  for (const [i, depth] of chosen.entries()) space.add(solidAt(i, depth))
  stacked[layer].push(...new Set(chosen.map((depth) => depth + diameter)))
  return chosen.map((depth) => heightAt(panel.drawing.thickness, layer, depth, diameter))
}
