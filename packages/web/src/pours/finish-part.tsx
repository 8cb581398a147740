import './finish.css'
import '../strength/strength.css'
import type { Plan } from '@castwright/engine/plan'
import { type FinishNow, type PanelFacts, stepIsDone } from '@castwright/engine/steps'
import type { ReactElement } from 'react'
import { clockText } from '../day/day-window.ts'
import { AssumedList, Explain, Notice, Sheet } from '../look/index.ts'
import type { PanelPlace } from '../panel/acts/act.ts'
import { TimeChart } from '../strength/time-chart.tsx'
import { DryingPart } from './drying-part.tsx'
import { FinishStrip } from './finish-strip.tsx'
import { basisText, shiftText, windowAt } from './finish-words.ts'
import { SurfaceEntry } from './surface-entry.tsx'
import { useFinish } from './use-finish.ts'

const HOUR = 3_600_000

export interface FinishPartProps {
  readonly facts: PanelFacts
  readonly plan: Plan | null
  readonly place: PanelPlace
  readonly zone: string
  readonly now: Date
}

/** The fresh surface in time: what to do now, what comes next, each window with the sign to look for. */
export function SurfaceTimes({ facts, plan, zone, now }: Omit<FinishPartProps, 'place'>): ReactElement {
  const found = useFinish(facts, plan, now)
  if (found === null) return <p role="status">Computing …</p>
  const mixed = facts.cast === null ? null : Date.parse(facts.cast.at)
  const done = stepIsDone('finish', facts)
  const clock = (hour: number): string => clockText((mixed ?? 0) + hour * HOUR, zone)
  return (
    <Sheet title="Surface" level={2} note={done ? 'finished' : basisText(found, clock)}>
      <div className="stack">
        {mixed === null ? (
          <p>Not mixed yet: times stand here once the pour is entered.</p>
        ) : (
          <Times found={found} now={(now.getTime() - mixed) / HOUR} clock={clock} done={done} />
        )}
        {found.unknown.length === 0 || mixed === null ? null : (
          <Notice kind="unknown" title="Not known">
            {found.unknown.join('; ')}.
          </Notice>
        )}
        {found.windows.length === 0 ? null : (
          <Explain about="the windows of this surface" working={found.working}>
            <AssumedList assumed={found.assumed} />
          </Explain>
        )}
      </div>
    </Sheet>
  )
}

/** How the surface dries, what helps, and what was seen and read on it. */
export function SurfaceReadings({ facts, plan, place, zone, now }: FinishPartProps): ReactElement | null {
  const found = useFinish(facts, plan, now)
  if (found === null || facts.cast === null) return null
  const mixed = Date.parse(facts.cast.at)
  const clock = (hour: number): string => clockText(mixed + hour * HOUR, zone)
  return (
    <>
      <SurfaceEntry facts={facts} place={place} clock={clock} now={now} />
      {stepIsDone('finish', facts) ? null : (
        <>
          <DryingPart found={found} />
          <Water found={found} now={(now.getTime() - mixed) / HOUR} clock={clock} />
        </>
      )}
    </>
  )
}

/** Now, next, the strip, and each window in words. */
export function Times({
  found,
  now,
  clock,
  done,
  short = false,
}: {
  readonly found: FinishNow
  readonly now: number
  readonly clock: (hour: number) => string
  readonly done: boolean
  /** Without the list: for a page of several panels. */
  readonly short?: boolean
}): ReactElement {
  const { windows, finish } = found
  const here = windowAt(windows, now)
  const next = windows.find(({ from, to, id }) => from > now && to > from && id !== 'wait')
  const last = windows.at(-1)
  return (
    <>
      {done || windows.length === 0 ? null : (
        <dl className="finish-now-next">
          <div>
            <dt>Now</dt>
            <dd>{here?.what ?? (last !== undefined && now >= last.to ? 'Window shut' : 'Place it first')}</dd>
            {here === null || short ? null : <dd className="finish-sign">{here.sign}</dd>}
          </div>
          <div>
            <dt>Next</dt>
            <dd>{next === undefined ? 'cover and cure' : `${clock(next.from)} ${next.what}`}</dd>
          </div>
        </dl>
      )}
      {!done && last !== undefined && now >= last.to ? (
        <Notice kind="fail" title={`Initial set was computed for ${clock(last.to)}`}>
          Look at the surface: it decides. Where it still takes a print, record the print and the times move.
        </Notice>
      ) : null}
      <p className="finish-shift">{shiftText(found, clock)}</p>
      {windows.length === 0 ? (
        finish === null ? null : (
          <p>
            Planned power float {clock(finish.opens)} to {clock(finish.closes)}. The surface decides.
          </p>
        )
      ) : (
        <FinishStrip found={found} now={now} clock={clock} />
      )}
      {short || windows.length === 0 ? null : (
        <ol className="finish-list">
          {windows.map(({ id, from, to, low, high, what, sign }) => (
            <li
              key={id}
              className={now >= from && now < to && !done ? 'finish-item-now' : undefined}
              aria-current={now >= from && now < to && !done ? 'step' : undefined}
            >
              <span className="finish-time number">
                {clock(from)} to {clock(to)}
              </span>
              <span className="finish-what">
                <strong>{what}</strong>
                <span>{sign}</span>
                {high - low < 1 / 30 || from <= now ? null : (
                  <span className="quiet">
                    begins {clock(low)} to {clock(high)}
                  </span>
                )}
              </span>
            </li>
          ))}
        </ol>
      )}
    </>
  )
}

/** Bleed water against what dries off: they meet where the sheen goes. */
function Water({
  found,
  now,
  clock,
}: {
  readonly found: FinishNow
  readonly now: number
  readonly clock: (hour: number) => string
}): ReactElement | null {
  const { water, sheen } = found
  const dried = water.flatMap(({ hour, dried: mass }) => (mass === null ? [] : [[hour, mass] as const]))
  if (dried.length < 2) return null
  const end = dried.at(-1)?.[0] ?? 0
  const start = water[0]?.hour ?? 0
  return (
    <Sheet
      title="Bleed water against drying"
      level={3}
      note={
        typeof sheen === 'number'
          ? found.sheenSeen
            ? `The sheen was seen gone at ${clock(sheen)}: that counts, not where the lines meet.`
            : `The sheen goes where they meet, about ${clock(sheen)}.`
          : sheen === 'stays'
            ? 'More comes up than dries off: draw the water off, never work it in.'
            : 'Air, humidity or wind is missing for a part of the time.'
      }
    >
      <TimeChart
        title="Bleed water and dried-off water since placing, kg/m²"
        unit="kg/m²"
        from={0}
        lines={[
          {
            name: 'bled, by the model',
            look: 'second',
            points: water.filter(({ hour }) => hour <= end).map(({ hour, bled }) => [hour, bled]),
          },
          { name: 'dried off', look: 'main', points: dried },
        ]}
        marks={[
          ...(now > start && now < end ? [{ x: now, text: 'now', look: 'now' as const }] : []),
          ...(typeof sheen === 'number' && sheen > start && sheen < end
            ? [{ x: sheen, text: 'sheen gone', look: 'met' as const }]
            : []),
        ]}
        xText={clock}
      />
    </Sheet>
  )
}
