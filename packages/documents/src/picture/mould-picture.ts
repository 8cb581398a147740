import { type Drawing, offset, ringsOf } from '@castwright/engine/panel'
import type { Plan } from '@castwright/engine/plan'
import { lengthText } from './chain.ts'
import { basePicture, concreteOf, finishPicture, sizeTitle } from './panel-picture.ts'
import type { Frame, Picture, Shape } from './picture.ts'

export interface MouldPictureInput {
  readonly drawing: Drawing
  readonly mould: Plan['mould']
  readonly frame: Frame
}

/** How wide a side form is drawn, mm: it says where the form stands, not how thick it is. */
const FORM_BAND = 90

/** Side forms around the concrete with their props. */
export function mouldPicture({ drawing, mould, frame }: MouldPictureInput): Picture {
  const base = basePicture({ drawing, frame, halo: frame.text * 0.9 })
  const { layout } = base
  const concrete = concreteOf(drawing)
  const band = Math.max(FORM_BAND, (frame.text * 0.4) / layout.scale)
  const form: Shape = {
    kind: 'polygon',
    role: 'form',
    rings: [...ringsOf(offset(concrete, band)), ...ringsOf(concrete)].map((ring) => ring.map(layout.at)),
    pattern: 'hatch',
  }
  const props = mould.props.map(
    (prop): Shape => ({ kind: 'circle', role: 'prop', at: layout.at(prop), radius: frame.text * 0.25 }),
  )
  return finishPicture({
    base,
    inside: [form],
    onTop: props,
    title: `${sizeTitle(drawing)}: side forms and ${props.length} props.`,
    key: [
      { role: 'form', text: mould.form === null ? 'side form, none chosen' : `side form ${mould.form}` },
      ...(props.length > 0
        ? [
            {
              role: 'prop',
              text: `props, ${props.length}${mould.propSpacing === null ? '' : `, at most ${lengthText(mould.propSpacing)} mm apart`}`,
            } as const,
          ]
        : []),
    ],
  })
}
