import './pours.css'
import type { Plan } from '@castwright/engine/plan'
import {
  goOn,
  goTo,
  INSERTION_SECONDS,
  pulledOut,
  takeBack,
  type Walk,
  walkState,
  zoneRows,
} from '@castwright/engine/pour/live'
import type { PanelFacts } from '@castwright/engine/steps'
import { Link, useParams } from '@tanstack/react-router'
import { type ReactElement, useEffect, useMemo, useRef, useState } from 'react'
import { announce, Button, Caution, CheckField, fixed, Notice, useTitle } from '../look/index.ts'
import { useActing } from '../panel/acting.ts'
import { recordZone } from '../panel/acts/record-zone.ts'
import { mayDo } from '../panel/entitled.ts'
import { usePanel, usePerson, usePlan, useRecord } from '../record/index.ts'
import { keepWalk, keptWalk, walkKey } from './kept-walk.ts'
import { WalkPicture } from './walk-picture.tsx'

/** The vibrator's walk over one panel, live: where it is, how long, what comes next, and what was not reached. */
export function PourScreen(): ReactElement {
  const { job, mark } = useParams({ from: '/rooms/pours/$job/$mark' })
  useTitle(`Pour of ${mark}`)
  const facts = usePanel(job, mark)
  const plan = usePlan(job, mark)
  if (facts === null || facts.drawing === null) {
    return (
      <div className="room stack">
        <h1>{mark}</h1>
        <Notice kind="unknown" title="The record has no drawing of this panel" />
      </div>
    )
  }
  return (
    <div className="room stack">
      <div className="row pours-head">
        <h1>{mark}: place and vibrate</h1>
        <Link
          className="button no-print"
          to="/panel/$job/$mark"
          params={{ job, mark }}
          search={{ step: 'place' }}
        >
          Card
        </Link>
      </div>
      {plan.status === 'ready' ? (
        plan.plan.pour.compaction === null ? (
          <Notice kind="unknown" title="No pattern">
            {plan.plan.pour.unknown.join('; ') || 'The yard lists no vibrator.'}
          </Notice>
        ) : (
          <LiveWalk facts={facts} plan={plan.plan} />
        )
      ) : (
        <p role="status">{plan.status === 'none' ? 'No plan: nothing can be computed.' : 'Computing …'}</p>
      )}
    </div>
  )
}

function LiveWalk({ facts, plan }: { readonly facts: PanelFacts; readonly plan: Plan }): ReactElement | null {
  const compaction = plan.pour.compaction
  const key = walkKey(
    `${facts.job}/${facts.mark}`,
    facts.cast?.at ?? null,
    compaction?.insertions.length ?? 0,
  )
  const [walk, setWalk] = useState<Walk>(() => keptWalk(localStorage, key))
  const [full, setFull] = useState(false)
  const [auto, setAuto] = useState(false)
  const now = useSeconds(walk.current !== null || auto)
  const state = useMemo(
    () => (compaction === null ? null : walkState(walk, compaction, now)),
    [walk, compaction, now],
  )
  const put = (next: Walk): void => {
    setWalk(next)
    setFull(!keepWalk(localStorage, key, next))
  }
  const due =
    state !== null &&
    state.seconds !== null &&
    state.seconds >= (INSERTION_SECONDS.low + INSERTION_SECONDS.high) / 2
  const walkRef = useRef(walk)
  walkRef.current = walk
  useEffect(() => {
    if (!due || compaction === null) return
    navigator.vibrate?.(120)
    if (auto) {
      const next = goOn(walkRef.current, compaction, Date.now())
      setWalk(next)
      setFull(!keepWalk(localStorage, key, next))
    }
  }, [due, auto, compaction, key])
  useAwake(walk.current !== null)
  if (compaction === null || state === null || facts.drawing === null) return null
  const begin = (): void => put(goOn(walk, compaction, Date.now()))
  const place = {
    job: facts.job,
    mark: facts.mark,
    revision: facts.revision,
    edition: plan.editions.join('; '),
  }
  const current = walk.current?.insertion ?? null
  return (
    <>
      <div className="walk-now" data-due={due}>
        <p className="walk-seconds" aria-hidden="true">
          {state.seconds === null ? '–' : Math.floor(state.seconds)}
          <span> s</span>
        </p>
        <p role="status">
          {state.done
            ? 'Every insertion is reached.'
            : current === null
              ? `Next is ${(state.next ?? 0) + 1} of ${compaction.insertions.length}.`
              : `Insertion ${current + 1} of ${compaction.insertions.length}${due ? ': go on.' : '.'}`}
        </p>
        <div className="row walk-buttons">
          <Button look="main" wide disabled={state.done} onClick={begin}>
            {current === null
              ? walk.visits.length === 0
                ? 'Vibrator in'
                : 'In at the next'
              : 'Out, on to the next'}
          </Button>
          <Button disabled={current === null} onClick={() => put(pulledOut(walk, Date.now()))}>
            Out, wait
          </Button>
          <Button disabled={walk.visits.length === 0 && current === null} onClick={() => put(takeBack(walk))}>
            Take back
          </Button>
        </div>
        <CheckField
          label={`go on by itself after ${(INSERTION_SECONDS.low + INSERTION_SECONDS.high) / 2} s`}
          checked={auto}
          onChange={(event) => setAuto(event.currentTarget.checked)}
        />
      </div>
      {full ? (
        <Notice kind="fail" title="This device is full">
          The walk is not kept on it: do not close this page before its zones are recorded.
        </Notice>
      ) : null}
      {state.leftMinutes === null ? null : (
        <Notice kind="fail" title={`Nothing was worked for ${Math.floor(state.leftMinutes)} min`}>
          Fresh concrete waits beside what comes next. If the vibrator no longer sinks in by itself it is a
          joint: stop and ask the lead.
        </Notice>
      )}
      {state.missed.length === 0 ? null : (
        <Notice kind="fail" title={`${state.missed.length} not reached`}>
          Insertions{' '}
          {state.missed
            .slice(0, 12)
            .map((at) => at + 1)
            .join(', ')}
          {state.missed.length > 12 ? ' …' : ''}: passed over. Tap one to go back, or go on to the end of the
          order, which leads back.
        </Notice>
      )}
      {state.short.length === 0 ? null : (
        <p>
          Shorter than {INSERTION_SECONDS.low} s:{' '}
          {state.short
            .slice(0, 12)
            .map((at) => at + 1)
            .join(', ')}
        </p>
      )}
      <WalkPicture
        drawing={facts.drawing}
        compaction={compaction}
        state={state}
        chute={plan.pour.chute as [number, number]}
        onTap={(at) => {
          put(goTo(walk, at, Date.now()))
          announce(`Insertion ${at + 1}`)
        }}
      />
      <Zones facts={facts} plan={plan} walk={walk} state={state} place={place} />
      <Caution
        order="Quick in, slow out, never on the steel."
        text="Stop when large bubbles stop and the surface shines. Hands, eyes and feet away from the chute and the head; gloves and eye protection: fresh concrete burns. What the eye sees outranks the clock here."
      />
    </>
  )
}

