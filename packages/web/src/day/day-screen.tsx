import './day.css'
import { stepIsDone } from '@castwright/engine/steps'
import { Link } from '@tanstack/react-router'
import { type ReactElement, useEffect, useMemo, useRef, useState } from 'react'
import { announce, Button, Explain, Sheet, useTitle, VerdictMark } from '../look/index.ts'
import { NightList } from '../night/night-line.tsx'
import { useNights, useNow, usePlans, useYardState } from '../record/index.ts'
import { type BedDay, bedDays, onBeds } from './bed-day.ts'
import { DayList } from './day-list.tsx'
import { DayPicture } from './day-picture.tsx'
import { clockText, dayName, dayOf, dayWindow, shiftDay } from './day-window.ts'
import { FirstRun } from './first-run.tsx'
import { type DaySentence, heldUp } from './held-up.ts'
import { Legend } from './legend.tsx'
import { StrengthPicture } from './strength-picture.tsx'

/** The day: what holds it up, a row per bed, the line of now. */
export function DayScreen(): ReactElement {
  useTitle('Day')
  const { panels, yard } = useYardState()
  return panels.size === 0 || yard.yard === null ? <FirstRun /> : <Day />
}

function Day(): ReactElement {
  const state = useYardState()
  const now = useNow()
  const zone = state.yard.yard?.timezone ?? 'UTC'
  const beds = state.yard.yard?.beds ?? NO_BEDS
  const today = dayOf(now, zone)
  const [day, setDay] = useState<string | null>(null)
  const shown = day ?? today
  const window = useMemo(() => dayWindow(shown, zone), [shown, zone])
  const active = useMemo(() => onBeds(state.panels.values(), beds, window), [state.panels, beds, window])
  const plans = usePlans(active)
  const planned = useMemo(
    () =>
      active.map((facts, index) => {
        const plan = plans[index]
        return {
          facts,
          plan: plan?.status === 'ready' ? plan.plan : null,
          why: plan?.status === 'none' ? plan.why : null,
        }
      }),
    [active, plans],
  )
  const minute = Math.floor(now.getTime() / 60_000) * 60_000
  const rows = useMemo(
    () => bedDays({ beds, panels: planned, window, now: minute, yard: state.yard, readings: state }),
    [beds, planned, window, minute, state],
  )
  const sentences = useMemo(
    () =>
      shown === today ? heldUp({ panels: planned, rows, yard: state.yard, now: new Date(minute), zone }) : [],
    [planned, rows, state.yard, minute, zone, shown, today],
  )
  const curing = useMemo(
    () => planned.filter(({ facts }) => facts.cast !== null && !stepIsDone('strip', facts)),
    [planned],
  )
  const nights = useNights(curing)
  useSentencesAnnounced(sentences)
  const computing = plans.filter(({ status }) => status === 'computing').length
  const clock = (at: number): string => clockText(at, zone)
  return (
    <div className="room stack">
      <div className="day-head">
        <div>
          <h1>{dayName(shown)}</h1>
          <p className="quiet">{summary(rows, shown === today ? sentences : null)}</p>
        </div>
        <div className="row">
          <Button onClick={() => setDay(shiftDay(shown, -1))}>Day before</Button>
          {shown === today ? null : <Button onClick={() => setDay(null)}>Today</Button>}
          <Button onClick={() => setDay(shiftDay(shown, 1))}>Day after</Button>
        </div>
      </div>
      {computing > 0 ? (
        <p role="status" className="quiet">
          Planning {computing} of {active.length} panels …
        </p>
      ) : null}
      <Sentences sentences={sentences} />
      <RecordFlags />
      <div className="stack day-wide">
        <DayPicture rows={rows} window={window} now={now.getTime()} zone={zone} />
        <Legend />
        <Explain word="The same as a list" about={dayName(shown)} working={[]}>
          <DayList rows={rows} now={now.getTime()} clock={clock} />
        </Explain>
      </div>
      <div className="stack day-narrow">
        <OpenBed rows={rows} now={now.getTime()} window={window} clock={clock} />
        <DayList rows={rows} now={now.getTime()} clock={clock} />
      </div>
      {shown === today ? (
        <NightList panels={curing.map(({ facts }) => facts)} nights={nights} zone={zone} now={now} />
      ) : null}
      <Unknowns rows={rows} />
    </div>
  )
}

const NO_BEDS: readonly never[] = []

