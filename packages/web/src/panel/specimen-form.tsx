import type { PanelFacts, StepId } from '@castwright/engine/steps'
import { shown } from '@castwright/engine/working'
import { type ReactElement, useState } from 'react'
import { Field, Notice, NumberField, readNumber, SelectField } from '../look/index.ts'
import { usePerson, useRecord } from '../record/index.ts'
import { useActing } from './acting.ts'
import { recordSpecimen, type SpecimenInput } from './acts/record-specimen.ts'
import { mayDo } from './entitled.ts'
import { Extra } from './extra.tsx'
import { KeptWord } from './kept-word.tsx'
import { usePanelRoom } from './panel-context.ts'
import { ageText } from './set-text.ts'
import { fieldTime, instantOf } from './when.ts'

/** Cylinder, cube or probe results of this pour. */
export function SpecimenForm({ step }: { readonly step: StepId }): ReactElement {
  const { facts, place, zone, now } = usePanelRoom()
  const person = usePerson()
  const record = useRecord()
  const { busy, fault, run } = useActing()
  const [specimen, setSpecimen] = useState('')
  const [kind, setKind] = useState<SpecimenInput['kind']>('cylinder')
  const [cured, setCured] = useState<'panel' | 'standard'>('panel')
  const [tested, setTested] = useState(() => fieldTime(now, zone))
  const [strength, setStrength] = useState('')
  const [faults, setFaults] = useState<{ specimen?: string; tested?: string; strength?: string }>({})
  const { cast } = facts
  const waiting = untested(facts)
  const choose = (mark: string): void => {
    const found = waiting.find((each) => each.mark === mark)
    setSpecimen(found?.mark ?? '')
    if (found === undefined) return
    setKind(found.kind)
    setCured(found.cured)
  }
  const submit = async (): Promise<boolean> => {
    const at = instantOf(tested, zone)
    const age = at === null || cast === null ? null : (Date.parse(at) - Date.parse(cast.at)) / 3_600_000
    const found = readNumber(strength)
    const wrong = {
      ...(specimen.trim() === '' ? { specimen: 'Type the mark of the specimen.' } : {}),
      ...(age !== null && age > 0 ? {} : { tested: 'Give day and time of the test, after mixing.' }),
      ...(found !== null && found > 0 ? {} : { strength: 'Type the strength, a number above 0.' }),
    }
    setFaults(wrong)
    if (Object.keys(wrong).length > 0 || age === null || found === null) return false
    const done = await run(() =>
      record.add(
        recordSpecimen.draft(place, {
          step,
          specimen: specimen.trim(),
          kind,
          age,
          strength: found,
          ...(kind === 'probe' ? {} : { cured }),
        }),
      ),
    )
    if (done) {
      setSpecimen('')
      setStrength('')
    }
    return done
  }
  return (
    <Extra
      title="Test results of this pour"
      open="Enter a result"
      button={recordSpecimen.label}
      busy={busy}
      fault={fault}
      onSubmit={submit}
      fields={
        !mayDo(person.role, 'specimen') ? null : cast === null ? (
          <Notice kind="unknown" title="The pour is not on record">
            Enter when the concrete was mixed first: the age of a test counts from there.
          </Notice>
        ) : (
          <>
            {waiting.length === 0 ? null : (
              <SelectField
                label="Made for a test"
                value={waiting.some(({ mark }) => mark === specimen) ? specimen : ''}
                onChange={(event) => choose(event.currentTarget.value)}
              >
                <option value="">another</option>
                {waiting.map(({ mark, words }) => (
                  <option key={mark} value={mark}>
                    {words}
                  </option>
                ))}
              </SelectField>
            )}
            <Field
              label="Specimen"
              value={specimen}
              fault={faults.specimen}
              maxLength={40}
              autoComplete="off"
              onChange={(event) => setSpecimen(event.currentTarget.value)}
            />
            <SelectField
              label="Kind"
              value={kind}
              onChange={(event) => setKind(event.currentTarget.value as SpecimenInput['kind'])}
            >
              <option value="cylinder">cylinder</option>
              <option value="cube">cube</option>
              <option value="probe">probe in the panel</option>
            </SelectField>
            {kind === 'probe' ? null : (
              <SelectField
                label="Cured"
                value={cured}
                note="What was cured by the standard does not count at the strip hold."
                onChange={(event) => setCured(event.currentTarget.value as typeof cured)}
              >
                <option value="panel">with the panel</option>
                <option value="standard">by the standard</option>
              </SelectField>
            )}
            <Field
              label="Tested"
              type="datetime-local"
              value={tested}
              fault={faults.tested}
              onChange={(event) => setTested(event.currentTarget.value)}
            />
            <NumberField
              label="Strength"
              unit="MPa"
              value={strength}
              fault={faults.strength}
              onText={setStrength}
            />
          </>
        )
      }
    >
      {facts.specimens.length === 0 ? (
        <p>None on record yet.</p>
      ) : (
        <ul className="plain-list">
          {facts.specimens.map((result) => (
            <li key={result.entry}>
              <strong>{shown(result.strength, 'MPa')}</strong> measured, {result.kind} {result.specimen} at{' '}
              {shown(result.age, 'h')}
              {result.cured === 'standard' ? ', cured by the standard' : ''}, by {result.by.name},{' '}
              <KeptWord entry={result.entry} />
            </li>
          ))}
        </ul>
      )}
    </Extra>
  )
}

/** Specimens of the panel's sets that have no result yet, in the order of their ages. */
function untested({ sets = [], specimens }: PanelFacts) {
  const tested = new Set(specimens.map(({ specimen }) => specimen))
  return sets
    .flatMap(({ kind, tests }) =>
      tests.flatMap(({ age, cured, specimens: marks }) =>
        marks.map((mark) => ({ mark, kind, cured, age, words: `${mark}, ${kind} for ${ageText(age)}` })),
      ),
    )
    .filter(({ mark }) => !tested.has(mark))
    .sort((a, b) => a.age - b.age)
}
