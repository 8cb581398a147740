import type { Point } from '@castwright/engine/panel'
import type { PlacedLap } from '@castwright/engine/steel'
import { lengthText } from './chain.ts'
import { dimensionShapes } from './dimensions.ts'
import { setText } from './labels.ts'
import { type Layout, layOut } from './layout.ts'
import type { Frame, Picture, PolygonShape, Shape } from './picture.ts'

export interface LapPictureInput {
  readonly lap: PlacedLap
  readonly frame: Frame
}

/** Bar drawn beyond each end of the lap, parts of the lap. */
const BEYOND = 0.35

/** One lap to scale: two bars side by side in contact, its length measured, tied at both ends. */
export function lapPicture({ lap, frame }: LapPictureInput): Picture {
  const { length, diameter } = lap
  const more = length * BEYOND
  const high = 2 * diameter
  const outline: Point[] = [
    [-more, 0],
    [length + more, 0],
    [length + more, high],
    [-more, high],
  ]
  const layout = layOut({ outline, frame, chains: { bottom: [[0, length]] }, above: frame.text * 1.6 })
  const marks = lap.bars.map((id) => id.split('#')[0] ?? id)
  const words = { role: 'label', size: layout.text } as const
  const y = layout.panel.top - layout.text
  const texts = [
    setText(markRoom(layout), { ...words, text: marks[0] ?? '' }, [[layout.at([0, 0])[0], y]]),
    setText(markRoom(layout), { ...words, text: marks[1] ?? '' }, [[layout.at([length, 0])[0], y]]),
  ]
  return {
    width: layout.width,
    height: layout.height,
    scale: layout.scale,
    ratio: layout.ratio,
    origin: layout.origin,
    shapes: [
      bar(layout, [-more, length], 0, diameter, 'right'),
      bar(layout, [0, length + more], diameter, diameter, 'left'),
      ...[0, length].map((x) => tie(layout, Math.min(length - diameter, Math.max(diameter, x)), high)),
      ...dimensionShapes(layout),
      ...texts.filter((text) => text !== null),
    ],
    title: `Lap ${lap.id}: ${lengthText(length)} mm, ${lengthText(diameter)} mm bars ${marks.join(' and ')}, side by side and tied at both ends.`,
    key: [{ role: 'now', text: 'tie' }],
    notes: [],
  }
}

/** Letters over the bars: the space that `above` keeps. */
function markRoom(layout: Layout): Layout['labels'] {
  return { bounds: layout.labels.bounds, taken: layout.labels.taken.slice(1) }
}

/** A bar from one place to the other; the side that runs on is broken off. */
function bar(
  layout: Layout,
  [from, to]: Point,
  low: number,
  diameter: number,
  end: 'left' | 'right',
): PolygonShape {
  const slant = diameter * 0.6
  const high = low + diameter
  const ring: Point[] =
    end === 'right'
      ? [
          [from, low],
          [to, low],
          [to, high],
          [from + slant, high],
        ]
      : [
          [from, low],
          [to - slant, low],
          [to, high],
          [from, high],
        ]
  return { kind: 'polygon', role: 'timber', rings: [ring.map(layout.at)] }
}

function tie(layout: Layout, x: number, high: number): Shape {
  const over = high * 0.12
  return { kind: 'line', role: 'now', points: [layout.at([x, -over]), layout.at([x, high + over])] }
}
