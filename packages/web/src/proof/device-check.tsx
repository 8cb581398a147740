import { type SignedHead, verifyHead } from '@castwright/record'
import { type ReactElement, useEffect, useRef, useState } from 'react'
import { Button, Notice, Sheet, VerdictMark } from '../look/index.ts'
import { whenText } from '../panel/when.ts'
import { useNow, useSnapshot, useStore, useYardState } from '../record/index.ts'
import type { LogCheck } from './log-check.ts'
import type { ProofAnswer } from './proof-worker.ts'

interface Head {
  readonly head: SignedHead
  readonly publicKey: string
  readonly signed: boolean
}

/** Compares the log on this device with the yard's signed word for it. */
export function DeviceCheck(): ReactElement {
  const store = useStore()
  const { size, sync } = useSnapshot()
  const state = useYardState()
  const now = useNow()
  const zone = state.yard.yard?.timezone ?? 'UTC'
  const [head, setHead] = useState<Head | null>(null)
  const [fault, setFault] = useState<string | null>(null)
  const [progress, setProgress] = useState<{ readonly done: number; readonly of: number } | null>(null)
  const [check, setCheck] = useState<LogCheck | null>(null)
  const worker = useRef<Worker | null>(null)
  useEffect(() => () => worker.current?.terminate(), [])

  const stop = (): void => {
    worker.current?.terminate()
    worker.current = null
    setProgress(null)
  }
  const run = async (): Promise<void> => {
    setFault(null)
    setCheck(null)
    setProgress({ done: 0, of: size })
    try {
      setHead(await readHead(store))
    } catch (error) {
      setHead(null)
      setFault(`No signed head: ${error instanceof Error ? error.message : String(error)}`)
    }
    await store.sync.wake()
    const made = new Worker(new URL('./proof-worker.ts', import.meta.url), { type: 'module' })
    worker.current = made
    made.onmessage = ({ data }: MessageEvent<ProofAnswer>) => {
      if (data.kind === 'progress') setProgress(data)
      else {
        if (data.kind === 'done') setCheck(data.check)
        else setFault(data.text)
        stop()
      }
    }
    made.onerror = (event) => {
      setFault(event.message)
      stop()
    }
    made.postMessage('check')
  }

  return (
    <Sheet
      title="The record"
      note="One log for the yard: a tree of hashes that only grows, its head signed by the yard’s key."
    >
      <div className="stack">
        <dl className="facts">
          <dt>Entries here</dt>
          <dd>{size}</dd>
          <dt>Last contact</dt>
          <dd>{sync.at === null ? 'not reached since the app was opened' : whenText(sync.at, zone, now)}</dd>
          {head === null ? null : (
            <>
              <dt>Signed head</dt>
              <dd>
                {head.head.size} entries, {whenText(head.head.time, zone, now)}
              </dd>
              <dt>Root</dt>
              <dd className="hash">{head.head.root}</dd>
              <dt>Yard’s key</dt>
              <dd className="hash">{head.publicKey}</dd>
            </>
          )}
        </dl>
        {progress === null ? (
          <Button onClick={() => void run()}>Check what is on this device</Button>
        ) : (
          <div className="stack" role="status">
            <progress value={progress.done} max={Math.max(1, progress.of)} aria-label="Entries hashed" />
            <p>
              {progress.done} of {progress.of} entries hashed
            </p>
            <Button onClick={stop}>Stop</Button>
          </div>
        )}
        {fault === null ? null : <Notice kind="unknown">{fault}</Notice>}
        {check === null ? null : <Found check={check} head={head} />}
        {check === null ? null : <Devices check={check} />}
      </div>
    </Sheet>
  )
}

async function readHead(store: ReturnType<typeof useStore>): Promise<Head> {
  const [head, { publicKey }] = await Promise.all([store.api.head(), store.api.key()])
  return { head, publicKey, signed: verifyHead(head, publicKey) }
}

function Found({ check, head }: { readonly check: LogCheck; readonly head: Head | null }): ReactElement {
  const lines: { readonly verdict: 'pass' | 'fail' | 'unknown'; readonly text: string }[] = []
  if (head === null) lines.push({ verdict: 'unknown', text: 'No signed head to compare with.' })
  else {
    lines.push(
      head.signed
        ? {
            verdict: 'pass',
            text: 'The head carries the signature of the key that the server gives out. Compare that key with what the yard publishes.',
          }
        : { verdict: 'fail', text: 'The head’s signature does not fit the key that the server gives out.' },
    )
    if (check.size !== head.head.size) {
      lines.push({
        verdict: 'unknown',
        text: `${check.size} entries here, ${head.head.size} under the head: read on, then check again.`,
      })
    } else {
      lines.push(
        check.root === head.head.root
          ? { verdict: 'pass', text: `All ${check.size} entries here hash to the signed root.` }
          : {
              verdict: 'fail',
              text: `The entries here hash to ${check.root}, which is not the signed root.`,
            },
      )
    }
  }
  lines.push(
    check.broken.length === 0
      ? { verdict: 'pass', text: 'Every device’s entries carry the hash of the one before.' }
      : { verdict: 'fail', text: check.broken.map(({ text }) => text).join(' ') },
  )
  return (
    <ul className="plain" aria-live="polite">
      {lines.map(({ verdict, text }) => (
        <li key={text} className="mark-line">
          <VerdictMark verdict={verdict} />
          <span>{text}</span>
        </li>
      ))}
    </ul>
  )
}

function Devices({ check }: { readonly check: LogCheck }): ReactElement {
  const { flags, yard } = useYardState()
  const zone = yard.yard?.timezone ?? 'UTC'
  const now = useNow()
  return (
    <div>
      <h3>Devices</h3>
      <ul className="proof-flags">
        {check.devices.map((device) => {
          const own = flags.filter((flag) => flag.device === device.id)
          return (
            <li key={device.id}>
              <strong className="hash">{device.id}</strong>
              <br />
              {device.entries} entries, last by {device.lastPerson}, {whenText(device.lastSeen, zone, now)}.{' '}
              {own.length === 0
                ? 'No gap, clock not more than two minutes off.'
                : own.map(({ text }) => text).join(' ')}
            </li>
          )
        })}
      </ul>
    </div>
  )
}
