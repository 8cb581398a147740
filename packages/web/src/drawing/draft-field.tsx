import type { ReactElement } from 'react'
import { Field } from '../look/index.ts'
import { setField, type TextField } from './acts/set-field.ts'
import { useDraft } from './draft-context.ts'

export interface TypedFieldProps {
  readonly label: string
  readonly value: string
  /** Name of the field, as faults name it. */
  readonly field: string
  readonly unit?: string
  readonly note?: string
  /** Words and not a number. */
  readonly words?: boolean
  readonly list?: string
  readonly onText: (text: string) => void
}

/** A text of the form with what is wrong at it, once it was left. */
export function TypedField({
  label,
  value,
  field,
  unit,
  note,
  words = false,
  list,
  onText,
}: TypedFieldProps): ReactElement {
  const { fault, left } = useDraft()
  return (
    <Field
      label={label}
      unit={unit}
      note={note}
      value={value}
      autoComplete="off"
      inputMode={words ? 'text' : 'decimal'}
      {...(list === undefined ? {} : { list })}
      fault={fault(field)}
      onBlur={() => left(field)}
      onChange={(event) => onText(event.currentTarget.value)}
    />
  )
}

export interface DraftFieldProps extends Omit<TypedFieldProps, 'value' | 'onText' | 'field'> {
  /** Which text of the draft. */
  readonly of: TextField
  /** Name of the field, where it differs. */
  readonly field?: string
}

/** A text that stands in the draft itself. */
export function DraftField({ of, field, ...rest }: DraftFieldProps): ReactElement {
  const { draft, act } = useDraft()
  return (
    <TypedField
      {...rest}
      field={field ?? of}
      value={draft[of]}
      onText={(text) => act(setField, { field: of, text })}
    />
  )
}
