import { type FormEvent, type ReactElement, type ReactNode, useState } from 'react'
import { Button, TextField } from '../look/index.ts'

export interface ReasonFormProps {
  readonly label: string
  readonly button: string
  readonly about: string
  readonly busy: boolean
  readonly fault: string | null
  readonly optional?: boolean
  readonly children?: ReactNode
  readonly onReason: (reason: string) => void
  readonly onCancel?: () => void
}

/** Something that needs a reason in words. */
export function ReasonForm({
  label,
  button,
  about,
  busy,
  fault,
  optional = false,
  children,
  onReason,
  onCancel,
}: ReasonFormProps): ReactElement {
  const [reason, setReason] = useState('')
  const [missing, setMissing] = useState(false)
  const submit = (event: FormEvent): void => {
    event.preventDefault()
    const empty = reason.trim() === '' && !optional
    setMissing(empty)
    if (!empty && !busy) onReason(reason.trim())
  }
  return (
    <form className="answer" onSubmit={submit} noValidate>
      {children}
      <TextField
        label={label}
        value={reason}
        fault={missing ? 'Write the reason: it stands in the record with your name.' : fault}
        onChange={(event) => setReason(event.currentTarget.value)}
      />
      <div className="row">
        <Button type="submit" disabled={busy}>
          {button}
          <span className="only-read">: {about}</span>
        </Button>
        {onCancel ? (
          <Button look="plain" onClick={onCancel}>
            leave it
          </Button>
        ) : null}
      </div>
    </form>
  )
}
