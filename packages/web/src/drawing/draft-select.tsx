import type { ReactElement } from 'react'
import { SelectField } from '../look/index.ts'
import { useDraft } from './draft-context.ts'

export interface DraftSelectProps {
  readonly label: string
  readonly field: string
  readonly value: string
  /** Value and word of each choice. */
  readonly choices: readonly (readonly [value: string, word: string])[]
  readonly onText: (text: string) => void
}

export function DraftSelect({ label, field, value, choices, onText }: DraftSelectProps): ReactElement {
  const { fault } = useDraft()
  return (
    <SelectField
      label={label}
      value={value}
      fault={fault(field)}
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
