import { shown } from '@castwright/engine/working'
import { type ReactElement, useState } from 'react'
import { Field, Notice } from '../look/index.ts'
import { usePerson, useRecord } from '../record/index.ts'
import { useActing } from './acting.ts'
import { confirmDesign } from './acts/confirm-design.ts'
import { mayDo } from './entitled.ts'
import { Extra } from './extra.tsx'
import { usePanelRoom } from './panel-context.ts'
import { WhereKept } from './where-kept.tsx'

/** The lifting design of the drawing, and the engineer who confirms it for this revision. */
export function DesignForm(): ReactElement {
  const { facts, place } = usePanelRoom()
  const person = usePerson()
  const record = useRecord()
  const { busy, fault, run } = useActing()
  const [remark, setRemark] = useState('')
  const lifting = facts.drawing?.lifting
  if (lifting === undefined) {
    return (
      <Notice kind="unknown" title="No lifting design on the drawing">
        The lift stays shut until the drawing carries one: enter it in a new revision.
      </Notice>
    )
  }
  const { design } = facts
  return (
    <Extra
      title="Lifting design"
      open="Confirm as engineer"
      button={confirmDesign.label}
      busy={busy}
      fault={fault}
      onSubmit={() =>
        run(() => record.add(confirmDesign.draft(place, { reference: lifting.reference, reason: remark })))
      }
      fields={
        design === null && place.revision !== null && mayDo(person.role, 'design') ? (
          <Field
            label="Remark, if any"
            value={remark}
            autoComplete="off"
            note={`You confirm ${lifting.reference} for revision ${place.revision}, with your name.`}
            onChange={(event) => setRemark(event.currentTarget.value)}
          />
        ) : null
      }
    >
      <p>
        {lifting.reference}, by {lifting.by}: at least {shown(lifting.strength, 'MPa')} at the lift, at most{' '}
        {shown(lifting.load, 'kN')} on any one insert. Entered by the drawing, not computed here.
      </p>
      {design === null ? (
        <p>Not confirmed by an engineer for this revision.</p>
      ) : (
        <p>
          Confirmed: <WhereKept by={design.by.name} seen={design.seen} stored={design.stored} />
        </p>
      )}
    </Extra>
  )
}
