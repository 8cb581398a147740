import type { LiftStage, StageSupport } from '@castwright/engine/lift'
import { bounds, type Drawing, type Ring } from '@castwright/engine/panel'
import type { Chains } from './layout.ts'
import { basePicture, chainsOf, finishPicture, shapeChains, sizeTitle } from './panel-picture.ts'
import type { Frame, Picture } from './picture.ts'
import { supportLines } from './support-shapes.ts'

export interface LyingPictureInput {
  readonly drawing: Drawing
  /** Stored or on the trailer. */
  readonly stage: Pick<LiftStage, 'name' | 'how' | 'supports'>
  readonly frame: Frame
}

/** Where timbers go under a panel, measured from its edges, or the edges that it stands on and leans against, with their loads. */
export function lyingPicture({ drawing, stage, frame }: LyingPictureInput): Picture {
  const base = basePicture({
    drawing,
    frame,
    chains: { ...shapeChains(drawing), ...timberChains(drawing, stage.supports) },
    halo: frame.text,
  })
  const lines = supportLines(base.layout, stage.supports)
  return finishPicture({
    base,
    onTop: lines.shapes,
    title: `${sizeTitle(drawing)}. ${stage.name}: ${stage.how}.`,
    key: [{ role: 'timber', text: `${stage.how}, with loads, the factor of the stage in them` }],
    notes: lines.notes,
  })
}

/** Places of timbers that run up or across the panel, along the top or at the right. */
function timberChains(drawing: Drawing, supports: readonly StageSupport[]): Chains {
  const box = bounds(drawing.outline as unknown as Ring)
  const places = (axis: 0 | 1): number[] =>
    supports.flatMap(({ kind, at: [from, to] }) =>
      kind === 'timber' && to !== undefined && Math.abs(from[axis] - to[axis]) < 1 ? [from[axis]] : [],
    )
  const [across, up] = [places(0), places(1)]
  return {
    ...(across.length > 0 ? { top: chainsOf(across, box.left, box.right).slice(0, 1) } : {}),
    ...(up.length > 0 ? { right: chainsOf(up, box.bottom, box.top).slice(0, 1) } : {}),
  }
}
