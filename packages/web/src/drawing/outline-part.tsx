import type { ReactElement } from 'react'
import { Button, Sheet } from '../look/index.ts'
import { shapeOutline } from './acts/shape-outline.ts'
import { CornerTable } from './corner-table.tsx'
import { useDraft } from './draft-context.ts'
import { DraftField } from './draft-field.tsx'

/** Outline by length and width, or by corners: gables, notches, ells. */
export function OutlinePart(): ReactElement {
  const { draft, act } = useDraft()
  return (
    <Sheet
      title="Outline"
      note="x to the right, y up, seen from above into the mould; origin at a panel corner."
    >
      <div className="stack">
        <FormChoice
          about="outline"
          form={draft.form}
          words={['Rectangle', 'Corners']}
          onForm={(form) => act(shapeOutline, { form })}
        />
        {draft.form === 'box' ? (
          <div className="fields">
            <DraftField of="length" field="outline.length" label="Length" unit="mm" />
            <DraftField of="width" field="outline.width" label="Width" unit="mm" />
          </div>
        ) : (
          <CornerTable name="Outline" ring={{ of: 'outline' }} corners={draft.corners} path="outline" />
        )}
        <div className="fields">
          <DraftField of="thickness" label="Thickness" unit="mm" />
        </div>
      </div>
    </Sheet>
  )
}

export interface FormChoiceProps {
  readonly about: string
  readonly form: 'box' | 'corners'
  readonly words: readonly [box: string, corners: string]
  readonly onForm: (form: 'box' | 'corners') => void
}

/** By size, or corner by corner. */
export function FormChoice({ about, form, words, onForm }: FormChoiceProps): ReactElement {
  return (
    <fieldset className="choice-two">
      <legend className="only-read">How to enter the {about}</legend>
      {(['box', 'corners'] as const).map((choice, index) => (
        <Button key={choice} aria-pressed={form === choice} onClick={() => onForm(choice)}>
          {words[index]}
        </Button>
      ))}
    </fieldset>
  )
}
