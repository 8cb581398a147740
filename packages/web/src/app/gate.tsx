import { type ReactElement, useEffect, useState } from 'react'
import { Button, Sheet } from '../look/index.ts'
import { RecordContext, type RecordRoom, useSnapshot } from '../record/hooks.ts'
import type { RecordSnapshot } from '../record/record-store.ts'
import { RoomLoading } from './faults.tsx'
import { Shell } from './shell.tsx'
import { SignIn } from './sign-in.tsx'

let opening: Promise<RecordRoom> | null = null

function openOnce(): Promise<RecordRoom> {
  opening ??= import('../record/open.ts').then(({ openRecord }) => openRecord())
  return opening
}

/** Opens what this device holds; then the sign-in, or the rooms. */
export function Gate(): ReactElement {
  const [room, setRoom] = useState<RecordRoom | null>(null)
  const [fault, setFault] = useState<string | null>(null)
  useEffect(() => {
    openOnce().then(setRoom, (error: unknown) => {
      opening = null
      setFault(error instanceof Error ? error.message : String(error))
    })
  }, [])
  if (fault !== null) return <CannotOpen fault={fault} />
  if (room === null) return <RoomLoading />
  return (
    <RecordContext value={room}>
      <Inside />
    </RecordContext>
  )
}

function Inside(): ReactElement {
  const snapshot = useSnapshot()
  const { state, session, asked } = snapshot
  if (state === null) return <RoomLoading />
  if (session?.person) return isCatchingUp(snapshot) ? <CatchingUp /> : <Shell />
  return asked ? <SignIn /> : <RoomLoading />
}

/** Half a record would show half a truth: rooms wait until it was read to its end, as long as it can be read. */
function isCatchingUp({ sync, size, recordSize, contacted }: RecordSnapshot): boolean {
  if (sync.online === false || sync.halt !== null || sync.fault !== null) return false
  return !contacted || size < recordSize
}

function CatchingUp(): ReactElement {
  const { size, recordSize } = useSnapshot()
  return (
    <div className="narrow" role="status">
      <p>
        {recordSize === 0 ? 'Reading the record …' : `Reading the record: ${size} of ${recordSize} entries`}
      </p>
      <progress value={size} max={Math.max(1, recordSize)} aria-label="Entries read" />
    </div>
  )
}

function CannotOpen({ fault }: { readonly fault: string }): ReactElement {
  return (
    <main className="narrow" id="main">
      <h1>Castwright</h1>
      <Sheet
        title="This device cannot keep anything"
        note="The browser gives no storage. A private window or a full device does that; free some room or use another window, then try again."
      >
        <div className="stack">
          <p>{fault}</p>
          <Button look="main" onClick={() => window.location.reload()}>
            Try again
          </Button>
        </div>
      </Sheet>
    </main>
  )
}
