import type { Drawing, Point } from '@castwright/engine/panel'
import type { Plan } from '@castwright/engine/plan'
import { lengthText } from './chain.ts'
import { dimensionShapes } from './dimensions.ts'
import { setText } from './labels.ts'
import { layOut } from './layout.ts'
import type { Frame, Picture, Shape } from './picture.ts'

export interface VoidSectionInput {
  readonly drawing: Drawing
  readonly held: Plan['mould']['voids'][number]
  readonly frame: Frame
}

/** Concrete shown on each side of the former, mm: it goes on. */
const BESIDE = 250

/** Section across a void former along its longer way, to scale: heights from the mould face, which is below, the first layer, and its straps on edge. */
export function voidSection({ drawing, held, frame }: VoidSectionInput): Picture {
  const { thickness } = drawing
  const { mark, above, depth, length, floats, firstLayer, spacing, straps } = held
  const [from, to] = [-BESIDE, length + BESIDE]
  const layout = layOut({
    outline: [
      [from, 0],
      [to, 0],
      [to, thickness],
      [from, thickness],
    ],
    frame,
    chains: {
      left: [[0, thickness]],
      right: [[0, ...(above > 0 ? [above] : []), above + depth, thickness]],
      bottom: [[0, length]],
    },
  })
  const { at, labels, text: size } = layout
  const dimensions = dimensionShapes(layout)
  const tooth = thickness * 0.06
  const broken = (x: number, up: boolean): Point[] => {
    const points: Point[] = [
      [x, 0],
      [x, thickness * 0.42],
      [x - tooth, thickness * 0.46],
      [x + tooth, thickness * 0.54],
      [x, thickness * 0.58],
      [x, thickness],
    ]
    return up ? points : points.reverse()
  }
  const ring = [...broken(to, true), ...broken(from, false)].map(at)
  const former: Point[] = [
    [0, above],
    [length, above],
    [length, above + depth],
    [0, above + depth],
  ]
  const places = Array.from({ length: straps ?? 0 }, (_, i) => (i + 0.5) * (spacing ?? 0))
  const shapes: Shape[] = [
    { kind: 'polygon', role: 'concrete', rings: [ring] },
    { kind: 'polygon', role: 'void', rings: [former.map(at)] },
    ...(floats
      ? [
          {
            kind: 'line',
            role: 'measure',
            points: [
              [from, firstLayer],
              [to, firstLayer],
            ].map((point) => at(point as unknown as Point)),
          } as const,
        ]
      : []),
    ...places.map(
      (x): Shape => ({
        kind: 'line',
        role: 'strap',
        points: [
          [x, 0],
          [x, above + depth],
        ].map((point) => at(point as unknown as Point)),
      }),
    ),
    { kind: 'polygon', role: 'outline', rings: [ring] },
  ]
  const label = { role: 'void', text: mark, size, backed: true } as const
  const name = setText(
    labels,
    label,
    [0.5, 0.35, 0.65, 0.2, 0.8].map((share) => at([share * length, above + depth / 2])),
  )
  const lift = floats
    ? `${lengthText(above)} mm of concrete under it, ${lengthText(thickness - above - depth)} mm over it`
    : `on the bed, ${lengthText(thickness - depth)} mm of concrete over it`
  return {
    width: layout.width,
    height: layout.height,
    scale: layout.scale,
    ratio: layout.ratio,
    origin: layout.origin,
    shapes: [...shapes, ...dimensions, ...(name === null ? [] : [name])],
    title: `Void former ${mark} in section, ${lengthText(depth)} mm thick in ${lengthText(thickness)} mm, mould face below: ${lift}.`,
    key: [
      { role: 'void', text: `void former ${mark}, ${lengthText(depth)} mm thick` },
      ...(floats
        ? [{ role: 'measure', text: `top of the first layer, ${lengthText(firstLayer)} mm` } as const]
        : []),
      ...(places.length > 0
        ? [{ role: 'strap', text: `${places.length} straps or tie-downs` } as const]
        : []),
    ],
    notes: name === null ? [mark] : [],
  }
}
