import { type ReactElement, useState } from 'react'
import { Field, NumberField, SelectField } from '../look/index.ts'
import { usePerson, usePlan, useRecord } from '../record/index.ts'
import { useActing } from './acting.ts'
import { recordSet } from './acts/record-set.ts'
import { mayDo } from './entitled.ts'
import { Extra } from './extra.tsx'
import { KeptWord } from './kept-word.tsx'
import { usePanelRoom } from './panel-context.ts'
import { type AgeText, ageText, emptySet, readSet, type SetFaults, type SetText } from './set-text.ts'
import { fieldTime, whenText } from './when.ts'

/** Specimens made from the load, with the ages at which they are to be tested. */
export function SetForm(): ReactElement {
  const { facts, place, state, zone, now } = usePanelRoom()
  const person = usePerson()
  const record = useRecord()
  const plan = usePlan(facts.job, facts.mark)
  const { busy, fault, run } = useActing()
  const sets = facts.sets ?? []
  const strip = plan.status === 'ready' ? plan.plan.cure.hourLow : null
  const docket = state.dockets.get(`${facts.job}/${facts.mark}`)?.at(-1)?.number ?? ''
  const fresh = (): SetText =>
    emptySet({ set: `${facts.mark}-S${sets.length + 1}`, made: fieldTime(now, zone), docket, strip })
  const [typed, setTyped] = useState<SetText | null>(null)
  const [faults, setFaults] = useState<SetFaults>({ ages: [] })
  const text = typed ?? fresh()
  const change = (part: Partial<SetText>): void => setTyped({ ...text, ...part })
  const changeAge = (at: number, part: Partial<AgeText>): void =>
    change({ ages: text.ages.map((each, place) => (place === at ? { ...each, ...part } : each)) })
  const submit = async (): Promise<boolean> => {
    const read = readSet(text, zone)
    setFaults(read.ok ? { ages: [] } : read.faults)
    if (!read.ok) return false
    const done = await run(() => record.add(recordSet.draft(place, read.set)))
    if (done) setTyped(null)
    return done
  }
  return (
    <Extra
      title="Specimens made"
      open="Enter specimens"
      button={recordSet.label}
      busy={busy}
      fault={fault ?? faults.all ?? null}
      onSubmit={submit}
      fields={
        mayDo(person.role, 'specimen-set') ? (
          <>
            <Field
              label="Mark of the set"
              note="Each specimen gets it with a number: write that on it."
              value={text.set}
              fault={faults.set}
              maxLength={40}
              autoComplete="off"
              onChange={(event) => change({ set: event.currentTarget.value })}
            />
            <SelectField
              label="Kind"
              value={text.kind}
              onChange={(event) => change({ kind: event.currentTarget.value as SetText['kind'] })}
            >
              <option value="cylinder">cylinders</option>
              <option value="cube">cubes</option>
            </SelectField>
            <NumberField
              label="Diameter or side"
              unit="mm"
              value={text.size}
              fault={faults.size}
              onText={(size) => change({ size })}
            />
            <Field
              label="Made"
              type="datetime-local"
              value={text.made}
              fault={faults.made}
              onChange={(event) => change({ made: event.currentTarget.value })}
            />
            <Field
              label="Docket of the load"
              value={text.docket}
              autoComplete="off"
              onChange={(event) => change({ docket: event.currentTarget.value })}
            />
            {text.ages.map((age, at) => (
              <fieldset key={age.name} className="set-age">
                <legend>{age.name}</legend>
                <NumberField
                  label="How many"
                  value={age.count}
                  fault={faults.ages[at]}
                  onText={(count) => changeAge(at, { count })}
                />
                <NumberField
                  label="Tested at"
                  unit={age.unit === 'h' ? 'h' : 'days'}
                  value={age.age}
                  onText={(typedAge) => changeAge(at, { age: typedAge })}
                />
                <SelectField
                  label="Cured"
                  value={age.cured}
                  onChange={(event) =>
                    changeAge(at, { cured: event.currentTarget.value as AgeText['cured'] })
                  }
                >
                  <option value="panel">with the panel</option>
                  <option value="standard">by the standard</option>
                </SelectField>
              </fieldset>
            ))}
          </>
        ) : null
      }
    >
      {sets.length === 0 ? (
        <p>None on record yet.</p>
      ) : (
        <ul className="plain-list">
          {sets.map((set) => (
            <li key={set.entry}>
              <strong>{set.set}</strong>, {set.kind}s made {whenText(set.made, zone, now)}:{' '}
              {set.tests
                .map(
                  ({ age, cured, specimens }) =>
                    `${specimens.length} at ${ageText(age)} ${cured === 'panel' ? 'with the panel' : 'by the standard'}`,
                )
                .join(', ')}
              , by {set.by.name}, <KeptWord entry={set.entry} />
            </li>
          ))}
        </ul>
      )}
    </Extra>
  )
}
