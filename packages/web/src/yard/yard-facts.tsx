import { inDate } from '@castwright/engine/steps'
import type { ReactElement } from 'react'
import { figure, Notice, Sheet, VerdictMark } from '../look/index.ts'
import { dayText } from '../panel/when.ts'
import { useNow, useYardState } from '../record/index.ts'
import { bedWords, coverWords } from './bed-words.ts'
import { agentWords, formWords, insertWords, riggingWords } from './gear-words.ts'

/** What the record knows of the yard: beds, mixes, gear with its dates, limits that an engineer entered. */
export function YardFactsSheet(): ReactElement {
  const { yard: facts } = useYardState()
  const now = useNow(60_000)
  const { yard } = facts
  if (yard === null) {
    return (
      <Sheet title="The yard">
        <Notice kind="unknown" title="No yard in the record">
          Bring in the yard’s file. Until then whatever needs it is not known.
        </Notice>
      </Sheet>
    )
  }
  const gear = [
    ...(yard.cranes ?? []).map(({ mark, due }) => ({ what: 'crane', mark, due })),
    ...(yard.rigging ?? []).map(({ mark, due }) => ({ what: 'rigging', mark, due })),
  ].map((one) => ({ ...one, due: latest(one.due, facts.gear[one.mark]?.due) }))
  const limits = Object.entries(facts.limits)
  return (
    <Sheet title={yard.name} note={`Code family ${yard.code}, time zone ${yard.timezone}`}>
      <div className="stack">
        <List title="Beds" items={(yard.beds ?? []).map(bedWords)} />
        <List title="Covers" items={(yard.covers ?? []).map((cover) => coverWords(cover, yard.covering))} />
        <List title="Side forms" items={(yard.forms ?? []).map(formWords)} />
        <List title="Release agents" items={(yard.agents ?? []).map(agentWords)} />
        <List
          title="Mixes"
          items={(yard.mixes ?? []).map(
            (mix) =>
              `${mix.mark}: ${figure(mix.strength)} MPa, ${mix.curve || mix.tests ? 'strength curve given' : 'no strength curve'}`,
          )}
        />
        <List title="Kinds of insert" items={(yard.insertKinds ?? []).map(insertWords)} />
        <List
          title="Straps and tie-downs of void formers"
          items={
            yard.strap === undefined
              ? []
              : [
                  `${figure(yard.strap.rated)} kN each${yard.strap.longest === undefined ? '' : `, at most ${figure(yard.strap.longest)} mm apart`}`,
                ]
          }
        />
        <List title="Rigging" items={(yard.rigging ?? []).map(riggingWords)} />
        {gear.length === 0 ? null : (
          <div>
            <h3>Gear</h3>
            <ul className="plain">
              {gear.map(({ what, mark, due }) => {
                const verdict = inDate({ due, now: now.toISOString(), timezone: yard.timezone })
                return (
                  <li key={`${what} ${mark}`} className="mark-line">
                    <VerdictMark verdict={verdict} />
                    <span>
                      {mark} ({what}): {due === null ? 'no date known' : `in date to ${dayText(due)}`}
                    </span>
                  </li>
                )
              })}
            </ul>
          </div>
        )}
        <List
          title="Limits entered for this yard"
          items={limits.map(
            ([check, limit]) =>
              `${check}: ${figure(limit.value)} ${limit.unit}, ${limit.standard} ${limit.edition}, entered by ${limit.by.name}`,
          )}
        />
      </div>
    </Sheet>
  )
}

function List({
  title,
  items,
}: {
  readonly title: string
  readonly items: readonly string[]
}): ReactElement | null {
  if (items.length === 0) return null
  return (
    <div>
      <h3>{title}</h3>
      <ul className="plain">
        {items.map((item) => (
          <li key={item}>{item}</li>
        ))}
      </ul>
    </div>
  )
}

function latest(a: string | undefined, b: string | undefined): string | null {
  if (a === undefined || b === undefined) return a ?? b ?? null
  return a > b ? a : b
}
