import type { ReactElement } from 'react'
import { SelectField } from '../look/index.ts'
import { useDraft } from './draft-context.ts'

export interface DraftSelectProps {
  readonly label: string
  readonly field: string
  readonly value: string
  readonly note?: string
  /** Value and word of each choice. */
  readonly choices: readonly (readonly [value: string, word: string])[]
  readonly onText: (text: string) => void
}

export function DraftSelect({ label, field, value, note, choices, onText }: DraftSelectProps): ReactElement {
  const { fault, left } = useDraft()
  return (
    <SelectField
      label={label}
      value={value}
      note={note}
      fault={fault(field)}
      onBlur={() => left(field)}
      onChange={(event) => onText(event.currentTarget.value)}
    >
      {choices.map(([choice, word]) => (
        <option key={choice} value={choice}>
          {word}
        </option>
      ))}
    </SelectField>
  )
}
