import { type ReactElement, useState } from 'react'
import { Field } from '../look/index.ts'
import { usePerson, useRecord } from '../record/index.ts'
import { useActing } from './acting.ts'
import { recordGear } from './acts/record-gear.ts'
import { Marks } from './cast-form.tsx'
import { mayDo } from './entitled.ts'
import { Extra } from './extra.tsx'
import { usePanelRoom } from './panel-context.ts'
import { dayText } from './when.ts'

/** Dates of rigging and cranes: out of date makes what hangs on them not known or fail. */
export function GearForm(): ReactElement | null {
  const { state } = usePanelRoom()
  const person = usePerson()
  const record = useRecord()
  const { busy, fault, run } = useActing()
  const [mark, setMark] = useState('')
  const [due, setDue] = useState('')
  const [what, setWhat] = useState('')
  const [faults, setFaults] = useState<{ mark?: string; due?: string }>({})
  const yard = state.yard.yard
  const gear = [...(yard?.rigging ?? []), ...(yard?.cranes ?? [])]
  if (gear.length === 0) return null
  const submit = async (): Promise<boolean> => {
    const wrong = {
      ...(mark === '' ? { mark: 'Choose the gear.' } : {}),
      ...(/^\d{4}-\d{2}-\d{2}$/.test(due) ? {} : { due: 'Give the day.' }),
    }
    setFaults(wrong)
    if (Object.keys(wrong).length > 0) return false
    return run(() => record.add(recordGear.draft({ mark, due, what })))
  }
  return (
    <Extra
      title="Rigging and cranes"
      open="Enter an inspection"
      button={recordGear.label}
      busy={busy}
      fault={fault}
      onSubmit={submit}
      fields={
        mayDo(person.role, 'gear') ? (
          <>
            <Marks label="Gear" value={mark} marks={gear} fault={faults.mark} onMark={setMark} />
            <Field
              label="In date up to and with"
              type="date"
              value={due}
              fault={faults.due}
              onChange={(event) => setDue(event.currentTarget.value)}
            />
            <Field
              label="Inspected by, ticket"
              value={what}
              maxLength={200}
              autoComplete="off"
              onChange={(event) => setWhat(event.currentTarget.value)}
            />
          </>
        ) : null
      }
    >
      <ul className="plain-list">
        {gear.map((piece) => (
          <li key={piece.mark}>
            {piece.mark}: {dueText(state.yard.gear[piece.mark]?.due ?? piece.due)}
          </li>
        ))}
      </ul>
    </Extra>
  )
}

function dueText(due: string | undefined): string {
  if (due === undefined) return 'date not known'
  return `in date up to ${dayText(due)}`
}
