import { centroid, type Drawing, lengthOf, type Point, parts, type Ring } from '@castwright/engine/panel'
import { lengthText } from './chain.ts'
import { type LabelText, placesAround, setText, textBox } from './labels.ts'
import type { Layout } from './layout.ts'
import type { MarkShapes } from './marks.ts'
import type { KeyLine, Shape } from './picture.ts'

/** The ground of void formers, painted before what the picture is for. */
export function voidGround(layout: Pick<Layout, 'at'>, { voids = [] }: Drawing): Shape[] {
  return voids.map(
    ({ outline }): Shape => ({
      kind: 'polygon',
      role: 'void',
      rings: [(outline as unknown as Ring).map(layout.at)],
    }),
  )
}

/** Void formers by their outline, ducts by their axis, in sight over bands of tension and zones. */
export function voidLines(layout: Pick<Layout, 'at'>, { voids = [], ducts = [] }: Drawing): Shape[] {
  return [
    ...voids.map(({ outline }): Shape => {
      const ring = (outline as unknown as Ring).map(layout.at)
      return { kind: 'line', role: 'void', points: [...ring, ring[0] as Point] }
    }),
    ...ducts.map(
      ({ line }): Shape => ({
        kind: 'line',
        role: 'duct',
        points: (line as unknown as readonly Point[]).map(layout.at),
      }),
    ),
  ]
}

/** Marks of void formers in them, and of ducts with their diameter beside them, where there is room. */
export function voidNames(layout: Layout, drawing: Drawing): MarkShapes {
  const { labels, text: size, at } = layout
  const shapes: Shape[] = []
  const notes: string[] = []
  const name = (label: LabelText, places: Iterable<Point>): void => {
    const set = setText(labels, label, places)
    if (set === null) notes.push(label.text)
    else shapes.push(set)
  }
  for (const { mark, outline } of drawing.voids ?? []) {
    const label = { role: 'void', text: mark, size, backed: true } as const
    const inside = insideOf(outline as unknown as Ring).map(at)
    name(label, [...inside, ...inside.flatMap((place) => [...placesAround(place, size * 0.4, label)])])
  }
  for (const { mark, line, diameter } of drawing.ducts ?? []) {
    const label = { role: 'duct', text: `${mark}, ${lengthText(diameter)} mm`, size, backed: true } as const
    name(label, besideLine((line as unknown as readonly Point[]).map(at), label))
  }
  return { shapes, notes }
}

/** The middle, then half-way to each corner. */
function insideOf(ring: Ring): Point[] {
  const middle = centroid(ring) ?? (ring[0] as Point)
  return [middle, ...ring.map(([x, y]): Point => [(x + middle[0]) / 2, (y + middle[1]) / 2])]
}

/** Clear space between a line and its name, units. */
const OFF_LINE = 4

/** Beside the longest straights of a line in the picture, on either side, at parts of their length. */
function* besideLine(line: readonly Point[], label: LabelText): Generator<Point> {
  const box = textBox(label, [0, 0])
  for (const [a, b] of parts(line)
    .sort((one, other) => lengthOf(other) - lengthOf(one))
    .slice(0, 3)) {
    const long = lengthOf([a, b]) || 1
    const [nx, ny] = [(b[1] - a[1]) / long, (a[0] - b[0]) / long]
    const away = Math.abs(nx) * box.right + Math.abs(ny) * box.bottom + OFF_LINE
    for (const share of [0.5, 0.3, 0.7, 0.15, 0.85]) {
      for (const side of [1, -1]) {
        yield [
          a[0] + share * (b[0] - a[0]) + side * away * nx,
          a[1] + share * (b[1] - a[1]) + side * away * ny,
        ]
      }
    }
  }
}

/** A key names each, up to so many. */
const NAMED = 3

/** What the dashed outlines and dash-dot lines are. */
export function voidKey({ voids = [], ducts = [] }: Drawing): KeyLine[] {
  return [
    ...(voids.length === 0
      ? []
      : [
          {
            role: 'void',
            text:
              voids.length > NAMED
                ? `void formers, ${voids.length}`
                : voids
                    .map(({ mark, depth, above }) =>
                      above > 0
                        ? `void former ${mark}, ${lengthText(depth)} mm thick, ${lengthText(above)} mm above the mould face`
                        : `void former ${mark}, ${lengthText(depth)} mm thick, on the bed`,
                    )
                    .join('; '),
          } as const,
        ]),
    ...(ducts.length === 0
      ? []
      : [
          {
            role: 'duct',
            text:
              ducts.length > NAMED
                ? `ducts, ${ducts.length}, outside diameter beside`
                : ducts
                    .map(
                      ({ mark, diameter, height }) =>
                        `duct ${mark}, ${lengthText(diameter)} mm, its axis ${lengthText(height)} mm above the mould face`,
                    )
                    .join('; '),
          } as const,
        ]),
  ]
}
