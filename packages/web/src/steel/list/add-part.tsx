import type { BarList } from '@castwright/documents/bar-list'
import type { FamilyId } from '@castwright/engine/codes'
import type { DrawnBar } from '@castwright/engine/panel'
import type { PanelFacts } from '@castwright/engine/steps'
import { Link } from '@tanstack/react-router'
import { type ReactElement, useMemo, useState } from 'react'
import { nextRevision } from '../../drawing/revision.ts'
import { announce, Button, CheckField, Field, Notice, SelectField } from '../../look/index.ts'
import { useActing } from '../../panel/acting.ts'
import { mayDo } from '../../panel/entitled.ts'
import { usePerson, useRecord, useYardState } from '../../record/index.ts'
import { type AddListInput, addList } from './acts/add-list.ts'

export interface AddPartProps {
  readonly code: FamilyId
  readonly list: BarList
  /** All bars; none where a row is wrong. */
  readonly whole: readonly DrawnBar[]
  /** Bars of the good rows. */
  readonly good: readonly DrawnBar[]
  /** Panel that the list names; empty where it names none. */
  readonly panel: string
}

type Existing = AddListInput['existing']

const EXISTING: readonly (readonly [Existing, string])[] = [
  ['refuse', 'is an error'],
  ['replace', 'gives way to the list'],
  ['keep', 'stays; its row is left out'],
]

/** The list into the drawing of a panel, all of it or, where somebody says so, its good rows. */
export function AddPart({ code, list, whole, good, panel }: AddPartProps): ReactElement | null {
  const { panels, yard } = useYardState()
  const person = usePerson()
  const record = useRecord()
  const { busy, fault: actFault, run } = useActing()
  const choices = useMemo(
    () =>
      [...panels.values()]
        .filter(({ drawing }) => drawing !== null && (drawing.code ?? yard.yard?.code) === code)
        .sort((a, b) => nameOf(a).localeCompare(nameOf(b), 'en', { numeric: true })),
    [panels, yard.yard, code],
  )
  const named = choices.filter((facts) => facts.mark === panel || nameOf(facts) === panel)
  const [chosen, setChosen] = useState(named.length === 1 && named[0] ? nameOf(named[0]) : '')
  const [revision, setRevision] = useState<string | null>(null)
  const [existing, setExisting] = useState<Existing>('refuse')
  const [takeGood, setTakeGood] = useState(false)
  const [said, setSaid] = useState<{ readonly field: string; readonly fault: string } | null>(null)
  const [added, setAdded] = useState<{ readonly facts: PanelFacts; readonly kept: readonly string[] } | null>(
    null,
  )
  const facts = panels.get(chosen)
  const bars = takeGood ? good : whole
  const given = revision ?? nextRevision(facts?.revision ?? null)
  if (!mayDo(person.role, 'drawing')) {
    return (
      <Notice kind="unknown" title="You can look, not record">
        Drawings are recorded by a lead or an engineer.
      </Notice>
    )
  }
  const save = (): void => {
    setAdded(null)
    if (facts === undefined) {
      setSaid({ field: 'panel', fault: 'Missing: the panel.' })
      return
    }
    const answer = addList.answer({ facts, bars, revision: given, family: code, existing })
    setSaid(answer.ok ? null : answer)
    if (!answer.ok) return
    void run(() => record.add(answer.draft)).then((ok) => {
      if (!ok) return
      setAdded({ facts, kept: answer.kept })
      setRevision(null)
      announce(`The list is in revision ${given} of ${facts.mark}`)
    })
  }
  const left = list.rows.filter(({ bar }) => bar === null).map(({ row }) => row)
  return (
    <section className="stack list-add" aria-label="Into a drawing">
      <h3>Into a drawing</h3>
      {list.errors.length === 0 || good.length === 0 ? null : (
        <div>
          <CheckField
            label={`Take the ${good.length} good ${good.length === 1 ? 'row' : 'rows'} and leave out ${rowsText(left)}`}
            checked={takeGood}
            onChange={({ currentTarget }) => setTakeGood(currentTarget.checked)}
          />
        </div>
      )}
      <div className="list-fields">
        <SelectField
          label="Drawing of"
          value={chosen}
          fault={said?.field === 'panel' ? said.fault : null}
          note={facts === undefined ? undefined : `Revision ${facts.revision ?? 'none'} is in force.`}
          onChange={({ currentTarget }) => {
            setChosen(currentTarget.value)
            setRevision(null)
            setSaid(null)
          }}
        >
          <option value="">choose a panel</option>
          {choices.map((each) => (
            <option key={nameOf(each)} value={nameOf(each)}>
              {each.mark}, {each.job}
            </option>
          ))}
        </SelectField>
        {facts === undefined ? null : (
          <Field
            label="New revision"
            value={given}
            fault={said?.field === 'revision' ? said.fault : null}
            onChange={({ currentTarget }) => setRevision(currentTarget.value)}
          />
        )}
        <SelectField
          label="A mark that is drawn already"
          value={existing}
          onChange={({ currentTarget: { value } }) =>
            setExisting(EXISTING.find(([each]) => each === value)?.[0] ?? 'refuse')
          }
        >
          {EXISTING.map(([each, words]) => (
            <option key={each} value={each}>
              {words}
            </option>
          ))}
        </SelectField>
      </div>
      {said !== null && said.field !== 'panel' && said.field !== 'revision' ? (
        <p role="alert" className="check-fault">
          {said.fault}
        </p>
      ) : null}
      {actFault === null ? null : (
        <p role="alert" className="check-fault">
          {actFault}
        </p>
      )}
      <Button look="main" wide shut={bars.length === 0 || busy} onClick={save}>
        {buttonText({ bars, facts, given, errors: list.errors.length })}
      </Button>
      {added === null ? null : (
        <p role="status">
          Recorded.
          {added.kept.length === 0
            ? ''
            : ` Left out, since the drawing has them: ${added.kept.slice(0, 20).join(', ')}${added.kept.length > 20 ? ` and ${added.kept.length - 20} more` : ''}.`}{' '}
          <Link to="/panel/$job/$mark" params={{ job: added.facts.job, mark: added.facts.mark }}>
            Open {added.facts.mark}
          </Link>
        </p>
      )}
    </section>
  )
}

function buttonText({
  bars,
  facts,
  given,
  errors,
}: {
  readonly bars: readonly DrawnBar[]
  readonly facts: PanelFacts | undefined
  readonly given: string
  readonly errors: number
}): string {
  if (bars.length === 0) {
    return errors === 0
      ? 'No bar in the list'
      : `Nothing is taken: ${errors} ${errors === 1 ? 'thing is' : 'things are'} wrong`
  }
  const marks = `${bars.length} ${bars.length === 1 ? 'bar mark' : 'bar marks'}`
  return facts === undefined
    ? `Choose a panel for ${marks}`
    : `Record revision ${given} of ${facts.mark} with ${marks}`
}

function nameOf({ job, mark }: PanelFacts): string {
  return `${job}/${mark}`
}

/** Example: `rows 3, 5, 8`. */
function rowsText(rows: readonly number[]): string {
  const shown = rows.slice(0, 12).join(', ')
  const more = rows.length > 12 ? ` and ${rows.length - 12} more` : ''
  return `${rows.length === 1 ? 'row' : 'rows'} ${shown}${more}`
}
