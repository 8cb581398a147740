import type { Point } from '@castwright/engine/panel'
import type { Box, Role, TextShape } from './picture.ts'
import { textHeight, textWidth } from './text-width.ts'

/** Clear space kept around each text, as part of its size. */
const CLEAR = 0.12

/** The space already taken in a picture. A text is set only where it meets nothing; it is never cut. */
export interface Labels {
  readonly bounds: Box
  readonly taken: Box[]
}

export function newLabels(bounds: Box): Labels {
  return { bounds, taken: [] }
}

export interface LabelText {
  readonly role: Role
  readonly text: string
  readonly size: number
  readonly turn?: 0 | -90
  readonly bold?: boolean
  readonly backed?: boolean
}

export function textBox({ text, size, turn = 0 }: LabelText, [x, y]: Point): Box {
  const long = textWidth(text, size) / 2 + size * CLEAR
  const high = textHeight(size) / 2 + size * CLEAR
  const [halfX, halfY] = turn === 0 ? [long, high] : [high, long]
  return { left: x - halfX, right: x + halfX, top: y - halfY, bottom: y + halfY }
}

export function boxesMeet(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom
}

export function isFree(labels: Labels, box: Box): boolean {
  const { bounds } = labels
  return (
    box.left >= bounds.left &&
    box.right <= bounds.right &&
    box.top >= bounds.top &&
    box.bottom <= bounds.bottom &&
    labels.taken.every((other) => !boxesMeet(box, other))
  )
}

/** Takes space for something that is no text: a letter in a circle, a leader. */
export function take(labels: Labels, box: Box): void {
  labels.taken.push(box)
}

export function boxAround([x, y]: Point, radius: number): Box {
  return { left: x - radius, right: x + radius, top: y - radius, bottom: y + radius }
}

/** The text at the first of the places that is free, and the place taken; null where none is. */
export function setText(labels: Labels, label: LabelText, places: Iterable<Point>): TextShape | null {
  for (const at of places) {
    const box = textBox(label, at)
    if (!isFree(labels, box)) continue
    take(labels, box)
    return { kind: 'text', turn: 0, ...label, at, box }
  }
  return null
}

/** Places around a mark of a radius: beside, above, below, then the corners, then the same farther out. */
export function* placesAround([x, y]: Point, radius: number, label: LabelText): Generator<Point> {
  const box = textBox(label, [0, 0])
  const [halfX, halfY] = [box.right, box.bottom]
  for (const away of [radius + 1, radius + label.size, radius + 2 * label.size]) {
    yield [x + away + halfX, y]
    yield [x - away - halfX, y]
    yield [x, y - away - halfY]
    yield [x, y + away + halfY]
    for (const [signX, signY] of [
      [1, -1],
      [1, 1],
      [-1, -1],
      [-1, 1],
    ] as const) {
      yield [x + signX * (away * 0.7 + halfX), y + signY * (away * 0.7 + halfY)]
    }
  }
}
