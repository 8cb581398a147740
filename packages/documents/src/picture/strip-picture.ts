import type { Drawing, Point } from '@castwright/engine/panel'
import type { Plan } from '@castwright/engine/plan'
import { lengthText } from './chain.ts'
import { boxAround, take } from './labels.ts'
import { markShapes } from './marks.ts'
import { basePicture, finishPicture, sizeTitle } from './panel-picture.ts'
import type { Frame, Picture, Shape } from './picture.ts'

export interface StripPictureInput {
  readonly drawing: Drawing
  readonly lift: Plan['lift']
  readonly frame: Frame
}

/** Inserts with what each carries, where that is known, and the centre of gravity. */
export function stripPicture({ drawing, lift, frame }: StripPictureInput): Picture {
  const base = basePicture({ drawing, frame, halo: frame.text })
  const { layout } = base
  const centre = layout.at(lift.centre)
  take(layout.labels, boxAround(centre, layout.text * 0.7))
  const marks = markShapes(
    layout,
    'insert',
    lift.inserts.map((insert) => ({
      at: insert.at,
      letter: insert.mark,
      beside:
        insert.load === null ? 'not known' : `${(Math.ceil(insert.load * 10 - 1e-9) / 10).toFixed(1)} kN`,
    })),
  )
  const [x, y] = lift.centre
  return finishPicture({
    base,
    onTop: [...centreShapes(centre, layout.text * 0.55), ...marks.shapes],
    title: `${sizeTitle(drawing)}: ${lift.inserts.length} inserts with their loads, and the centre of gravity.`,
    key: [
      { role: 'centre', text: `centre of gravity, ${lengthText(x)} to the right and ${lengthText(y)} up` },
      ...(lift.inserts.length > 0
        ? [{ role: 'insert', text: 'inserts with the share of own weight, without factors' } as const]
        : []),
    ],
    notes: marks.notes,
  })
}

/** A circle in quarters. */
function centreShapes([x, y]: Point, radius: number): Shape[] {
  const reach = radius * 1.6
  return [
    { kind: 'circle', role: 'centre', at: [x, y], radius },
    {
      kind: 'line',
      role: 'centre',
      points: [
        [x - reach, y],
        [x + reach, y],
      ],
    },
    {
      kind: 'line',
      role: 'centre',
      points: [
        [x, y - reach],
        [x, y + reach],
      ],
    },
  ]
}
