import { counts, type Load } from '@castwright/engine/pour/loads'
import type { CardRow } from '@castwright/engine/steps'
import { type ReactElement, useState } from 'react'
import { Button, VerdictMark } from '../look/index.ts'
import { useInstant, usePerson, useRecord } from '../record/index.ts'
import { useActing } from './acting.ts'
import { decideLoad } from './acts/decide-load.ts'
import { recordDocket } from './acts/record-docket.ts'
import { ChangeDocket } from './docket-form.tsx'
import { mayDo } from './entitled.ts'
import { KeptWord } from './kept-word.tsx'
import { loadText, stateText } from './load-text.ts'
import { usePanelRoom } from './panel-context.ts'
import { ReasonForm } from './reason-form.tsx'
import { WhereKept } from './where-kept.tsx'

export interface LoadItemProps {
  readonly load: Load
  /** Rows of the card about this load. */
  readonly rows: readonly CardRow[]
}

/** One truck: what is known of it, its clock, what is against it, and what may be done with it. */
export function LoadItem({ load, rows }: LoadItemProps): ReactElement {
  const { zone, now, place, state, facts } = usePanelRoom()
  const person = usePerson()
  const record = useRecord()
  const { busy, fault, run } = useActing()
  const [doing, setDoing] = useState<'nothing' | 'change' | 'accept' | 'send-back'>('nothing')
  const instant = useInstant()
  const { decision } = load
  const here = counts(load)
  const against = here ? rows.filter(({ verdict }) => verdict === 'fail') : []
  const open = rows.filter(
    ({ verdict, decision: decided, waits }) => verdict !== 'pass' && decided === null && waits === undefined,
  )
  const mayDecide = mayDo(person.role, 'docket-decision')
  const mayRecord = mayDo(person.role, 'docket')
  const parts = (state.dockets.get(`${facts.job}/${facts.mark}`) ?? []).filter(
    ({ number }) => number.trim() === load.number,
  )
  const say = (field: 'began' | 'discharged'): void => {
    const said = { number: load.number, [field]: instant().toISOString() }
    void run(() => record.add(recordDocket.draft(place, said)))
  }
  const done = (): void => setDoing('nothing')
  return (
    <li className="load" data-back={!here}>
      <div className="load-head">
        <h4>Load {load.number}</h4>
        <span>{stateText(load, zone, now)}</span>
      </div>
      <p className="check-note">
        {loadText(load, zone, now)} By {load.by.name}, <KeptWord entry={load.entry} />
        {load.entries.length > 1 ? `, ${load.entries.length} entries` : ''}.
      </p>
      {load.differs.length === 0 ? null : (
        <p className="check-fault">
          Recorded twice with different {load.differs.join(', ')}: correct one of them.
        </p>
      )}
      {against.map(({ id, what, decision: decided }) => (
        <p key={id} className="load-against">
          <VerdictMark verdict="fail" size={20} /> {what.replace(/^Load [^:]*: /, '')}
          {decided === null ? '' : ', decided'}
        </p>
      ))}
      {decision === null ? null : (
        <p className="check-note">
          <strong>{decision.decision === 'accept' ? 'Accepted' : 'Sent back'}:</strong> {decision.reason}{' '}
          <WhereKept by={decision.by.name} seen={decision.seen} stored={decision.stored} />
        </p>
      )}
      {doing === 'change' ? <ChangeDocket load={load} parts={parts} onLeave={done} /> : null}
      {doing === 'accept' || doing === 'send-back' ? (
        <ReasonForm
          label={
            doing === 'accept'
              ? 'Why it is used all the same'
              : load.discharged === undefined
                ? 'Why it goes back'
                : 'Why it is not in this panel'
          }
          button={doing === 'accept' ? 'Accept the load' : 'Send the load back'}
          about={load.number}
          busy={busy}
          fault={fault}
          onCancel={done}
          onReason={(reason) =>
            void run(() =>
              record.add(decideLoad.draft(place, { about: load.entry, decision: doing, reason })),
            ).then((ok) => ok && done())
          }
        />
      ) : null}
      {fault !== null && doing === 'nothing' ? (
        <p role="alert" className="check-fault">
          {fault}
        </p>
      ) : null}
      {doing !== 'nothing' ? null : (
        <div className="row load-acts no-print">
          {mayRecord && here && load.began === undefined && load.discharged === undefined ? (
            <Button disabled={busy} onClick={() => say('began')}>
              Discharge begins<span className="only-read">: load {load.number}</span>
            </Button>
          ) : null}
          {mayRecord && here && load.began !== undefined && load.discharged === undefined ? (
            <Button disabled={busy} onClick={() => say('discharged')}>
              Discharge finished<span className="only-read">: load {load.number}</span>
            </Button>
          ) : null}
          {mayRecord ? (
            <Button look="plain" onClick={() => setDoing('change')}>
              add or correct<span className="only-read">: load {load.number}</span>
            </Button>
          ) : null}
          {mayDecide && here && open.length > 0 ? (
            <Button look="plain" onClick={() => setDoing('accept')}>
              accept<span className="only-read">: load {load.number}</span>
            </Button>
          ) : null}
          {mayDecide && here ? (
            <Button look="plain" onClick={() => setDoing('send-back')}>
              {load.discharged === undefined ? 'send back' : 'not in this panel'}
              <span className="only-read">: load {load.number}</span>
            </Button>
          ) : null}
          {mayDecide && !here ? (
            <Button look="plain" onClick={() => setDoing('accept')}>
              it was used after all<span className="only-read">: load {load.number}</span>
            </Button>
          ) : null}
        </div>
      )}
    </li>
  )
}
