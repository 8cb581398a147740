import { type FormEvent, type ReactElement, type ReactNode, useState } from 'react'
import { Button, Sheet } from '../look/index.ts'

export interface ExtraProps {
  readonly title: string
  /** What is on record already. */
  readonly children?: ReactNode
  /** The fields; nothing where the person may not enter. */
  readonly fields?: ReactNode
  /** Opens the fields. */
  readonly open: string
  readonly button: string
  readonly busy: boolean
  readonly fault: string | null
  /** Keeps what was entered; true where it went through and the fields can close. */
  readonly onSubmit: () => Promise<boolean>
  /** Open from the start: nothing is on record yet. */
  readonly startOpen?: boolean
}

/** A piece of the card for something that is no check: what is on record, and fields that open at a tap. */
export function Extra(props: ExtraProps): ReactElement {
  const { title, children, fields, open, button, busy, fault, onSubmit, startOpen = false } = props
  const [shown, setShown] = useState(startOpen)
  const submit = (event: FormEvent): void => {
    event.preventDefault()
    if (!busy) void onSubmit().then((ok) => ok && setShown(false))
  }
  return (
    <Sheet title={title} level={3} className="extra">
      <div className="stack">
        {children}
        {fields === undefined || fields === null ? null : shown ? (
          <form className="stack" onSubmit={submit} noValidate>
            {fields}
            {fault === null ? null : (
              <p role="alert" className="check-fault">
                {fault}
              </p>
            )}
            <div className="row">
              <Button type="submit" disabled={busy}>
                {button}
              </Button>
              <Button look="plain" onClick={() => setShown(false)}>
                leave it
              </Button>
            </div>
          </form>
        ) : (
          <div>
            <Button onClick={() => setShown(true)}>{open}</Button>
          </div>
        )}
      </div>
    </Sheet>
  )
}
