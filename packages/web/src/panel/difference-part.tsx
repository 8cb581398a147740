import type { Card, CardRow } from '@castwright/engine/steps'
import { type ReactElement, useState } from 'react'
import { Button } from '../look/index.ts'
import { usePerson, useRecord } from '../record/index.ts'
import { useActing } from './acting.ts'
import { signDifference } from './acts/sign-difference.ts'
import { mayDo } from './entitled.ts'
import { usePanelRoom } from './panel-context.ts'
import { ReasonForm } from './reason-form.tsx'
import { valueText } from './row-text.ts'
import { WhereKept } from './where-kept.tsx'

export interface DifferencePartProps {
  readonly card: Card
  readonly row: CardRow
}

/** Our own result beside the lifting design: what is signed of it, and the form in which an engineer signs. */
export function DifferencePart({ card, row }: DifferencePartProps): ReactElement | null {
  const { facts, place } = usePanelRoom()
  const person = usePerson()
  const record = useRecord()
  const { busy, fault, run } = useActing()
  const [signing, setSigning] = useState(false)
  const { difference } = row
  const reference = facts.drawing?.lifting?.reference
  if (difference === undefined || reference === undefined) return null
  const { signed, may, gap } = difference
  const engineer = mayDo(person.role, 'difference')
  const open = may && card.state === 'open'
  const ours = row.verdict === 'fail' ? `Ours fails: ${valueText(row)}.` : 'Ours is not known.'
  return (
    <>
      {signed === null ? null : (
        <p className="check-note">
          {gap === null ? 'Difference signed, not passed' : `A signature that does not count, ${gap}`}:{' '}
          {signed.reason} <WhereKept by={signed.by.name} seen={signed.seen} stored={signed.stored} />
        </p>
      )}
      {open && !signing ? (
        <p className="check-note">
          {ours} The lifting design {reference} holds. The stricter governs until an engineer has signed the
          difference with a reason.
        </p>
      ) : null}
      {open && engineer && !signing ? (
        <div>
          <Button onClick={() => setSigning(true)}>
            {signDifference.label}
            <span className="only-read">: {row.what}</span>
          </Button>
        </div>
      ) : null}
      {open && engineer && signing ? (
        <ReasonForm
          label="Why the lifting design may govern here"
          button="Sign the difference"
          about={row.what}
          busy={busy}
          fault={fault}
          onCancel={() => setSigning(false)}
          onReason={(reason) =>
            void run(() => record.add(signDifference.draft(place, { row, reference, reason }))).then(
              (ok) => ok && setSigning(false),
            )
          }
        >
          <p className="check-note">
            {ours} You sign with your name, for revision {place.revision ?? 'none'} and for this result and
            nothing worse. It is printed on every later card and in the passport; the lead still decides.
          </p>
        </ReasonForm>
      ) : null}
    </>
  )
}
