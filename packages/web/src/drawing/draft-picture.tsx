import { lengthText, panelPicture, setPicture } from '@castwright/documents/picture'
import { panelOf } from '@castwright/engine/panel'
import { type ReactElement, useMemo, useRef } from 'react'
import { massText } from '../look/index.ts'
import { PictureView } from '../panel/picture-view.tsx'
import type { DraftRoom } from './draft-context.ts'
import type { readDraft } from './draft-drawing.ts'
import { pictureDrawing } from './picture-drawing.ts'

/** The picture follows every letter; while the outline does not close it shows the last one that did. */
export function DraftPicture({
  draft,
  whole,
}: {
  readonly draft: DraftRoom['draft']
  readonly whole: ReturnType<typeof readDraft>['drawing']
}): ReactElement {
  const drawn = useMemo(() => pictureDrawing(draft), [draft])
  const last = useRef(drawn)
  if (drawn !== null) last.current = drawn
  const shown = drawn ?? last.current
  const panel = useMemo(() => (whole === null ? null : panelOf(whole)), [whole])
  return (
    <aside className="drawing-picture" aria-label="The drawing so far">
      {shown === null ? (
        <p className="waiting">Type length and width, and the picture stands here.</p>
      ) : (
        <PictureView
          height={360}
          layOut={(frame) =>
            [shown.inserts, shown.voids, shown.ducts].some((list) => (list ?? []).length > 0)
              ? setPicture({ drawing: shown, mould: null, frame })
              : panelPicture({ drawing: shown, frame })
          }
        />
      )}
      <p className="quiet" role="status">
        {drawn === null && shown !== null
          ? 'The outline does not close yet: this is the last one that did.'
          : panel === null
            ? ''
            : `${massText(panel.mass)}, ${panel.volume.toFixed(2)} m³, centre of gravity at ${lengthText(panel.centre[0])}, ${lengthText(panel.centre[1])} mm.`}
      </p>
    </aside>
  )
}
