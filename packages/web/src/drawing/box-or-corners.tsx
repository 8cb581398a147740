import type { ReactElement } from 'react'
import type { RingAt } from './acts/act.ts'
import { CornerTable } from './corner-table.tsx'
import type { DraftOpening } from './draft.ts'
import { TypedField } from './draft-field.tsx'
import { FormChoice } from './outline-part.tsx'

const SIZES = [
  ['x', 'From the left, x'],
  ['y', 'From below, y'],
  ['width', 'Width'],
  ['height', 'Height'],
] as const

export interface BoxOrCornersProps {
  /** Read before each corner and in the choice: `Opening D1`. */
  readonly name: string
  readonly shape: Omit<DraftOpening, 'mark'>
  readonly ring: RingAt
  /** Path of the item, as faults name it: `openings[0]`. */
  readonly path: string
  /** What its sizes along y are called, where it is not the height of an opening. */
  readonly up?: string
  readonly onForm: (form: DraftOpening['form']) => void
  readonly onText: (field: (typeof SIZES)[number][0], text: string) => void
}

/** A shape in the panel by place and size, or corner by corner. */
export function BoxOrCorners({
  name,
  shape,
  ring,
  path,
  up = 'Height',
  onForm,
  onText,
}: BoxOrCornersProps): ReactElement {
  return (
    <>
      <FormChoice
        about={name.charAt(0).toLowerCase() + name.slice(1)}
        form={shape.form}
        words={['Box', 'Corners']}
        onForm={onForm}
      />
      {shape.form === 'box' ? (
        SIZES.map(([field, label]) => (
          <TypedField
            key={field}
            label={field === 'height' ? up : label}
            unit="mm"
            field={`${path}.${field}`}
            value={shape[field]}
            onText={(text) => onText(field, text)}
          />
        ))
      ) : (
        <div className="fields-wide">
          <CornerTable name={name} ring={ring} corners={shape.corners} path={`${path}.outline`} />
        </div>
      )}
    </>
  )
}
