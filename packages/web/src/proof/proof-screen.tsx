import './proof.css'
import { Link } from '@tanstack/react-router'
import { type ReactElement, useEffect, useState } from 'react'
import { Button, Notice, Sheet, useTitle } from '../look/index.ts'
import { whenText } from '../panel/when.ts'
import { useNow, useRecord, useSnapshot, useStore, useYardState } from '../record/index.ts'
import { DeviceCheck } from './device-check.tsx'
import { EntryTable } from './entry-table.tsx'
import { PassportCheck } from './passport-check.tsx'

/** How far the record goes, what waits, which devices have gaps, and whether a passport fits. */
export function ProofScreen(): ReactElement {
  useTitle('Proof')
  return (
    <div className="room stack">
      <h1>Proof</h1>
      <KeptHere />
      <div className="proof-columns">
        <div className="stack">
          <DeviceCheck />
          <Flags />
        </div>
        <PassportCheck yardKey />
      </div>
      <LastEntries />
    </div>
  )
}

/** Own entries that the record does not have: waiting ones, and refused ones with the reason. Nothing is dropped. */
function KeptHere(): ReactElement {
  const { kept, files, sync } = useRecord()
  const store = useStore()
  const { session } = useSnapshot()
  const zone = useYardState().yard.yard?.timezone ?? 'UTC'
  const now = useNow()
  if (kept.length === 0 && files.length === 0) {
    return <Notice title="All in the record">Nothing made on this device waits.</Notice>
  }
  const others = kept.filter(({ entry }) => entry.person.id !== session?.person?.id)
  return (
    <Sheet
      title={`${kept.length} kept here`}
      note={
        sync.online === false
          ? 'No network: they go out by themselves when it is back.'
          : 'They go out by themselves.'
      }
    >
      <div className="stack">
        {files.length > 0 ? <p>{files.length} photos or files wait too.</p> : null}
        {others.length > 0 ? (
          <p>{others.length} of them go out when the person who made them signs in here again.</p>
        ) : null}
        <ul className="plain">
          {kept.slice(0, 50).map(({ id, entry, state, fault, tries }) => (
            <li key={id}>
              {state === 'refused' ? (
                <Notice
                  kind="fail"
                  title={`Refused: ${entry.kind}${entry.check ? ` ${entry.check}` : ''}, ${entry.subject.id}`}
                >
                  {fault} Made by {entry.person.name}, {whenText(entry.seen, zone, now)}. It stays here; enter
                  it anew where it is wrong.
                </Notice>
              ) : (
                <>
                  {entry.kind}
                  {entry.check ? ` ${entry.check}` : ''}, {entry.subject.id}, by {entry.person.name},{' '}
                  {whenText(entry.seen, zone, now)}
                  {tries > 0 ? `, tried ${tries} times: ${fault ?? ''}` : ''}
                </>
              )}
            </li>
          ))}
        </ul>
        <div className="row">
          <Button onClick={() => void store.sync.wake()}>Send now</Button>
          <Link className="button" to="/yard">
            Save them to a file
          </Link>
        </div>
      </div>
    </Sheet>
  )
}

function Flags(): ReactElement | null {
  const { flags } = useYardState()
  if (flags.length === 0) return null
  return (
    <Sheet
      title="What the record shows about itself"
      note="Somebody should look at these. None of them changes an entry."
    >
      <ul className="proof-flags">
        {flags.slice(0, 100).map((flag) => (
          <li key={`${flag.kind} ${flag.panel ?? flag.device ?? ''} ${flag.entries.join()} ${flag.text}`}>
            <strong>{FLAG_WORD[flag.kind]}</strong>
            {flag.panel === null ? '' : ` ${flag.panel}`}: {flag.text}
          </li>
        ))}
      </ul>
      {flags.length > 100 ? <p>{flags.length - 100} more.</p> : null}
    </Sheet>
  )
}

const FLAG_WORD = {
  late: 'Late',
  gap: 'Gap',
  fork: 'Fork',
  clock: 'Clock',
  conflict: 'Conflict',
  revision: 'Revision',
  entitled: 'Not entitled',
  astray: 'Astray',
  twice: 'Twice',
} as const

function LastEntries(): ReactElement {
  const store = useStore()
  const { size } = useSnapshot()
  const [entries, setEntries] = useState<Awaited<ReturnType<typeof store.lastEntries>>>([])
  useEffect(() => {
    let left = false
    void store.lastEntries(size === 0 ? 0 : 25).then((found) => {
      if (!left) setEntries(found)
    })
    return () => {
      left = true
    }
  }, [store, size])
  const zone = useYardState().yard.yard?.timezone ?? 'UTC'
  return (
    <Sheet
      title="Last entries"
      note="Newest first. Entries are never edited or removed; a correction is a new entry."
      bare
    >
      <EntryTable entries={entries} zone={zone} />
    </Sheet>
  )
}
