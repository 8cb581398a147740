import type { ReactElement } from 'react'
import { Button, Sheet } from '../look/index.ts'
import { addOpening } from './acts/add-opening.ts'
import { removeOpening } from './acts/remove-opening.ts'
import { setOpening } from './acts/set-opening.ts'
import { shapeOpening } from './acts/shape-opening.ts'
import { BoxOrCorners } from './box-or-corners.tsx'
import type { DraftOpening } from './draft.ts'
import { useDraft } from './draft-context.ts'
import { TypedField } from './draft-field.tsx'

/** Doors, windows and anything else that is left out of the concrete. One that touches the edge is a notch. */
export function OpeningPart(): ReactElement {
  const { draft, act } = useDraft()
  return (
    <Sheet title="Openings" note="One that touches or crosses the edge is a notch.">
      <div className="stack">
        {draft.openings.map((opening, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: an opening is its place in the list while it is typed
          <OpeningView key={index} opening={opening} index={index} />
        ))}
        <div className="row">
          <Button onClick={() => act(addOpening, { letter: 'D' })}>Add a door</Button>
          <Button onClick={() => act(addOpening, { letter: 'N' })}>Add a window</Button>
        </div>
      </div>
    </Sheet>
  )
}

function OpeningView({
  opening,
  index,
}: {
  readonly opening: DraftOpening
  readonly index: number
}): ReactElement {
  const { act } = useDraft()
  const path = `openings[${index}]`
  return (
    <fieldset className="part">
      <legend>Opening {opening.mark}</legend>
      <div className="fields">
        <TypedField
          label="Mark"
          words
          field={`${path}.mark`}
          value={opening.mark}
          onText={(text) => act(setOpening, { index, field: 'mark', text })}
        />
        <BoxOrCorners
          name={`Opening ${opening.mark}`}
          shape={opening}
          ring={{ of: 'opening', index }}
          path={path}
          onForm={(form) => act(shapeOpening, { index, form })}
          onText={(field, text) => act(setOpening, { index, field, text })}
        />
      </div>
      <Button look="plain" onClick={() => act(removeOpening, { index })}>
        remove opening {opening.mark}
      </Button>
    </fieldset>
  )
}
