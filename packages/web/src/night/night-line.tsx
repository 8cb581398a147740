import './night.css'
import type { Plan } from '@castwright/engine/plan'
import type { PanelFacts } from '@castwright/engine/steps'
import { Link } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { Sheet } from '../look/index.ts'
import { type PanelNight, useNight } from '../record/index.ts'
import { hourText, nightSentence } from './night-words.ts'

const HOUR = 3_600_000

/** What the night of a panel comes to, in words; why it is not known, where it is not. */
export function nightText(
  facts: PanelFacts,
  { state }: PanelNight,
  { zone, now }: { readonly zone: string; readonly now: Date },
): string | null {
  if (facts.cast === null) return null
  const mixed = Date.parse(facts.cast.at)
  if (state.status === 'computing') return 'Computing the night …'
  if (state.status === 'none') return `Night not known: ${state.gaps[0] ?? ''}`
  return nightSentence(state.night, hourText({ mixed, zone, now }), (now.getTime() - mixed) / HOUR)
}

/** The night of one panel that was just cast, leading to its curves. */
export function NightLine({
  facts,
  plan,
  zone,
  now,
}: {
  readonly facts: PanelFacts
  readonly plan: Plan | null
  readonly zone: string
  readonly now: Date
}): ReactElement {
  const night = useNight(facts, plan)
  return (
    <p>
      <Link to="/strength/$job/$mark" params={{ job: facts.job, mark: facts.mark }}>
        The night
      </Link>
      : {nightText(facts, night, { zone, now })}
    </p>
  )
}

/** The nights of some panels as a list, each leading to its curves. */
export function NightList({
  panels,
  nights,
  zone,
  now,
}: {
  readonly panels: readonly PanelFacts[]
  readonly nights: readonly PanelNight[]
  readonly zone: string
  readonly now: Date
}): ReactElement | null {
  if (panels.length === 0) return null
  return (
    <Sheet title="The night ahead" note="Computed from mix, mould, cover and weather.">
      <ul className="night-lines">
        {panels.map((facts, at) => (
          <li key={`${facts.job}/${facts.mark}`}>
            <Link to="/strength/$job/$mark" params={{ job: facts.job, mark: facts.mark }}>
              {facts.mark}
              {facts.cast?.bed ? `, bed ${facts.cast.bed}` : ''}
            </Link>
            : {nightText(facts, nights[at] ?? { of: null, state: { status: 'computing' } }, { zone, now })}
          </li>
        ))}
      </ul>
    </Sheet>
  )
}
