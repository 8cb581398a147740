import { type DueTest, meanOfTest } from '@castwright/engine/quality/specimens'
import { Link } from '@tanstack/react-router'
import { type FormEvent, type ReactElement, useState } from 'react'
import { announce, Button, Field, fixed, NumberField, readNumber } from '../look/index.ts'
import { useActing } from '../panel/acting.ts'
import { recordSpecimen } from '../panel/acts/record-specimen.ts'
import { mayDo } from '../panel/entitled.ts'
import { ageText } from '../panel/set-text.ts'
import { fieldTime, instantOf, whenText } from '../panel/when.ts'
import { usePerson, useRecord, useYardState } from '../record/index.ts'
import type { DueGroup } from './due-days.ts'

const HOUR = 3_600_000

/** Specimens of one set and age: when they are due, what they gave, and a field for each that is still to be tested. */
export function DueRow({
  group,
  zone,
  now,
}: {
  readonly group: DueGroup
  readonly zone: string
  readonly now: Date
}): ReactElement {
  const { first, tests } = group
  const { set, age, cured, due, within } = first
  return (
    <article className="due-row" data-state={first.state}>
      <header>
        <strong>
          {set.set}, {ageText(age)}
        </strong>
        <span className="due-when">{whenText(due, zone, now)}</span>
        <span className="field-note">
          {set.size === undefined ? '' : `${set.size} mm `}
          {set.kind}s {cured === 'panel' ? 'with the panel' : 'by the standard'}
          {set.docket === undefined ? '' : `, docket ${set.docket}`},{' '}
          {first.panels.map((panel, at) => (
            <span key={panel}>
              {at === 0 ? '' : ', '}
              <PanelLink panel={panel} />
            </span>
          ))}
        </span>
        {within === null ? null : (
          <span className="field-note">
            Between {whenText(within.from, zone, now)} and {whenText(within.to, zone, now)}.
          </span>
        )}
      </header>
      {tests.length > 1 && tests.every(({ result }) => result !== null) ? (
        <p className="due-mean">
          Mean{' '}
          <strong>{fixed(meanOfTest(tests.flatMap(({ result }) => result?.strength ?? [])), 1)} MPa</strong>
        </p>
      ) : null}
      <ul>
        {tests.map((test) => (
          <li key={test.specimen}>
            <Specimen test={test} zone={zone} now={now} />
          </li>
        ))}
      </ul>
    </article>
  )
}

function PanelLink({ panel }: { readonly panel: string }): ReactElement {
  const cut = panel.indexOf('/')
  const [job, mark] = [panel.slice(0, cut), panel.slice(cut + 1)]
  return (
    <Link to="/strength/$job/$mark" params={{ job, mark }}>
      {mark}
    </Link>
  )
}

function Specimen({
  test,
  zone,
  now,
}: {
  readonly test: DueTest
  readonly zone: string
  readonly now: Date
}): ReactElement {
  const person = usePerson()
  const [open, setOpen] = useState(false)
  const { specimen, result, missedBy } = test
  if (result !== null)
    return (
      <p className="due-done">
        <strong>{fixed(result.strength, 1)} MPa</strong> {specimen}, at {ageText(result.age)}
        {missedBy === null || missedBy === 0
          ? ''
          : `, ${fixed(Math.abs(missedBy), 1)} h too ${missedBy < 0 ? 'early' : 'late'}`}
      </p>
    )
  if (open) return <ResultForm test={test} zone={zone} now={now} onLeave={() => setOpen(false)} />
  return mayDo(person.role, 'specimen') ? (
    <Button look={test.state === 'coming' ? 'plain' : 'frame'} onClick={() => setOpen(true)}>
      Enter {specimen}
    </Button>
  ) : (
    <p className="due-done">{specimen}</p>
  )
}

/** One number and a button; the time of the test is now unless somebody says otherwise. */
function ResultForm({
  test,
  zone,
  now,
  onLeave,
}: {
  readonly test: DueTest
  readonly zone: string
  readonly now: Date
  readonly onLeave: () => void
}): ReactElement {
  const { panels } = useYardState()
  const record = useRecord()
  const { busy, fault, run } = useActing()
  const [strength, setStrength] = useState('')
  const [tested, setTested] = useState(() => fieldTime(now, zone))
  const [faults, setFaults] = useState<{ strength?: string; tested?: string }>({})
  const submit = (event: FormEvent): void => {
    event.preventDefault()
    const found = readNumber(strength)
    const at = instantOf(tested, zone)
    const poured = test.panels.flatMap((id) => panels.get(id) ?? [])
    const ages = poured.map(({ cast }) =>
      cast === null || at === null ? Number.NaN : (Date.parse(at) - Date.parse(cast.at)) / HOUR,
    )
    const wrong = {
      ...(found !== null && found > 0 ? {} : { strength: 'Type the strength, a number above 0.' }),
      ...(ages.length > 0 && ages.every((age) => age > 0)
        ? {}
        : { tested: 'Give a time after the pour. Its time of mixing must be on record.' }),
    }
    setFaults(wrong)
    if (Object.keys(wrong).length > 0 || found === null || busy) return
    void run(async () => {
      for (const [place, { job, mark, revision }] of poured.entries())
        await record.add(
          recordSpecimen.draft(
            { job, mark, revision, edition: null },
            {
              step: 'cure',
              specimen: test.specimen,
              kind: test.set.kind,
              age: ages[place] ?? Number.NaN,
              strength: found,
              cured: test.cured,
            },
          ),
        )
    }).then((ok) => {
      if (!ok) return
      announce(`${test.specimen}: ${found} MPa recorded`)
      onLeave()
    })
  }
  return (
    <form className="due-form" onSubmit={submit} noValidate>
      <NumberField
        label={`Strength of ${test.specimen}`}
        unit="MPa"
        value={strength}
        fault={faults.strength ?? fault}
        onText={setStrength}
        // Somebody tapped to type this number: the keyboard opens with the field.
        autoFocus
      />
      <Button look="main" type="submit" disabled={busy}>
        Record
      </Button>
      <Button look="plain" onClick={onLeave}>
        leave it
      </Button>
      <details className="explain" {...(faults.tested === undefined ? {} : { open: true })}>
        <summary>Tested now</summary>
        <Field
          label="Tested"
          type="datetime-local"
          value={tested}
          fault={faults.tested}
          onChange={(event) => setTested(event.currentTarget.value)}
        />
      </details>
    </form>
  )
}
