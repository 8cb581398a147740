import '../panels/panels.css'
import './lifts.css'
import type { PanelFacts } from '@castwright/engine/steps'
import { Link } from '@tanstack/react-router'
import { type ReactElement, useMemo, useState } from 'react'
import { Button, SelectField, Sheet, useTitle, VerdictMark } from '../look/index.ts'
import { type RegisterRow, registerRows } from '../panels/register.ts'
import { type PlanState, useNow, usePlans, useYardState } from '../record/index.ts'
import { isLifted, type LiftLine, liftLine } from './lift-list.ts'

/** Panels that are put on the page, and planned, at a time. */
const PAGE = 40

/** Every panel with how it stands for its first lift; those still to be lifted first. */
export function LiftsScreen(): ReactElement {
  useTitle('Lifts')
  const { panels, jobs } = useYardState()
  const [which, setWhich] = useState<'open' | 'all'>('open')
  const [count, setCount] = useState(PAGE)
  const all = useMemo(
    () =>
      registerRows(panels.values(), (job, mark) => jobs.get(job)?.due[mark] ?? null).filter(
        ({ facts }) => facts.drawing !== null,
      ),
    [panels, jobs],
  )
  const rows = useMemo(
    () => (which === 'all' ? all : all.filter(({ facts }) => !isLifted(facts))),
    [all, which],
  )
  const shown = rows.slice(0, count)
  return (
    <div className="room stack">
      <h1>Lifts</h1>
      <div className="row lifts-choice">
        <SelectField
          label="Panels"
          value={which}
          onChange={(event) => setWhich(event.currentTarget.value === 'all' ? 'all' : 'open')}
        >
          <option value="open">before their first lift</option>
          <option value="all">all</option>
        </SelectField>
        <p role="status">
          {rows.length} of {all.length} panels
        </p>
      </div>
      {rows.length === 0 ? (
        <Sheet
          title={all.length === 0 ? 'No panel yet' : 'All are lifted'}
          note={
            all.length === 0
              ? 'A panel stands here as soon as its drawing is recorded.'
              : 'Choose all to look at their lifts.'
          }
        />
      ) : (
        <List rows={shown} />
      )}
      {count < rows.length ? (
        <div>
          <Button onClick={() => setCount(count + PAGE)}>Show more: {rows.length - count} left</Button>
        </div>
      ) : null}
    </div>
  )
}

function List({ rows }: { readonly rows: readonly RegisterRow[] }): ReactElement {
  const { yard } = useYardState()
  const panels = useMemo(() => rows.map(({ facts }) => facts), [rows])
  const plans = usePlans(panels)
  const minute = useNow(60_000).toISOString().slice(0, 16)
  const lines = useMemo(
    () =>
      rows.map(({ facts }, i) => {
        const plan = plans[i]
        return plan?.status === 'ready'
          ? liftLine({ facts, plan: plan.plan, yard, now: `${minute}:00.000Z` })
          : null
      }),
    [rows, plans, yard, minute],
  )
  return (
    <ul className="register">
      {rows.map((row, i) => (
        <li key={`${row.facts.job}/${row.facts.mark}`}>
          <Line row={row} line={lines[i] ?? null} plan={plans[i]} />
        </li>
      ))}
    </ul>
  )
}

function Line({
  row,
  line,
  plan,
}: {
  readonly row: RegisterRow
  readonly line: LiftLine | null
  readonly plan: PlanState | undefined
}): ReactElement {
  const { facts, place } = row
  return (
    <Link className="lifts-line" to="/lifts/$job/$mark" params={{ job: facts.job, mark: facts.mark }}>
      <span className="lifts-mark">{facts.mark}</span>
      <span>{insertsText(facts)}</span>
      <span className="lifts-state">
        {line === null ? (
          <span className="quiet">{plan?.status === 'none' ? plan.why : 'computing …'}</span>
        ) : (
          <>
            <VerdictMark verdict={line.verdict} size={20} withWord />
            <span>{line.text}</span>
          </>
        )}
      </span>
      <span className="quiet">{isLifted(facts) ? 'lifted' : (place ?? 'no place yet')}</span>
    </Link>
  )
}

function insertsText({ drawing }: PanelFacts): string {
  const inserts = drawing?.inserts ?? []
  if (inserts.length === 0) return 'no inserts'
  const face = inserts.filter(({ kind }) => kind === 'face').length
  const parts = [
    face > 0 ? `${face} in the face` : null,
    inserts.length > face ? `${inserts.length - face} in an edge` : null,
  ].filter((part) => part !== null)
  return parts.join(', ')
}
