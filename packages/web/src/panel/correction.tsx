import { type ReactElement, useState } from 'react'
import { Button, Field } from '../look/index.ts'

export interface ReasonPart {
  readonly value: string
  readonly missing: () => void
  readonly field: ReactElement
}

/** A correction needs the new value and the reason; the old value stays in the record. */
export function Correction({
  answer,
  onCancel,
  busy,
}: {
  readonly answer: (reason: ReasonPart) => ReactElement
  readonly onCancel: () => void
  readonly busy: boolean
}): ReactElement {
  const [reason, setReason] = useState('')
  const [missing, setMissing] = useState(false)
  return (
    <div className="correction">
      <p className="check-note">The old value stays in the record; the new one points at it.</p>
      {answer({
        value: reason,
        missing: () => setMissing(true),
        field: (
          <Field
            label="Why it is corrected"
            value={reason}
            autoComplete="off"
            fault={missing && reason.trim() === '' ? 'Write the reason.' : null}
            onChange={(event) => setReason(event.currentTarget.value)}
          />
        ),
      })}
      <Button look="plain" onClick={onCancel} disabled={busy}>
        leave it
      </Button>
    </div>
  )
}
