import { hangingPicture } from '@castwright/documents/picture'
import type { LiftStage } from '@castwright/engine/lift'
import type { Drawing, Point } from '@castwright/engine/panel'
import type { ReactElement } from 'react'
import { Sheet } from '../look/index.ts'
import { PictureView } from '../panel/picture-view.tsx'

export interface RiggingPartProps {
  readonly drawing: Drawing
  readonly centre: Point
  readonly stages: readonly LiftStage[]
}

/** How it hangs, to scale: flat off the mould, and upright where it is turned. */
export function RiggingPart({ drawing, centre, stages }: RiggingPartProps): ReactElement | null {
  const seen = new Set<string>()
  const hung = stages.flatMap(({ id, name, hung: own }) => {
    if (own === undefined || own === null || seen.has(own.hang)) return []
    // Of what is turned, the upright end of the way is shown.
    if (own.hang === 'row' && id !== 'hang' && stages.some((stage) => stage.id === 'hang')) return []
    seen.add(own.hang)
    return [{ name, own }]
  })
  if (hung.length === 0) return null
  return (
    <Sheet title="Rigging" note="To scale: slings with their angles, hook over the centre of gravity.">
      <div className="stack">
        {hung.map(({ name, own }) => (
          <div key={name}>
            <h3>{name}</h3>
            <PictureView
              height={560}
              layOut={(frame) =>
                hangingPicture({
                  drawing,
                  rigged: own.rigged,
                  hang: own.hang,
                  rigging: own.rigging,
                  centre,
                  frame,
                })
              }
            />
          </div>
        ))}
      </div>
    </Sheet>
  )
}
