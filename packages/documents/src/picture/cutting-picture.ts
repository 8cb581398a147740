import type { Point } from '@castwright/engine/panel'
import type { CutBar } from '@castwright/engine/steel'
import type { Frame, Picture, PolygonShape, Shape } from './picture.ts'
import { textHeight, textWidth } from './text-width.ts'

export interface CuttingPictureInput {
  readonly bar: CutBar
  /** Lost at each cut, mm. */
  readonly kerf: number
  /** Length that fills the width of the frame, mm: the longest bar of the plan, so that all its pictures have one scale. */
  readonly longest: number
  readonly frame: Frame
}

/** Height of a bar in sizes of its text. */
const HIGH = 2.2

/** How one bar is cut: its pieces in order from the left, with mark and length where they fit, and what is left, hatched where it is scrap. */
export function cuttingPicture({ bar, kerf, longest, frame }: CuttingPictureInput): Picture {
  const scale = frame.width / Math.max(longest, bar.stock)
  const height = HIGH * frame.text
  const shapes: Shape[] = []
  const notes: string[] = []
  let from = 0
  for (const { length, count, mark } of bar.pieces) {
    for (let piece = 0; piece < count; piece += 1) {
      const [left, right] = [from * scale, (from + length) * scale]
      shapes.push(box(left, right, height, 'band-2'))
      const words = [`${mark ?? ''} ${length}`.trim(), mark ?? '', String(length)]
      const text = words.find((each) => each !== '' && textWidth(each, frame.text) + 3 <= right - left)
      if (text === undefined) notes.push(words[0] ?? '')
      else shapes.push(lettering(text, (left + right) / 2, height / 2, frame.text))
      from += length + kerf
    }
  }
  if (bar.offcut > 0) {
    const left = (bar.stock - bar.offcut) * scale
    const right = bar.stock * scale
    const shape = box(left, right, height, 'unused')
    shapes.push(bar.offcutTo === 'scrap' ? { ...shape, pattern: 'hatch' } : shape)
    const text = String(Number(bar.offcut.toFixed(1)))
    if (bar.offcutTo !== 'scrap' && textWidth(text, frame.text) + 3 <= right - left)
      shapes.push(lettering(text, (left + right) / 2, height / 2, frame.text))
  }
  return {
    width: frame.width,
    height,
    scale,
    ratio: null,
    origin: [0, height],
    shapes,
    title: `Bar of ${bar.stock} mm cut in ${bar.pieces.map((each) => `${each.count} × ${each.length}`).join(', ')}; ${Number(bar.offcut.toFixed(1))} mm left`,
    key: [],
    notes: [...new Set(notes)],
  }
}

function box(left: number, right: number, height: number, role: 'band-2' | 'unused'): PolygonShape {
  const ring: Point[] = [
    [left, 0],
    [right, 0],
    [right, height],
    [left, height],
  ]
  return { kind: 'polygon', role, rings: [ring] }
}

function lettering(text: string, x: number, y: number, size: number): Shape {
  const [wide, high] = [textWidth(text, size), textHeight(size)]
  return {
    kind: 'text',
    role: 'label',
    text,
    at: [x, y],
    size,
    turn: 0,
    box: { left: x - wide / 2, right: x + wide / 2, top: y - high / 2, bottom: y + high / 2 },
  }
}