function Zones({
  facts,
  plan,
  walk,
  state,
  place,
}: {
  readonly facts: PanelFacts
  readonly plan: Plan
  readonly walk: Walk
  readonly state: ReturnType<typeof walkState>
  readonly place: Parameters<typeof recordZone.draft>[0]
}): ReactElement {
  const person = usePerson()
  const record = useRecord()
  const { busy, fault, run } = useActing()
  const values = facts.steps.place.values
  return (
    <section className="stack" aria-labelledby="walk-zones">
      <h2 id="walk-zones">Zones</h2>
      <ul className="walk-zones">
        {state.zones.map((zone, at) => {
          const asked = plan.toRecord.find(({ id }) => id === `zone:${zone.order}`)
          const own = plan.pour.compaction?.zones[at]
          const recorded = values[`zone:${zone.order}`]
          const save = (): void => {
            if (asked === undefined || own === undefined) return
            const rows = zoneRows(walk, own.insertions)
            const input = { asked, zone: zone.order, rows, of: zone.of, reached: zone.reached }
            void run(async () => {
              for (const draft of recordZone.drafts(place, input)) await record.add(draft)
            })
          }
          return (
            <li key={zone.order}>
              <span>
                <strong>Zone {zone.order}</strong>: {zone.reached} of {zone.of} insertions
                {own === undefined ? '' : `, about ${fixed(own.minutes, 1)} min, ${fixed(own.volume, 2)} m³`}
                {recorded === undefined
                  ? ''
                  : `, recorded ${recorded.value === true ? 'as reached' : 'as not reached'}`}
              </span>
              {asked === undefined || !mayDo(person.role, 'value') ? null : (
                <Button disabled={busy || zone.reached === 0} onClick={save}>
                  {zone.done ? `Record zone ${zone.order}` : `Record zone ${zone.order} as not all reached`}
                </Button>
              )}
            </li>
          )
        })}
      </ul>
      {fault === null ? null : (
        <p role="alert" className="check-fault">
          {fault}
        </p>
      )}
    </section>
  )
}

/** Now, each quarter of a second while something runs, and when the page is looked at again. */
function useSeconds(running: boolean): number {
  const [now, setNow] = useState(() => Date.now())
  useEffect(() => {
    const tick = (): void => setNow(Date.now())
    tick()
    const timer = setInterval(tick, running ? 250 : 10_000)
    document.addEventListener('visibilitychange', tick)
    return () => {
      clearInterval(timer)
      document.removeEventListener('visibilitychange', tick)
    }
  }, [running])
  return now
}

/** Keeps the screen on while the vibrator is in, where the device lets a page do that. */
function useAwake(awake: boolean): void {
  useEffect(() => {
    if (!awake || !('wakeLock' in navigator)) return
    let lock: WakeLockSentinel | null = null
    let left = false
    navigator.wakeLock.request('screen').then(
      (held) => {
        if (left) void held.release()
        else lock = held
      },
      () => undefined,
    )
    return () => {
      left = true
      void lock?.release()
    }
  }, [awake])
}
