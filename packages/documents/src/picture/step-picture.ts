import type { Drawing, Point } from '@castwright/engine/panel'
import type { Plan } from '@castwright/engine/plan'
import type { StepId } from '@castwright/engine/steps'
import { asBuiltPicture } from './as-built-picture.ts'
import { lyingPicture } from './lying-picture.ts'
import { mouldPicture } from './mould-picture.ts'
import { panelPicture } from './panel-picture.ts'
import { type Frame, type Picture, picturePoint } from './picture.ts'
import { placePicture } from './place-picture.ts'
import { setPicture } from './set-picture.ts'
import { steelPicture } from './steel-picture.ts'
import { stripPicture } from './strip-picture.ts'

export interface StepPictureInput {
  readonly step: StepId
  readonly drawing: Drawing
  /** Null while it is computed: the panel alone. */
  readonly plan: Plan | null
  readonly frame: Frame
}

/** The picture that a step needs. */
export function stepPicture({ step, drawing, plan, frame }: StepPictureInput): Picture {
  if (plan === null) return panelPicture({ drawing, frame })
  switch (step) {
    case 'steel-in':
    case 'cut-bend':
    case 'cage':
      return steelPicture({ drawing, steel: plan.steel, frame })
    case 'mould':
      return mouldPicture({ drawing, mould: plan.mould, frame })
    case 'set':
      return setPicture({ drawing, mould: plan.mould, frame })
    case 'deliver':
    case 'place':
      return placePicture({ drawing, pour: plan.pour, frame })
    case 'strip':
    case 'load':
      return stripPicture({ drawing, lift: plan.lift, frame })
    case 'as-built':
      return asBuiltPicture({ drawing, frame })
    case 'store': {
      const stage = plan.lift.stages.find(({ id }) => id === 'store')
      return stage === undefined || stage.supports.length === 0
        ? panelPicture({ drawing, frame })
        : lyingPicture({ drawing, stage, frame })
    }
    case 'finish':
    case 'cure':
    case 'hand-over':
      return panelPicture({ drawing, frame })
  }
}

export interface DefectMark {
  readonly at: Point
  readonly number: number
}

/** The picture with defects shown where they were found. Their numbers lie over everything and hide what is under them. */
export function withDefects(picture: Picture, defects: readonly DefectMark[]): Picture {
  if (defects.length === 0) return picture
  const size = 13
  return {
    ...picture,
    shapes: [
      ...picture.shapes,
      ...defects.map(
        (defect) =>
          ({
            kind: 'circle',
            role: 'defect',
            at: picturePoint(picture, defect.at),
            radius: size * 0.8,
            letter: String(defect.number),
            size,
          }) as const,
      ),
    ],
    key: [...picture.key, { role: 'defect', text: 'defects' }],
  }
}
