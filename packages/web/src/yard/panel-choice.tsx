import type { ReactElement } from 'react'
import { SelectField } from '../look/index.ts'
import { useYardState } from '../record/index.ts'
import { panelsToRead } from './logger-words.ts'

/** The panel that a logger reads for, as `<job>/<mark>`; empty for none. */
export function PanelChoice({
  label,
  note,
  value,
  onPanel,
}: {
  readonly label: string
  readonly note?: string
  readonly value: string
  readonly onPanel: (panel: string) => void
}): ReactElement {
  const { poured, others } = panelsToRead(useYardState().panels)
  // One that was lifted meanwhile stays to be seen until the logger is moved.
  const gone = value !== '' && !poured.includes(value) && !others.includes(value)
  return (
    <SelectField
      label={label}
      note={note}
      value={value}
      onChange={(event) => onPanel(event.currentTarget.value)}
    >
      <option value="">none</option>
      {gone ? <option value={value}>{value}</option> : null}
      <Options label="Poured" panels={poured} />
      <Options label="Not poured yet" panels={others} />
    </SelectField>
  )
}

function Options({
  label,
  panels,
}: {
  readonly label: string
  readonly panels: readonly string[]
}): ReactElement | null {
  if (panels.length === 0) return null
  return (
    <optgroup label={label}>
      {panels.map((panel) => (
        <option key={panel} value={panel}>
          {panel}
        </option>
      ))}
    </optgroup>
  )
}
