import { type ErrorComponentProps, Link } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { Button, Sheet } from '../look/index.ts'

export function RoomLoading(): ReactElement {
  return (
    <p className="waiting" role="status">
      Reading what is on this device …
    </p>
  )
}

export function NotFound(): ReactElement {
  return (
    <main className="narrow" id="main">
      <h1>Castwright</h1>
      <Sheet
        title="There is no such page"
        note="The address leads nowhere. A panel’s page is found under Panels."
      >
        <Link className="button" to="/">
          To the day
        </Link>
      </Sheet>
    </main>
  )
}

/** A defect of ours, or a room that is not cached yet: what was entered is kept either way. */
export function RoomFault({ error, reset }: ErrorComponentProps): ReactElement {
  const text = error instanceof Error ? error.message : String(error)
  const notLoaded = /import|fetch|load/i.test(text)
  return (
    <div className="narrow">
      <Sheet
        title={notLoaded ? 'This room could not be loaded' : 'This screen broke'}
        note={
          notLoaded
            ? 'Without a network only rooms that were loaded before open. What you entered is kept here.'
            : 'It is our defect, not yours. What you entered is kept here; the other rooms work on.'
        }
      >
        <div className="stack">
          <p>{text}</p>
          <div className="row">
            <Button look="main" onClick={reset}>
              Try again
            </Button>
            <Link className="button" to="/">
              To the day
            </Link>
          </div>
        </div>
      </Sheet>
    </div>
  )
}
