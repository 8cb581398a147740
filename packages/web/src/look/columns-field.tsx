import type { ReactElement } from 'react'
import { Field } from './field.tsx'

export interface ColumnsFieldProps {
  readonly label: string
  readonly note?: string | undefined
  readonly value: readonly string[]
  readonly onColumns: (columns: string[]) => void
}

/** Columns of a file by their letters: `A`, or `A B`. */
export function ColumnsField({ label, note, value, onColumns }: ColumnsFieldProps): ReactElement {
  return (
    <Field
      label={label}
      note={note}
      value={value.join(' ')}
      autoComplete="off"
      onChange={(event) =>
        onColumns(
          event.currentTarget.value
            .toUpperCase()
            .split(/[^A-Z]+/)
            .filter((letter) => letter !== ''),
        )
      }
    />
  )
}
