import type { ReactElement } from 'react'
import { usePanelRoom } from './panel-context.ts'
import { whenText } from './when.ts'

export interface WhereKeptProps {
  readonly by: string
  readonly seen: string
  /** Null while it is only on this device. */
  readonly stored: string | null
}

/** Who, when, and whether it is only kept here or in the record. */
export function WhereKept({ by, seen, stored }: WhereKeptProps): ReactElement {
  const { zone, now } = usePanelRoom()
  return (
    <span className="where-kept">
      {by}, {whenText(seen, zone, now)}, <strong>{stored === null ? 'kept here' : 'in the record'}</strong>
    </span>
  )
}
