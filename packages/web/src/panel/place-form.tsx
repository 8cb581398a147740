import type { StepId } from '@castwright/engine/steps'
import { type ReactElement, useState } from 'react'
import { Field } from '../look/index.ts'
import { usePerson, useRecord } from '../record/index.ts'
import { useActing } from './acting.ts'
import { movePanel } from './acts/move-panel.ts'
import { mayDo } from './entitled.ts'
import { Extra } from './extra.tsx'
import { usePanelRoom } from './panel-context.ts'

/** Where the panel stands. */
export function PlaceForm({ step }: { readonly step: StepId }): ReactElement {
  const { facts, place, state } = usePanelRoom()
  const person = usePerson()
  const record = useRecord()
  const { busy, fault, run } = useActing()
  const [to, setTo] = useState('')
  const [missing, setMissing] = useState(false)
  const marks = [...(state.yard.yard?.racks ?? []), ...(state.yard.yard?.trailers ?? [])].map(
    ({ mark }) => mark,
  )
  return (
    <Extra
      title="Where it stands"
      open="Enter the place"
      button={movePanel.label}
      busy={busy}
      fault={fault}
      onSubmit={async () => {
        setMissing(to.trim() === '')
        return to.trim() !== '' && run(() => record.add(movePanel.draft(place, { step, to })))
      }}
      fields={
        mayDo(person.role, 'place') ? (
          <>
            <Field
              label="Rack, bed or truck"
              value={to}
              list="yard-places"
              autoComplete="off"
              fault={missing && to.trim() === '' ? 'Type where it stands.' : null}
              onChange={(event) => setTo(event.currentTarget.value)}
            />
            <datalist id="yard-places">
              {marks.map((mark) => (
                <option key={mark} value={mark} />
              ))}
            </datalist>
          </>
        ) : null
      }
    >
      <p>{facts.place === null ? 'Not on record.' : facts.place}</p>
    </Extra>
  )
}
