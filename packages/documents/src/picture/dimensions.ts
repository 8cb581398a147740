import type { Point } from '@castwright/engine/panel'
import type { ChainLabel } from './chain.ts'
import { setText, take, textBox } from './labels.ts'
import type { LaidChain, Layout } from './layout.ts'
import type { Shape } from './picture.ts'

/** Clear space between an edge and the extension line that starts at it, units. */
const OFF_EDGE = 3

/** Extension lines, ticks, lines and numbers of every chain of a layout. Takes their space. */
export function dimensionShapes(layout: Layout): Shape[] {
  return [...layout.chains.flatMap((chain) => chainShapes(layout, chain)), ...axisShapes(layout)]
}

/** Which way x and y run, in the corner outside the panel where no dimension lies; left out where the corner is small. */
function axisShapes({ panel, height, below, text, labels }: Layout): Shape[] {
  const long = text * 1.3
  const corner: Point = [panel.left - long - text * 1.2, height - below - text * 0.8]
  const label = { role: 'dimension', size: text } as const
  const room = corner[0] - text * 0.3 >= 0 && corner[1] - long - text * 1.2 > panel.bottom
  if (!room) return []
  const x = setText(labels, { ...label, text: 'x' }, [[corner[0] + long + text * 0.5, corner[1]]])
  const y = setText(labels, { ...label, text: 'y' }, [[corner[0], corner[1] - long - text * 0.7]])
  if (x === null || y === null) return []
  const arrow = (to: Point): Shape => ({ kind: 'line', role: 'dimension', points: [corner, to], arrow: true })
  return [arrow([corner[0] + long, corner[1]]), arrow([corner[0], corner[1] - long]), x, y]
}

function chainShapes(layout: Layout, chain: LaidChain): Shape[] {
  const size = layout.text
  const place = placer(layout, chain)
  const [first, last] = [chain.ticks[0], chain.ticks.at(-1)]
  if (first === undefined || last === undefined) return []
  const shapes: Shape[] = chain.ticks.flatMap((tick) => [
    line(place(tick, OFF_EDGE - chain.distance), place(tick, size * 0.3)),
    line(
      place(tick - size * 0.25, chainSlope(chain) * -size * 0.25),
      place(tick + size * 0.25, chainSlope(chain) * size * 0.25),
    ),
  ])
  for (const label of chain.labels) shapes.push(...labelShapes(layout, chain, label))
  return shapes
}

function labelShapes(layout: Layout, chain: LaidChain, label: ChainLabel): Shape[] {
  const size = layout.text
  const place = placer(layout, chain)
  const upright = chain.side === 'bottom' || chain.side === 'top'
  const text = { role: 'dimension', text: label.text, size, turn: upright ? 0 : -90 } as const
  if (label.centre === null) return [line(place(label.from, 0), place(label.to, 0))]
  const at = place(label.centre, label.row * size * 1.6)
  const set = setText(layout.labels, text, [at])
  if (set === null) return [line(place(label.from, 0), place(label.to, 0))]
  if (label.row === 0) {
    const box = textBox(text, at)
    const half = (upright ? box.right - box.left : box.bottom - box.top) / 2
    return [
      line(place(label.from, 0), place(label.centre - half, 0)),
      line(place(label.centre + half, 0), place(label.to, 0)),
      set,
    ]
  }
  const middle = (label.from + label.to) / 2
  const [start, end] = [place(middle, 0), place(middle, label.row * size * 1.6 - size * 0.65)]
  take(layout.labels, {
    left: Math.min(start[0], end[0]) - 1,
    right: Math.max(start[0], end[0]) + 1,
    top: Math.min(start[1], end[1]) - 1,
    bottom: Math.max(start[1], end[1]) + 1,
  })
  return [line(place(label.from, 0), place(label.to, 0)), line(start, end), set]
}

/** A place by its distance along the chain and outward from the chain's line. */
function placer({ panel }: Layout, { side, distance }: LaidChain): (along: number, outward: number) => Point {
  switch (side) {
    case 'bottom':
      return (along, outward) => [along, panel.bottom + distance + outward]
    case 'top':
      return (along, outward) => [along, panel.top - distance - outward]
    case 'left':
      return (along, outward) => [panel.left - distance - outward, along]
    case 'right':
      return (along, outward) => [panel.right + distance + outward, along]
  }
}

/** Ticks all slope the same way on the page, whichever side they stand on. */
function chainSlope({ side }: LaidChain): 1 | -1 {
  return side === 'bottom' || side === 'right' ? -1 : 1
}

function line(from: Point, to: Point): Shape {
  return { kind: 'line', role: 'dimension', points: [from, to] }
}
