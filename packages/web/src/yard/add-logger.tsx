import { type ReactElement, useState } from 'react'
import { Button, Field } from '../look/index.ts'
import { PanelChoice } from './panel-choice.tsx'

export function AddLogger({
  onAdd,
}: {
  readonly onAdd: (logger: { name: string; panel: string | null }) => Promise<boolean>
}): ReactElement {
  const [name, setName] = useState('')
  const [panel, setPanel] = useState('')
  const missing = name.trim() === ''
  return (
    <details className="explain">
      <summary>Add a logger</summary>
      <form
        className="stack explain-body"
        onSubmit={(event) => {
          event.preventDefault()
          if (missing) return
          void onAdd({ name: name.trim(), panel: panel === '' ? null : panel }).then((done) => {
            if (done) setName('')
          })
        }}
      >
        <Field
          label="Name of the logger"
          note="As it is written on the box."
          value={name}
          maxLength={80}
          autoComplete="off"
          onChange={(event) => setName(event.currentTarget.value)}
        />
        <PanelChoice label="Panel that it reads for" value={panel} onPanel={setPanel} />
        <Button look="main" type="submit" shut={missing}>
          {missing ? 'Still missing: name' : 'Add the logger'}
        </Button>
      </form>
    </details>
  )
}
