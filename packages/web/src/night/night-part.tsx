import './night.css'
import type { NightCase, NightChange, NightNow } from '@castwright/engine/cure/night'
import type { PanelFacts } from '@castwright/engine/steps'
import { Link } from '@tanstack/react-router'
import { type ReactElement, useState } from 'react'
import { Explain, figure, Notice, Sheet, VERDICT_WORD, VerdictMark } from '../look/index.ts'
import { type PanelNight, useNow, useTriedNight, useYardState } from '../record/index.ts'
import { NightChart } from './night-chart.tsx'
import { NightTrial } from './night-trial.tsx'
import { comparedText, type HourText, hourText, nightSentence } from './night-words.ts'

const HOUR = 3_600_000

/** A panel's computed night: what it comes to, its curves, what the log says against it, and what could be tried. */
export function NightPart({
  facts,
  night,
  onCard = false,
}: {
  readonly facts: PanelFacts
  readonly night: PanelNight
  /** The card of the cure has the findings among its rows. */
  readonly onCard?: boolean
}): ReactElement | null {
  const { yard } = useYardState()
  const now = useNow(60_000)
  if (facts.cast === null) return null
  const mixed = Date.parse(facts.cast.at)
  const zone = yard.yard?.timezone ?? 'UTC'
  const when = hourText({ mixed, zone, now })
  const { of, state } = night
  return (
    <Sheet
      title="The night, computed"
      level={onCard ? 3 : 2}
      note="Heat of the mix, mould, cover and weather. An estimate beside the log: what is logged counts before it."
    >
      {state.status === 'computing' ? (
        <p role="status">Computing the night …</p>
      ) : state.status === 'none' || of === null ? (
        <NotKnown gaps={state.status === 'none' ? state.gaps : []} />
      ) : (
        <Known
          facts={facts}
          of={of}
          night={state.night}
          mixed={mixed}
          age={(now.getTime() - mixed) / HOUR}
          zone={zone}
          when={when}
          onCard={onCard}
        />
      )}
    </Sheet>
  )
}

function NotKnown({ gaps }: { readonly gaps: readonly string[] }): ReactElement {
  return (
    <Notice kind="unknown" title="The night is not known">
      <ul className="plain-list">
        {gaps.map((gap) => (
          <li key={gap}>{gap}</li>
        ))}
      </ul>
      {gaps.some((gap) => gap.startsWith('weather')) ? (
        <Link to="/weather" className="button">
          Bring in the weather
        </Link>
      ) : null}
    </Notice>
  )
}

function Known({
  facts,
  of,
  night,
  mixed,
  age,
  zone,
  when,
  onCard,
}: {
  readonly facts: PanelFacts
  readonly of: NightCase
  readonly night: NightNow
  readonly mixed: number
  readonly age: number
  readonly zone: string
  readonly when: HourText
  readonly onCard: boolean
}): ReactElement {
  const [change, setChange] = useState<NightChange | null>(null)
  const tried = useTriedNight(of, change)
  const shown = tried?.status === 'ready' ? tried.night : night
  const trying = tried?.status === 'ready'
  return (
    <div className="stack">
      {trying ? (
        <Notice title="Tried, not recorded">
          <p className="night-sentence" role="status">
            {nightSentence(shown, when, age)}
          </p>
          <p>As it is: {nightSentence(night, when, age)}</p>
        </Notice>
      ) : (
        <p className="night-sentence" role="status">
          {nightSentence(night, when, age)}
        </p>
      )}
      {tried?.status === 'none' ? (
        <p role="alert" className="check-fault">
          {tried.gaps.join('; ')}
        </p>
      ) : null}
      <NightChart
        mark={facts.mark}
        night={shown}
        before={trying ? night : null}
        logs={of.logs}
        mixed={mixed}
        age={age}
        zone={zone}
        when={when}
      />
      {onCard ? null : <Findings night={shown} when={when} />}
      <ul className="night-lines">
        {night.compared.map((each) => (
          <li key={each.channel}>{comparedText(each, when)}</li>
        ))}
      </ul>
      <details className="explain no-print">
        <summary>Try another cover, hour or heating</summary>
        <div className="explain-body">
          <NightTrial of={of} mixed={mixed} onChange={setChange} />
        </div>
      </details>
      <Explain
        about="the computed night"
        working={shown.working}
        assumed={shown.assumed}
        word="How, and what is assumed"
      />
    </div>
  )
}

/** Rows as on the cure card, in short. */
function Findings({ night, when }: { readonly night: NightNow; readonly when: HourText }): ReactElement {
  return (
    <ul className="night-lines">
      {night.checks.map(({ id, what, verdict, demand, limit, unit, sense, unknown }) => (
        <li key={id} className="mark-line">
          <VerdictMark verdict={verdict} silent />
          <span>
            {what}: {figure(demand, 3)}
            {demand === null ? '' : ` ${unit}`}
            {limit === null ? '' : `, ${sense} ${figure(limit)} ${unit}`}: {VERDICT_WORD[verdict]}
            {verdict === 'unknown' ? `, ${gapText(unknown ?? [], what)}` : ''}
          </span>
        </li>
      ))}
      {night.coverOff === null ? null : (
        <li>
          {night.coverOff === 0
            ? 'The face stays within the limit to the air all the time.'
            : `From ${when(night.coverOff)} on the face stays within the limit to the air.`}
        </li>
      )}
    </ul>
  )
}

/** What is missing, without the name of the row that stands before it. */
function gapText(gaps: readonly string[], what: string): string {
  return gaps.map((gap) => gap.replace(`${what}: `, '')).join('; ')
}
