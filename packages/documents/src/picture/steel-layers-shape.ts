import type { Point } from '@castwright/engine/panel'
import { bentOutline, type ScheduledBar } from '@castwright/engine/steel'
import { boxAround, newLabels, placesAround, setText, take } from './labels.ts'
import { LEAST_SCREEN_TEXT } from './layout.ts'
import type { Frame, Picture, Shape } from './picture.ts'

export interface ShapePictureInput {
  readonly bar: Pick<ScheduledBar, 'mark' | 'shape' | 'diameter' | 'legs' | 'turns' | 'inside'>
  readonly frame: Frame
}

/**
 * One bar as it is bent, in one plane, with the outside dimension beside each leg. A bar whose turns go both ways and that is no Z is
 * drawn turning one way: the legs are right, the sides are those of the drawing.
 */
export function shapePicture({ bar, frame }: ShapePictureInput): Picture {
  const text = frame.paper === undefined ? Math.max(LEAST_SCREEN_TEXT, frame.text) : frame.text
  const { line, middles } = lineOf(bar)
  const xs = line.map(([x]) => x)
  const ys = line.map(([, y]) => y)
  const [left, right, bottom, top] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
  const [padX, padY] = [text * 2.4, text * 1.8]
  const scale = Math.min(
    Math.max(1, frame.width - 2 * padX) / Math.max(1, right - left),
    Math.max(1, frame.height - 2 * padY) / Math.max(1, top - bottom),
  )
  const height = Math.min(frame.height, (top - bottom) * scale + 2 * padY)
  const at = ([x, y]: Point): Point => [
    (frame.width - (right - left) * scale) / 2 + (x - left) * scale,
    padY + (top - y) * scale,
  ]
  const labels = newLabels({ left: 0, top: 0, right: frame.width, bottom: height })
  // No number stands on the bar itself.
  for (let i = 1; i < line.length; i += 1) {
    for (const spot of alongSide(at(line[i - 1] as Point), at(line[i] as Point)))
      take(labels, boxAround(spot, 1.5))
  }
  const notes: string[] = []
  const shapes: Shape[] = [{ kind: 'line', role: 'outline', points: line.map(at) }]
  bar.legs.forEach((leg, i) => {
    const label = { role: 'dimension', text: String(Math.round(leg)), size: text } as const
    const middle = middles[i]
    const set = middle === undefined ? null : setText(labels, label, besides(at(middle), text, label))
    if (set === null) notes.push(label.text)
    else shapes.push(set)
  })
  return {
    width: frame.width,
    height,
    scale,
    ratio: null,
    origin: at([0, 0]),
    shapes,
    title: `Bar ${bar.mark}, ${bar.shape}: ${bar.legs.map((leg) => Math.round(leg)).join(' + ')} mm outside.`,
    key: [],
    notes,
  }
}

function* alongSide([ax, ay]: Point, [bx, by]: Point): Generator<Point> {
  const steps = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / 3))
  for (let k = 0; k <= steps; k += 1) yield [ax + ((bx - ax) * k) / steps, ay + ((by - ay) * k) / steps]
}

/** Over the middle first: most legs lie flat. */
function* besides([x, y]: Point, text: number, label: Parameters<typeof placesAround>[2]): Generator<Point> {
  yield [x, y - text]
  yield [x, y + text]
  yield* placesAround([x, y], text * 0.4, label)
}

/** Centreline with its bends, the longest leg level, and the middle of each leg's straight, mm. */
function lineOf({ shape, diameter, legs, turns, inside }: ShapePictureInput['bar']): {
  readonly line: readonly Point[]
  readonly middles: readonly Point[]
} {
  const senses = turns.map((_, i): 1 | -1 => (shape === 'Z' && i % 2 === 1 ? -1 : 1))
  const outline = bentOutline({ diameter, legs, turns, inside, senses })
  if (!outline.known) {
    const length = legs.reduce((sum, leg) => sum + leg, 0)
    return {
      line: [
        [0, 0],
        [length, 0],
      ],
      middles: [[length / 2, 0]],
    }
  }
  const longest = legs.indexOf(Math.max(...legs))
  const heading = turns
    .slice(0, longest)
    .reduce((sum, turn, i) => sum + ((senses[i] ?? 1) * turn * Math.PI) / 180, 0)
  const [c, s] = [Math.cos(heading), Math.sin(heading)]
  const level = ([x, y]: Point): Point => [x * c + y * s, y * c - x * s]
  return {
    line: outline.value.map(level),
    middles: straightMiddles(outline.value, legs.length, turns, senses).map(level),
  }
}

/** Directions that are one, radians: chords of an arc turn by more. */
const SAME_WAY = 1e-6

/** Middles of the straights: those parts of the line that run the way their leg does. */
function straightMiddles(
  line: readonly Point[],
  legs: number,
  turns: readonly number[],
  senses: readonly (1 | -1)[],
): Point[] {
  const middles: Point[] = []
  let [index, heading] = [1, 0]
  for (let leg = 0; leg < legs; leg += 1) {
    for (; index < line.length; index += 1) {
      const [a, b] = [line[index - 1] as Point, line[index] as Point]
      const off = Math.atan2(b[1] - a[1], b[0] - a[0]) - heading
      if (Math.abs(Math.sin(off)) > SAME_WAY || Math.cos(off) < 0) continue
      middles.push([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2])
      index += 1
      break
    }
    heading += ((senses[leg] ?? 1) * (turns[leg] ?? 0) * Math.PI) / 180
  }
  return middles
}
