import { Link, Outlet, useLocation } from '@tanstack/react-router'
import { type ReactElement, useEffect, useRef } from 'react'
import { announce, Button } from '../look/index.ts'
import { useNow, useSnapshot, useStore, useYardState } from '../record/hooks.ts'
import { askStorage } from '../record/storage.ts'
import { ChangePerson } from './change-person.tsx'
import { recordWord, spanText } from './record-word.ts'
import { weatherWord } from './weather-word.ts'

const ROOMS = [
  { to: '/', name: 'Day' },
  { to: '/panels', name: 'Panels' },
  { to: '/steel', name: 'Steel' },
  { to: '/pours', name: 'Pours' },
  { to: '/strength', name: 'Strength' },
  { to: '/lifts', name: 'Lifts' },
  { to: '/proof', name: 'Proof' },
  { to: '/yard', name: 'Yard' },
] as const

/** Head, rooms and the room that is open. Rooms that hold nothing yet are not in the list. */
export function Shell(): ReactElement {
  const snapshot = useSnapshot()
  const store = useStore()
  const state = useYardState()
  const now = useNow()
  const word = recordWord(snapshot)
  useRecordAnnounced(snapshot.kept.length)
  useFocusInRoom()
  useEffect(() => void askStorage(), [])
  const jobs = [...state.jobs.keys()]
  const weather = weatherWord(state.weather, now, state.yard.yard?.timezone ?? 'UTC')
  return (
    <>
      <a className="button skip" href="#main">
        To the content
      </a>
      <header className="head no-print">
        <Link className="head-name" to="/">
          Castwright
        </Link>
        <dl className="head-facts">
          <div className="head-cell">
            <dt>Yard</dt>
            <dd>{state.yard.yard?.name ?? snapshot.session?.yard ?? 'none yet'}</dd>
          </div>
          {jobs.length > 0 ? (
            <div className="head-cell">
              <dt>{jobs.length === 1 ? 'Job' : 'Jobs'}</dt>
              <dd>{jobs.length > 2 ? `${jobs.length}` : jobs.join(', ')}</dd>
            </div>
          ) : null}
          {weather === null ? null : (
            <div className="head-cell">
              <dt>{weather.label}</dt>
              <dd>{weather.text}</dd>
            </div>
          )}
        </dl>
        <div className="head-end">
          <Link className="head-button" to="/proof">
            <span className="head-label">{word.label}</span>
            <span className={word.urgent ? 'head-strong' : undefined}>{word.text}</span>
          </Link>
          <ChangePerson />
        </div>
      </header>
      <nav className="rooms no-print" aria-label="Rooms">
        {ROOMS.map(({ to, name }) => (
          <Link
            key={to}
            to={to}
            activeOptions={{ exact: to === '/' }}
            activeProps={{ 'aria-current': 'page' }}
          >
            {name}
          </Link>
        ))}
      </nav>
      {snapshot.sync.halt === 'sign-in' ? (
        <div className="strip-note no-print" role="status">
          <span>The server wants a PIN again. Until then new entries stay kept here.</span>
          <Button onClick={() => void store.signOut()}>Sign in again</Button>
        </div>
      ) : null}
      {snapshot.sync.halt === 'other-record' ? (
        <div className="strip-note no-print" role="status">
          <span>{snapshot.sync.fault} What was made here and not sent stays.</span>
          <Button onClick={() => void store.sync.readAgain()}>Read the server’s record</Button>
        </div>
      ) : null}
      {snapshot.size < snapshot.recordSize ? (
        <div className="strip-note no-print" role="status">
          {snapshot.size} of {snapshot.recordSize} entries of the record are on this device: what you see is
          not the whole of it.
        </div>
      ) : null}
      <ClockNote offset={snapshot.clockOffset} />
      <main id="main" tabIndex={-1}>
        <Outlet />
      </main>
    </>
  )
}

function ClockNote({ offset }: { readonly offset: number | null }): ReactElement | null {
  if (offset === null || Math.abs(offset) <= 120_000) return null
  return (
    <div className="strip-note no-print" role="status">
      This device’s clock is {spanText(Math.abs(offset))} {offset > 0 ? 'fast' : 'slow'}. Its entries say so.
      Set it by the network.
    </div>
  )
}

/** A new room begins at its top for the keyboard and the screen reader too. */
function useFocusInRoom(): void {
  const { pathname } = useLocation()
  const before = useRef(pathname)
  useEffect(() => {
    if (before.current === pathname) return
    before.current = pathname
    document.getElementById('main')?.focus({ preventScroll: true })
  }, [pathname])
}

/** Tells a screen reader when entries went from kept here to in the record. */
function useRecordAnnounced(kept: number): void {
  const before = useRef(kept)
  useEffect(() => {
    if (kept > before.current) announce(`${kept} kept here.`)
    if (kept < before.current) announce(kept === 0 ? 'All in the record.' : `${kept} still kept here.`)
    before.current = kept
  }, [kept])
}