function Sentences({ sentences }: { readonly sentences: readonly DaySentence[] }): ReactElement | null {
  if (sentences.length === 0) return null
  return (
    <ul className="day-sentences" aria-label="What holds the day up, and what is next">
      {sentences.map(({ kind, title, text, panel, step }) => (
        <li key={`${panel.job}/${panel.mark} ${step} ${kind}`}>
          <Link
            className={`day-sentence day-sentence-${kind}`}
            to="/panel/$job/$mark"
            params={panel}
            search={{ step }}
          >
            {kind === 'accent' ? null : <VerdictMark verdict={kind} />}
            <strong>{title}</strong>
            <p>{text}</p>
          </Link>
        </li>
      ))}
    </ul>
  )
}

/** What the record itself shows: entries that came after a hold was opened stand on Day until they are decided. */
function RecordFlags(): ReactElement | null {
  const { flags, panels } = useYardState()
  const late = flags.filter(
    ({ kind, panel }) =>
      kind === 'late' && panel !== null && panels.get(panel)?.defects.some(({ open }) => open),
  )
  if (late.length === 0) return null
  return (
    <Sheet title="Came into the record after a hold was opened" level={2}>
      <ul>
        {late.map(({ panel, text, entries }) => {
          const facts = panels.get(panel ?? '')
          return (
            <li key={entries.join()}>
              {facts ? (
                <Link to="/panel/$job/$mark" params={{ job: facts.job, mark: facts.mark }} search={{}}>
                  {facts.mark}
                </Link>
              ) : null}
              : {text}
            </li>
          )
        })}
      </ul>
    </Sheet>
  )
}

/** On a phone: the strength curve of one bed. */
function OpenBed({
  rows,
  now,
  window,
  clock,
}: {
  readonly rows: readonly BedDay[]
  readonly now: number
  readonly window: ReturnType<typeof dayWindow>
  readonly clock: (at: number) => string
}): ReactElement | null {
  // What still gains strength comes before what was lifted this morning.
  const ahead = (row: BedDay): BedDay['curves'] =>
    row.curves.filter(({ points }) => (points.at(-1)?.at ?? 0) > now)
  const withCurve = rows.filter(({ curves }) => curves.length > 0)
  const still = withCurve.filter((row) => ahead(row).length > 0)
  const curing = still.length > 0 ? still : withCurve
  const [bed, setBed] = useState<string | null>(null)
  const open = curing.find((row) => row.bed === bed) ?? curing[0]
  if (open === undefined) return null
  return (
    <Sheet title="Strength by bed">
      <div className="stack">
        {curing.length > 1 ? (
          <div className="day-beds">
            {curing.map((row) => (
              <Button key={row.bed} aria-pressed={row === open} onClick={() => setBed(row.bed)}>
                {/^\d+$/.test(row.bed) ? `Bed ${row.bed}` : row.bed}
              </Button>
            ))}
          </div>
        ) : null}
        {(still.length > 0 ? ahead(open) : open.curves).map((curve) => (
          <StrengthPicture
            key={`${curve.panel.job}/${curve.panel.mark}`}
            curve={curve}
            window={window}
            now={now}
            clock={clock}
          />
        ))}
      </div>
    </Sheet>
  )
}

function Unknowns({ rows }: { readonly rows: readonly BedDay[] }): ReactElement | null {
  const unknown = [...new Set(rows.flatMap((row) => row.unknown))]
  if (unknown.length === 0) return null
  return (
    <Explain word={`Not drawn, because not known: ${unknown.length}`} about="what is missing" working={[]}>
      <ul>
        {unknown.map((gap) => (
          <li key={gap}>{gap}</li>
        ))}
      </ul>
    </Explain>
  )
}

/** Only of today it is said what holds it up. */
function summary(rows: readonly BedDay[], sentences: readonly DaySentence[] | null): string {
  const count = (kind: 'pour' | 'strip'): number =>
    rows.flatMap(({ blocks }) => blocks).filter((block) => block.kind === kind && !block.done).length
  const work = `${rows.length} ${rows.length === 1 ? 'bed' : 'beds'}, ${count('pour')} to pour, ${count('strip')} to strip.`
  if (sentences === null) return work
  const held = sentences.filter(({ kind }) => kind !== 'accent').length
  if (held === 0) return `${work} Nothing known holds the day up.`
  return `${work} ${held} ${held === 1 ? 'thing holds' : 'things hold'} the day up.`
}

/** Says a new sentence once, not at the first picture. */
function useSentencesAnnounced(sentences: readonly DaySentence[]): void {
  const said = useRef<ReadonlySet<string> | null>(null)
  useEffect(() => {
    const titles = new Set(sentences.filter(({ kind }) => kind !== 'accent').map(({ title }) => title))
    const fresh = [...titles].filter((title) => said.current !== null && !said.current.has(title))
    if (fresh.length > 0) announce(`${fresh.join('. ')}.`)
    if (titles.size > 0 || said.current !== null) said.current = titles
  }, [sentences])
}
