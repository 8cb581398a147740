import { type ReactElement, useEffect, useState } from 'react'
import { Button, FileField, Notice, Sheet, VerdictMark } from '../look/index.ts'
import { useSnapshot, useStore } from '../record/index.ts'
import { askStorage, type StorageAnswer } from '../record/storage.ts'

/** What this device holds, whether the browser keeps it, and unsent entries as a file. */
export function ThisDevice(): ReactElement {
  const store = useStore()
  const { kept, files, size, sync, clockOffset } = useSnapshot()
  const [storage, setStorage] = useState<StorageAnswer | null>(null)
  const [appHere, setAppHere] = useState<boolean | null>(null)
  const [taken, setTaken] = useState<string | null>(null)
  const [fault, setFault] = useState<string | null>(null)
  useEffect(() => {
    void askStorage().then(setStorage)
    if (!('serviceWorker' in navigator)) setAppHere(false)
    else void navigator.serviceWorker.getRegistration().then((found) => setAppHere(found?.active != null))
  }, [])
  const save = async (): Promise<void> => {
    const { writeKept } = await import('../record/kept-file.ts')
    const bytes = await store.db.files.where('state').notEqual('sent').toArray()
    const url = URL.createObjectURL(new Blob([await writeKept(kept, bytes)], { type: 'application/json' }))
    const link = document.createElement('a')
    link.href = url
    link.download = `castwright-kept-${new Date().toISOString().slice(0, 16).replace(':', '')}.json`
    link.click()
    URL.revokeObjectURL(url)
  }
  const readBack = async (file: File): Promise<void> => {
    setFault(null)
    setTaken(null)
    try {
      const { readKept } = await import('../record/kept-file.ts')
      const read = await readKept(await file.text())
      const count = await store.takeIn(read.entries, read.files)
      setTaken(`${count} of ${read.entries.length} entries were not here yet and are kept here now.`)
    } catch (error) {
      setFault(error instanceof Error ? error.message : String(error))
    }
  }
  return (
    <Sheet title="This device">
      <div className="stack">
        <dl className="facts">
          <dt>Kept here</dt>
          <dd>
            {kept.length === 0 ? 'nothing waits' : `${kept.length} entries`}
            {files.length === 0 ? '' : `, ${files.length} photos or files`}
          </dd>
          <dt>In the record</dt>
          <dd>{size} entries are on this device</dd>
          <dt>Network</dt>
          <dd>
            {sync.online === null
              ? 'asking'
              : sync.online
                ? 'the record answers'
                : 'no answer; new entries stay kept here'}
            {sync.fault === null ? '' : ` (${sync.fault})`}
          </dd>
          <dt>Clock</dt>
          <dd>{clockText(clockOffset)}</dd>
          <dt>App</dt>
          <dd>
            {appHere === null
              ? 'asking'
              : appHere
                ? 'stored here, opens without a network'
                : 'not stored here: it needs the network to open'}
          </dd>
          <dt>Storage</dt>
          <dd>
            <StorageLine storage={storage} />
          </dd>
        </dl>
        <div className="row">
          <Button onClick={() => void askStorage().then(setStorage)}>Ask for lasting storage again</Button>
          <Button onClick={() => void store.sync.wake()}>Send and read now</Button>
        </div>
        <div className="row">
          <Button shut={kept.length === 0} onClick={() => void save()}>
            {kept.length === 0
              ? 'Save to a file: nothing waits'
              : `Save ${kept.length} unsent entries to a file`}
          </Button>
        </div>
        <FileField
          label="Read unsent entries back from a file"
          accept=".json,application/json"
          note="On this device or another one of the yard. Reading one twice is harmless."
          fault={fault}
          onFiles={([file]) => {
            if (file) void readBack(file)
          }}
        />
        {taken === null ? null : (
          <div role="status">
            <Notice>{taken}</Notice>
          </div>
        )}
      </div>
    </Sheet>
  )
}

function StorageLine({ storage }: { readonly storage: StorageAnswer | null }): ReactElement {
  if (storage === null) return <>asking</>
  const room =
    storage.used === null || storage.quota === null
      ? ''
      : ` ${megabytes(storage.used)} used of ${megabytes(storage.quota)}.`
  const [verdict, words] = {
    granted: ['pass', 'The browser promised to keep what is here.'] as const,
    refused: [
      'fail',
      'The browser did not promise: short of room it may clear what is kept here. Install the app, or save unsent entries to a file.',
    ] as const,
    'cannot-say': [
      'unknown',
      'The browser makes no such promise. Save unsent entries to a file when the network is away for long.',
    ] as const,
  }[storage.persistence]
  return (
    <span className="mark-line">
      <VerdictMark verdict={verdict} silent />
      <span>
        {words}
        {room}
      </span>
    </span>
  )
}

function clockText(offset: number | null): string {
  if (offset === null) return 'not compared with the record yet'
  const seconds = Math.round(Math.abs(offset) / 1000)
  if (seconds < 2) return 'agrees with the record’s'
  const amount = seconds < 120 ? `${seconds} s` : `${Math.round(seconds / 60)} minutes`
  return `${amount} ${offset > 0 ? 'fast' : 'slow'} against the record’s`
}

function megabytes(bytes: number): string {
  return bytes >= 1e9 ? `${(bytes / 1e9).toFixed(1)} GB` : `${(bytes / 1e6).toFixed(1)} MB`
}
