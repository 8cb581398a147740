import { centroid, type Drawing, type Point } from '@castwright/engine/panel'
import type { Plan } from '@castwright/engine/plan'
import { lengthText } from './chain.ts'
import { placesAround, setText, take } from './labels.ts'
import type { Layout } from './layout.ts'
import { besideShapes, markShapes } from './marks.ts'
import { basePicture, finishPicture, sizeTitle } from './panel-picture.ts'
import type { Frame, Picture, Shape } from './picture.ts'
import { textWidth } from './text-width.ts'

type PlacingZone = NonNullable<Plan['pour']['compaction']>['zones'][number]

export interface PlacePictureInput {
  readonly drawing: Drawing
  readonly pour: Plan['pour']
  readonly frame: Frame
}

/** Insertions nearer to each other than this, units, are shown by their way alone. */
const LEAST_DOTS = 6

/** At most so many insertions carry their number: the way between shows the order. */
const MOST_NUMBERS = 8

/** Zones in the order they are filled, insertions in the order they are made, and where the chute stands. */
export function placePicture({ drawing, pour, frame }: PlacePictureInput): Picture {
  const base = basePicture({ drawing, frame, halo: frame.text * 1.4 })
  const { layout } = base
  const pattern = pour.compaction
  const zones = pattern?.zones ?? []
  const insertions = pattern?.insertions ?? []
  const reduced = pattern?.reduced ?? []
  const held = new Map(
    zones.flatMap(({ shares }) =>
      shares.flatMap((own, share) => own.map((index) => [index, share + 1] as const)),
    ),
  )
  const spacing = (pattern?.radius ?? 0) * layout.scale
  const chute = chuteShapes(layout, pour.chute)
  const marks = markShapes(layout, 'zone-mark', zones.length > 1 ? zones.map(zoneMark) : [])
  return finishPicture({
    base,
    inside: [
      ...zones.flatMap((zone) => zoneShapes(layout, zone)),
      ...reduced.flatMap(({ outlines }) => closeShapes(layout, outlines)),
      ...(insertions.length > 1
        ? [{ kind: 'line', role: 'path', points: insertions.map(layout.at) } as const]
        : []),
      ...(spacing < LEAST_DOTS
        ? []
        : insertions.map((point, index) =>
            insertionShape(
              layout.at(point),
              Math.min(frame.text * 0.17, spacing * 0.2),
              held.get(index) ?? 1,
            ),
          )),
    ],
    onTop: [...chute.shapes, ...marks.shapes, ...numberShapes(layout, insertions, spacing)],
    title: `${sizeTitle(drawing)}: ${zones.length} zones and ${insertions.length} insertions in order.`,
    key:
      pattern === null
        ? []
        : [
            {
              role: 'insertion',
              text: `${insertions.length} insertions in order, each reaches ${lengthText(pattern.radius)} mm`,
            },
            ...(pour.heads.length > 1 ? [{ role: 'insertion', text: headsText(pour.heads) } as const] : []),
            ...(reduced.length > 0
              ? [
                  {
                    role: 'zone',
                    text: `hatched: close steel, each reaches ${reachText(reduced)} mm`,
                  } as const,
                ]
              : []),
            ...(zones.length > 1
              ? [{ role: 'zone', text: 'zones in the order they are filled' } as const]
              : []),
          ],
    notes: [...chute.notes, ...marks.notes],
  })
}

function zoneMark(zone: PlacingZone): { at: Point; letter: string } {
  const outline = zone.outlines[0]
  return { at: (outline ? centroid(outline) : null) ?? outline?.[0] ?? [0, 0], letter: String(zone.order) }
}

function zoneShapes(layout: Layout, zone: PlacingZone): Shape[] {
  return zone.outlines.map((ring) => ({ kind: 'polygon', role: 'zone', rings: [ring.map(layout.at)] }))
}

function closeShapes(layout: Layout, outlines: readonly (readonly Point[])[]): Shape[] {
  return [
    { kind: 'polygon', role: 'zone', rings: outlines.map((ring) => ring.map(layout.at)), pattern: 'hatch' },
  ]
}

