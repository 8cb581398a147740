import './panels.css'
import { panelStep, STEP_IDS, STEPS, type StepId } from '@castwright/engine/steps'
import { Link } from '@tanstack/react-router'
import { type ReactElement, useDeferredValue, useEffect, useMemo, useRef, useState } from 'react'
import { Button, Field, SelectField, Sheet, useTitle } from '../look/index.ts'
import { dayText, whenText } from '../panel/when.ts'
import { useNow, usePerson, useYardState } from '../record/index.ts'
import {
  choicesOf,
  filterRows,
  NO_FILTER,
  type RegisterFilter,
  type RegisterRow,
  registerRows,
  STANDINGS,
} from './register.ts'

/** Rows that are put on the page at a time; the next follow as the end comes into sight. */
const PAGE = 60

/** The register: every panel of the yard, found by mark, job, place, step and standing. */
export function PanelsScreen(): ReactElement {
  useTitle('Panels')
  const { panels, jobs, yard } = useYardState()
  const { role } = usePerson()
  const now = useNow(60_000)
  const [filter, setFilter] = useState<RegisterFilter>(NO_FILTER)
  const wanted = useDeferredValue(filter)
  const rows = useMemo(
    () => registerRows(panels.values(), (job, mark) => jobs.get(job)?.due[mark] ?? null),
    [panels, jobs],
  )
  const found = useMemo(() => filterRows(rows, wanted), [rows, wanted])
  const places = useMemo(() => choicesOf(rows, (row) => row.place), [rows])
  const jobNames = useMemo(() => choicesOf(rows, (row) => row.facts.job), [rows])
  const change = (part: Partial<RegisterFilter>): void => setFilter((before) => ({ ...before, ...part }))
  const may = role === 'lead' || role === 'engineer'
  const filtered = Object.values(filter).some((value) => value !== '')
  return (
    <div className="room stack">
      <div className="row panels-head">
        <h1>Panels</h1>
        {may ? (
          <Link className="button" to="/drawing/new">
            Enter a drawing
          </Link>
        ) : null}
      </div>
      <Sheet>
        <search>
          <form className="panels-filter" onSubmit={(event) => event.preventDefault()}>
            <Field
              label="Find"
              type="search"
              value={filter.search}
              placeholder="mark, job or place"
              onChange={(event) => change({ search: event.currentTarget.value })}
            />
            <Choice
              label="Standing"
              value={filter.standing}
              words={STANDINGS}
              onChoose={(standing) => change({ standing })}
            />
            <Choice
              label="Step"
              value={filter.step}
              words={STEP_IDS}
              name={(id) => panelStep(id as StepId).name}
              onChoose={(step) => change({ step })}
            />
            <Choice
              label="Place"
              value={filter.place}
              words={places}
              onChoose={(place) => change({ place })}
            />
            {jobNames.length > 1 ? (
              <Choice label="Job" value={filter.job} words={jobNames} onChoose={(job) => change({ job })} />
            ) : null}
          </form>
        </search>
      </Sheet>
      <div className="row">
        <p role="status">
          {found.length === rows.length
            ? `${rows.length} panels`
            : `${found.length} of ${rows.length} panels`}
        </p>
        {filtered ? (
          <Button look="plain" onClick={() => setFilter(NO_FILTER)}>
            Show all
          </Button>
        ) : null}
      </div>
      {rows.length === 0 ? (
        <Sheet
          title="No panel yet"
          note={
            may
              ? 'Enter a drawing, or bring in a file on the Yard page.'
              : 'A lead or an engineer brings in the first drawing.'
          }
        />
      ) : (
        <Register
          key={JSON.stringify(wanted)}
          rows={found}
          withJob={jobNames.length > 1}
          cast={(instant) => whenText(instant, yard.yard?.timezone ?? 'UTC', now)}
        />
      )}
    </div>
  )
}

function Choice({
  label,
  value,
  words,
  name = (word) => word,
  onChoose,
}: {
  readonly label: string
  readonly value: string
  readonly words: readonly string[]
  readonly name?: (word: string) => string
  readonly onChoose: (word: string) => void
}): ReactElement {
  return (
    <SelectField label={label} value={value} onChange={(event) => onChoose(event.currentTarget.value)}>
      <option value="">all</option>
      {words.map((word) => (
        <option key={word} value={word}>
          {name(word)}
        </option>
      ))}
    </SelectField>
  )
}

function Register({
  rows,
  withJob,
  cast,
}: {
  readonly rows: readonly RegisterRow[]
  readonly withJob: boolean
  readonly cast: (instant: string) => string
}): ReactElement {
  const [count, setCount] = useState(PAGE)
  const end = useRef<HTMLDivElement>(null)
  useEffect(() => {
    if (end.current === null || count >= rows.length) return
    const observer = new IntersectionObserver(
      ([entry]) => {
        if (entry?.isIntersecting) setCount((before) => before + PAGE)
      },
      { rootMargin: '800px' },
    )
    observer.observe(end.current)
    return () => observer.disconnect()
  }, [count, rows.length])
  if (rows.length === 0) return <p>No panel fits. Take a filter away.</p>
  return (
    <>
      <ul className="register">
        {rows.slice(0, count).map((row) => (
          <li key={`${row.facts.job}/${row.facts.mark}`}>
            <Line row={row} withJob={withJob} cast={cast} />
          </li>
        ))}
      </ul>
      {count < rows.length ? (
        <div ref={end}>
          <Button onClick={() => setCount(count + PAGE)}>Show more: {rows.length - count} left</Button>
        </div>
      ) : null}
    </>
  )
}

function Line({
  row,
  withJob,
  cast,
}: {
  readonly row: RegisterRow
  readonly withJob: boolean
  readonly cast: (instant: string) => string
}): ReactElement {
  const { facts, step, standing, place, due } = row
  const number = step === null ? STEPS.length : STEP_IDS.indexOf(step) + 1
  return (
    <Link
      className="register-line"
      to="/panel/$job/$mark"
      params={{ job: facts.job, mark: facts.mark }}
      search={{}}
    >
      <span className="register-mark">{facts.mark}</span>
      <span className="register-step">
        {step === null
          ? 'All steps done'
          : `Step ${number} of ${STEPS.length}: ${panelStep(step).name.toLowerCase()}`}
      </span>
      <span
        className={standing === 'defect open' || standing === 'waits at a hold' ? 'register-loud' : undefined}
      >
        {standing}
      </span>
      <span className="quiet">{place ?? 'no place yet'}</span>
      <span className="quiet">{facts.cast ? `cast ${cast(facts.cast.at)}` : 'not cast'}</span>
      <span className="quiet">
        {[withJob ? facts.job : null, due === null ? 'no day due' : `due ${dayText(due, { year: false })}`]
          .filter((part) => part !== null)
          .join(', ')}
      </span>
    </Link>
  )
}
