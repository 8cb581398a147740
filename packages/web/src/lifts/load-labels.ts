import { textHeight, textWidth } from '@castwright/documents/picture'

type Spot = readonly [number, number]

export interface Box {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

export interface LabelWanted {
  readonly text: string
  /** What it belongs to, px. */
  readonly at: Spot
  /** Kept clear around that, px. */
  readonly clear: number
}

export interface PlacedLabel extends LabelWanted {
  /** Middle of the text. */
  readonly middle: Spot
  readonly box: Box
}

export interface PlaceLabelsInput {
  readonly wanted: readonly LabelWanted[]
  readonly size: number
  readonly bounds: Box
  /** What no label may cover. */
  readonly taken: readonly Box[]
}

/** Space around a text, px. */
const PAD = 3

/** Each text beside its point, where it meets no other and nothing that is taken; what finds no room is left out. */
export function placeLabels({ wanted, size, bounds, taken }: PlaceLabelsInput): PlacedLabel[] {
  const used = [...taken]
  return wanted.flatMap((label) => {
    const half: Spot = [textWidth(label.text, size) / 2 + PAD, textHeight(size) / 2 + PAD]
    for (const middle of spots(label, half)) {
      const box = boxAt(middle, half)
      if (!inside(box, bounds) || used.some((other) => meet(box, other))) continue
      used.push(box)
      return [{ ...label, middle, box }]
    }
    return []
  })
}

function spots({ at: [x, y], clear }: LabelWanted, [w, h]: Spot): Spot[] {
  return [clear, clear + 14, clear + 30].flatMap((away): Spot[] => [
    [x + away + w, y],
    [x - away - w, y],
    [x, y + away + h],
    [x, y - away - h],
    [x + away * 0.7 + w, y + away * 0.7 + h],
    [x - away * 0.7 - w, y + away * 0.7 + h],
    [x + away * 0.7 + w, y - away * 0.7 - h],
    [x - away * 0.7 - w, y - away * 0.7 - h],
  ])
}

export function boxAt([x, y]: Spot, [w, h]: Spot): Box {
  return { left: x - w, right: x + w, top: y - h, bottom: y + h }
}

export function meet(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom
}

function inside(box: Box, bounds: Box): boolean {
  return (
    box.left >= bounds.left &&
    box.right <= bounds.right &&
    box.top >= bounds.top &&
    box.bottom <= bounds.bottom
  )
}
