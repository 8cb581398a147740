import type { CardRow } from '@castwright/engine/steps'
import { type FormEvent, type ReactElement, useState } from 'react'
import { Button, Field, NumberField, readNumber } from '../look/index.ts'
import { useRecord, useSnapshot } from '../record/index.ts'
import { useActing } from './acting.ts'
import { enterLimit } from './acts/enter-limit.ts'

export interface LimitFormProps {
  readonly row: CardRow
  readonly limitKey: string
  readonly onLeave: () => void
}

/** A limit with its source, entered by an engineer for the yard. */
export function LimitForm({ row, limitKey, onLeave }: LimitFormProps): ReactElement {
  const record = useRecord()
  const { session } = useSnapshot()
  const { busy, fault, run } = useActing()
  const [value, setValue] = useState('')
  const [standard, setStandard] = useState('')
  const [edition, setEdition] = useState('')
  const [faults, setFaults] = useState<{ value?: string; standard?: string; edition?: string }>({})
  const submit = (event: FormEvent): void => {
    event.preventDefault()
    const found = readNumber(value)
    const yard = session?.yard ?? null
    const wrong = {
      ...(found === null ? { value: 'Type the limit, a number.' } : {}),
      ...(standard.trim() === '' ? { standard: 'Name the standard or paper that it is from.' } : {}),
      ...(edition.trim() === '' ? { edition: 'Name edition and clause.' } : {}),
    }
    setFaults(wrong)
    if (Object.keys(wrong).length > 0 || found === null || yard === null || busy) return
    const input = {
      yard,
      key: limitKey,
      value: found,
      unit: row.unit,
      standard: standard.trim(),
      edition: edition.trim(),
    }
    void run(() => record.add(enterLimit.draft(input))).then((ok) => ok && onLeave())
  }
  return (
    <form className="answer correction" onSubmit={submit} noValidate>
      <p className="check-note">It counts for the whole yard, and each use shows who entered it.</p>
      <NumberField label="Limit" unit={row.unit} value={value} fault={faults.value} onText={setValue} />
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
        fault={faults.edition ?? fault}
        autoComplete="off"
        onChange={(event) => setEdition(event.currentTarget.value)}
      />
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
