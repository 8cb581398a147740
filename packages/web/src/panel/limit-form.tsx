import { type FormEvent, type ReactElement, useState } from 'react'
import { Button, Field, NumberField, readNumber, SelectField } from '../look/index.ts'
import { useRecord, useSnapshot } from '../record/index.ts'
import { useActing } from './acting.ts'
import { enterLimit } from './acts/enter-limit.ts'
import type { LimitAsk } from './limit-key.ts'

export interface LimitFormProps {
  /** What may be entered at this row, at least one. */
  readonly asks: readonly [LimitAsk, ...LimitAsk[]]
  readonly onLeave: () => void
}

interface Faults {
  readonly value?: string
  readonly standard?: string
  readonly edition?: string
  readonly reason?: string
}

/** A limit or a factor with its source, entered by an engineer for the yard. */
export function LimitForm({ asks, onLeave }: LimitFormProps): ReactElement {
  const record = useRecord()
  const { session } = useSnapshot()
  const { busy, fault, run } = useActing()
  const [key, setKey] = useState(asks[0].key)
  const [value, setValue] = useState('')
  const [standard, setStandard] = useState('')
  const [edition, setEdition] = useState('')
  const [reason, setReason] = useState('')
  const [faults, setFaults] = useState<Faults>({})
  const ask = asks.find((each) => each.key === key) ?? asks[0]
  const submit = (event: FormEvent): void => {
    event.preventDefault()
    const found = readNumber(value)
    const yard = session?.yard ?? null
    const wrong: Faults = {
      ...(found === null ? { value: 'Type the value, a number.' } : {}),
      ...(found !== null && ask.reasoned && !(found > 0) ? { value: 'Type a number above 0.' } : {}),
      ...(standard.trim() === '' ? { standard: 'Name the standard or paper that it is from.' } : {}),
      ...(edition.trim() === '' ? { edition: 'Name edition and clause.' } : {}),
      ...(ask.reasoned && reason.trim() === ''
        ? { reason: 'Write the reason: it stands in the record with your name.' }
        : {}),
    }
    setFaults(wrong)
    if (Object.keys(wrong).length > 0 || found === null || yard === null || busy) return
    const input = {
      yard,
      key: ask.key,
      value: found,
      unit: ask.unit,
      standard: standard.trim(),
      edition: edition.trim(),
      reason: reason.trim(),
    }
    void run(() => record.add(enterLimit.draft(input))).then((ok) => ok && onLeave())
  }
  return (
    <form className="answer correction" onSubmit={submit} noValidate>
      <p className="check-note">
        It counts for the whole yard, and each use shows who entered it. {ask.note}
      </p>
      {asks.length > 1 ? (
        <SelectField
          label="What is entered"
          value={ask.key}
          onChange={(event) => setKey(event.currentTarget.value)}
        >
          {asks.map((each) => (
            <option key={each.key} value={each.key}>
              {each.label}
            </option>
          ))}
        </SelectField>
      ) : null}
      <NumberField label={ask.label} unit={ask.unit} value={value} fault={faults.value} onText={setValue} />
      <Field
        label="Standard or paper"
        value={standard}
        fault={faults.standard}
        autoComplete="off"
        onChange={(event) => setStandard(event.currentTarget.value)}
      />
      <Field
        label="Edition and clause"
        value={edition}
        fault={faults.edition ?? (ask.reasoned ? null : fault)}
        autoComplete="off"
        onChange={(event) => setEdition(event.currentTarget.value)}
      />
      {ask.reasoned ? (
        <Field
          label="Reason"
          value={reason}
          fault={faults.reason ?? fault}
          autoComplete="off"
          onChange={(event) => setReason(event.currentTarget.value)}
        />
      ) : null}
      <div className="row">
        <Button type="submit" disabled={busy}>
          {enterLimit.label}
        </Button>
        <Button look="plain" onClick={onLeave}>
          leave it
        </Button>
      </div>
    </form>
  )
}
