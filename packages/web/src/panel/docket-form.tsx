import { inOrder, type Load, wordsOf } from '@castwright/engine/pour/loads'
import type { Card, CardRow } from '@castwright/engine/steps'
import type { Docket } from '@castwright/record'
import { type FormEvent, type ReactElement, useState } from 'react'
import { Button, Field } from '../look/index.ts'
import { usePerson, useRecord } from '../record/index.ts'
import { useActing } from './acting.ts'
import { changeDocket, docketChange } from './acts/change-docket.ts'
import { recordDocket } from './acts/record-docket.ts'
import { DocketFields } from './docket-fields.tsx'
import {
  changedWords,
  type DocketFaults,
  type DocketText,
  EMPTY_DOCKET,
  readDocket,
  textOf,
} from './docket-text.ts'
import { mayDo } from './entitled.ts'
import { Extra } from './extra.tsx'
import { LoadItem } from './load-item.tsx'
import { usePanelRoom } from './panel-context.ts'

/** Truck loads of this pour, and a new docket. */
export function DocketForm({ card }: { readonly card: Pick<Card, 'rows'> }): ReactElement {
  const { facts, place, zone } = usePanelRoom()
  const person = usePerson()
  const record = useRecord()
  const { busy, fault, run } = useActing()
  const [text, setText] = useState<DocketText>(EMPTY_DOCKET)
  const [faults, setFaults] = useState<DocketFaults>({})
  const submit = async (): Promise<boolean> => {
    const read = readDocket(text, zone)
    setFaults(read.ok ? {} : read.faults)
    if (!read.ok) return false
    const done = await run(() => record.add(recordDocket.draft(place, read.docket)))
    if (done) setText(EMPTY_DOCKET)
    return done
  }
  const known = facts.dockets.some(({ number }) => number === text.number.trim())
  return (
    <Extra
      title="Loads"
      open="Enter a docket"
      button={recordDocket.label}
      busy={busy}
      fault={fault}
      onSubmit={submit}
      fields={
        mayDo(person.role, 'docket') ? (
          <>
            <DocketFields text={text} faults={faults} onText={setText} fixed={false} />
            {known ? (
              <p role="status">
                Docket {text.number.trim()} is on record: what you enter is added to it, and what differs is
                shown.
              </p>
            ) : null}
          </>
        ) : null
      }
    >
      {facts.dockets.length === 0 ? (
        <p>None on record yet.</p>
      ) : (
        <ul className="loads">
          {inOrder(facts.dockets).map((load) => (
            <LoadItem key={load.number} load={load} rows={rowsOf(card.rows, load)} />
          ))}
        </ul>
      )}
    </Extra>
  )
}

function rowsOf(rows: readonly CardRow[], { number }: Load): CardRow[] {
  return rows.filter(({ id }) => id.startsWith(`load:${number}:`))
}

/** What is on record of a load, to be added to or corrected. Only what was said before wants a reason. */
export function ChangeDocket({
  load,
  parts,
  onLeave,
}: {
  readonly load: Load
  readonly parts: readonly Docket[]
  readonly onLeave: () => void
}): ReactElement {
  const { place, zone } = usePanelRoom()
  const record = useRecord()
  const { busy, fault, run } = useActing()
  const before = wordsOf(load)
  const [text, setText] = useState<DocketText>(() => textOf(before, zone))
  const [faults, setFaults] = useState<DocketFaults>({})
  const [reason, setReason] = useState('')
  const [unsaid, setUnsaid] = useState(false)
  const read = readDocket(text, zone)
  const after = read.ok ? changedWords(before, read.docket, zone) : before
  const { added, corrected } = docketChange(before, after)
  const twice = load.differs.length > 0
  const submit = (event: FormEvent): void => {
    event.preventDefault()
    setFaults(read.ok ? {} : read.faults)
    const missing = (corrected.length > 0 || twice) && reason.trim() === ''
    setUnsaid(missing)
    if (!read.ok || missing || busy) return
    void run(() =>
      record.addAll(
        changeDocket(place, {
          parts,
          before,
          after,
          reason: reason.trim(),
          differs: load.differs,
        }),
      ),
    ).then((ok) => ok && onLeave())
  }
  return (
    <form className="correction stack" onSubmit={submit} noValidate>
      <DocketFields text={text} faults={faults} onText={setText} fixed />
      {corrected.length > 0 || twice ? (
        <Field
          label="Why it is corrected"
          value={reason}
          autoComplete="off"
          note="The old value stays in the record; the new one points at it."
          fault={unsaid ? 'Write the reason.' : null}
          onChange={(event) => setReason(event.currentTarget.value)}
        />
      ) : null}
      {fault === null ? null : (
        <p role="alert" className="check-fault">
          {fault}
        </p>
      )}
      <div className="row">
        <Button
          type="submit"
          disabled={busy || (added === null && corrected.length === 0 && !twice && read.ok)}
        >
          {corrected.length > 0 || twice ? 'Record the correction' : 'Add to the load'}
        </Button>
        <Button look="plain" onClick={onLeave}>
          leave it
        </Button>
      </div>
    </form>
  )
}