/** Shapes of vibrators 1, 2, 3 …, then around again: read without colour. */
const HEAD_SHAPES = [
  { word: 'discs', corners: [] },
  { word: 'diamonds', corners: [0, 90, 180, 270] },
  { word: 'squares', corners: [45, 135, 225, 315] },
  { word: 'triangles', corners: [30, 150, 270] },
] as const

function headShape(vibrator: number): (typeof HEAD_SHAPES)[number] {
  return HEAD_SHAPES[(vibrator - 1) % HEAD_SHAPES.length] ?? HEAD_SHAPES[0]
}

function insertionShape([x, y]: Point, radius: number, vibrator: number): Shape {
  const { corners } = headShape(vibrator)
  if (corners.length === 0) return { kind: 'circle', role: 'insertion', at: [x, y], radius }
  const ring = corners.map((degrees): Point => {
    const turn = (degrees * Math.PI) / 180
    return [x + 1.35 * radius * Math.cos(turn), y + 1.35 * radius * Math.sin(turn)]
  })
  return { kind: 'polygon', role: 'insertion', rings: [ring] }
}

/** `1: V56 discs, 2: V56 diamonds`. */
function headsText(heads: readonly string[]): string {
  return heads.map((mark, index) => `${index + 1}: ${mark} ${headShape(index + 1).word}`).join(', ')
}

/** One reach, or from the least to the most. */
function reachText(reduced: readonly { readonly radius: number }[]): string {
  const radii = reduced.map(({ radius }) => Math.round(radius))
  const [least, most] = [Math.min(...radii), Math.max(...radii)]
  return least === most ? lengthText(least) : `${lengthText(least)} to ${lengthText(most)}`
}

/** Numbers of the first, the last and some round ones between; one that has no room is left out. */
function numberShapes(layout: Layout, insertions: readonly Point[], spacing: number): Shape[] {
  const crowded = spacing < layout.text
  const every = crowded
    ? Number.POSITIVE_INFINITY
    : Math.max(10, Math.ceil(insertions.length / MOST_NUMBERS / 10) * 10)
  return insertions.flatMap((point, index) => {
    const number = index + 1
    if (number !== 1 && number !== insertions.length && number % every !== 0) return []
    return besideShapes(layout, 'label', point, String(number), layout.text * 0.3).shapes
  })
}

/** An arrow from outside to the place of the chute, with its word above or below it. Takes their space. */
function chuteShapes(
  layout: Layout,
  chute: Point,
): { readonly shapes: readonly Shape[]; readonly notes: readonly string[] } {
  const { panel, labels, text: size } = layout
  const tip = layout.at(chute)
  const middle: Point = [(panel.left + panel.right) / 2, (panel.top + panel.bottom) / 2]
  const sideways =
    Math.abs(tip[0] - middle[0]) / (panel.right - panel.left) >=
    Math.abs(tip[1] - middle[1]) / (panel.bottom - panel.top)
  const long = size * 1.8
  const from: Point = sideways
    ? [tip[0] + (tip[0] >= middle[0] ? long : -long), tip[1]]
    : [tip[0], tip[1] + (tip[1] >= middle[1] ? long : -long)]
  take(labels, {
    left: Math.min(tip[0], from[0]) - 4,
    right: Math.max(tip[0], from[0]) + 4,
    top: Math.min(tip[1], from[1]) - 4,
    bottom: Math.max(tip[1], from[1]) + 4,
  })
  const arrow: Shape = { kind: 'line', role: 'outline', points: [from, tip], arrow: true }
  const label = { role: 'label', text: 'chute', size, backed: true } as const
  // Beside the panel the word stands clear of the outline, which would cut it.
  const clear = textWidth(label.text, size) / 2 + 4
  const [x, y]: Point = sideways
    ? [tip[0] + (tip[0] >= middle[0] ? clear : -clear), tip[1]]
    : [(tip[0] + from[0]) / 2, (tip[1] + from[1]) / 2]
  const above: Point[] = [
    [x, y - size],
    [x, y + size],
  ]
  const word = setText(labels, label, [...above, ...placesAround([x, y], size, label)])
  return word === null ? { shapes: [arrow], notes: ['chute'] } : { shapes: [arrow, word], notes: [] }
}
