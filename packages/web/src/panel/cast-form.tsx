import { type ReactElement, useState } from 'react'
import { Field, SelectField } from '../look/index.ts'
import { usePerson, useRecord } from '../record/index.ts'
import { useActing } from './acting.ts'
import { recordCast } from './acts/record-cast.ts'
import { mayDo } from './entitled.ts'
import { Extra } from './extra.tsx'
import { KeptWord } from './kept-word.tsx'
import { usePanelRoom } from './panel-context.ts'
import { fieldTime, instantOf, whenText } from './when.ts'

/** When the concrete was mixed, on which bed, of which mix. */
export function CastForm(): ReactElement {
  const { facts, place, state, zone, now } = usePanelRoom()
  const person = usePerson()
  const record = useRecord()
  const { busy, fault, run } = useActing()
  const yard = state.yard.yard
  const [at, setAt] = useState(() => fieldTime(now, zone))
  const [bed, setBed] = useState(facts.cast?.bed ?? '')
  const [mix, setMix] = useState(facts.cast?.mix ?? '')
  const [reason, setReason] = useState('')
  const [timeFault, setTimeFault] = useState<string | null>(null)
  const [reasonFault, setReasonFault] = useState<string | null>(null)
  const earlier = facts.cast
  const submit = async (): Promise<boolean> => {
    const instant = instantOf(at, zone)
    const late = instant !== null && Date.parse(instant) > now.getTime() + 120_000
    setTimeFault(
      instant === null ? 'Give day and time of mixing.' : late ? 'This time is still to come.' : null,
    )
    const unsaid = earlier !== null && reason.trim() === ''
    setReasonFault(unsaid ? 'Write the reason: the old value stays in the record.' : null)
    if (instant === null || late || unsaid) return false
    return run(() =>
      record.add(
        recordCast.draft(place, {
          at: instant,
          bed: bed === '' ? null : bed,
          mix: mix === '' ? null : mix,
          ...(earlier === null ? {} : { about: earlier.entry, reason: reason.trim() }),
        }),
      ),
    )
  }
  return (
    <Extra
      title="The pour"
      open={earlier === null ? 'Enter the pour' : 'Correct the pour'}
      button={earlier === null ? recordCast.label : 'Record the correction'}
      busy={busy}
      fault={fault}
      onSubmit={submit}
      fields={
        mayDo(person.role, 'cast') ? (
          <>
            <Field
              label="Water met cement"
              type="datetime-local"
              value={at}
              fault={timeFault}
              note="All hours count from here."
              onChange={(event) => setAt(event.currentTarget.value)}
            />
            <Marks label="Bed" value={bed} marks={yard?.beds} onMark={setBed} />
            <Marks label="Mix" value={mix} marks={yard?.mixes} onMark={setMix} />
            {earlier === null ? null : (
              <Field
                label="Why it is corrected"
                value={reason}
                fault={reasonFault}
                autoComplete="off"
                onChange={(event) => setReason(event.currentTarget.value)}
              />
            )}
          </>
        ) : null
      }
    >
      <p>
        {earlier === null
          ? 'Not on record yet: hours, strength and setting are not known without it.'
          : `Mixed ${whenText(earlier.at, zone, now)}, bed ${earlier.bed ?? 'not given'}, mix ${earlier.mix ?? 'not given'}. `}
        {earlier === null ? null : <KeptWord entry={earlier.entry} />}
      </p>
    </Extra>
  )
}

interface MarksProps {
  readonly label: string
  readonly value: string
  readonly marks: readonly { readonly mark: string }[] | undefined
  readonly fault?: string | undefined
  readonly onMark: (mark: string) => void
}

/** One of the yard's marks, or typed where the yard lists none. */
export function Marks({ label, value, marks, fault, onMark }: MarksProps): ReactElement {
  if (!marks || marks.length === 0) {
    return (
      <Field
        label={label}
        value={value}
        autoComplete="off"
        maxLength={40}
        onChange={(event) => onMark(event.currentTarget.value)}
      />
    )
  }
  return (
    <SelectField
      label={label}
      value={value}
      fault={fault}
      onChange={(event) => onMark(event.currentTarget.value)}
    >
      <option value="">not given</option>
      {marks.map(({ mark }) => (
        <option key={mark} value={mark}>
          {mark}
        </option>
      ))}
    </SelectField>
  )
}
