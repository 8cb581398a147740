import type { Defect } from '@castwright/engine/steps'
import { type ReactElement, useState } from 'react'
import { Button, SelectField, Sheet, VerdictMark } from '../look/index.ts'
import { usePerson, useRecord } from '../record/index.ts'
import { useActing } from './acting.ts'
import { inspectDefect } from './acts/inspect-defect.ts'
import { type SettleInput, settleDefect } from './acts/settle-defect.ts'
import { mayDo } from './entitled.ts'
import { usePanelRoom } from './panel-context.ts'
import { Photos } from './photos.tsx'
import { ReasonForm } from './reason-form.tsx'
import { WhereKept } from './where-kept.tsx'

const DECISION_WORD = { accept: 'accepted as it is', repair: 'to be repaired', reject: 'rejected' } as const

/** Defects of this panel, open ones first in sight, with what was decided. */
export function DefectList(): ReactElement | null {
  const { facts } = usePanelRoom()
  if (facts.defects.length === 0) return null
  const open = facts.defects.filter((defect) => defect.open).length
  return (
    <Sheet
      title="Defects"
      level={3}
      bare
      note={open === 0 ? 'None open.' : `${open} open: the panel is not loaded.`}
    >
      <ol className="check-list">
        {facts.defects.map((defect, index) => (
          <DefectView key={defect.entry} defect={defect} number={index + 1} />
        ))}
      </ol>
    </Sheet>
  )
}

function DefectView({ defect, number }: { readonly defect: Defect; readonly number: number }): ReactElement {
  const { place } = usePanelRoom()
  const person = usePerson()
  const record = useRecord()
  const { busy, fault, run } = useActing()
  const [doing, setDoing] = useState<'nothing' | 'settle' | 'inspect'>('nothing')
  const [decision, setDecision] = useState<SettleInput['decision']>('repair')
  const [passed, setPassed] = useState(true)
  const { disposition, inspection } = defect
  const done = (ok: boolean): void => {
    if (ok) setDoing('nothing')
  }
  return (
    <li className="check-row">
      <VerdictMark verdict={defect.open ? 'fail' : 'pass'} silent />
      <div className="check-head">
        <h3>
          {number}. {defect.text}
        </h3>
        <span className="number">{defect.open ? 'open' : 'settled'}</span>
      </div>
      <div className="check-body">
        <p className="check-note">
          {defect.place === null ? 'No one place. ' : `At ${defect.place[0]}, ${defect.place[1]} mm. `}
          <WhereKept by={defect.by.name} seen={defect.seen} stored={defect.stored} />
        </p>
        {defect.attachments.length > 0 ? <Photos attachments={defect.attachments} /> : null}
        {disposition === null ? null : (
          <p className="check-note">
            {DECISION_WORD[disposition.decision]}: {disposition.reason}{' '}
            <WhereKept by={disposition.by.name} seen={disposition.seen} stored={disposition.stored} />
          </p>
        )}
        {inspection === null ? null : (
          <p className="check-note">
            Looked at again: {inspection.verdict === 'pass' ? 'passes' : 'fails'}. {inspection.reason}{' '}
            <WhereKept by={inspection.by.name} seen={inspection.seen} stored={inspection.stored} />
          </p>
        )}
        {doing === 'settle' ? (
          <ReasonForm
            label="Why"
            button={settleDefect.label}
            about={defect.text}
            busy={busy}
            fault={fault}
            onCancel={() => setDoing('nothing')}
            onReason={(reason) =>
              void run(() =>
                record.add(settleDefect.draft(place, { about: defect.entry, decision, reason })),
              ).then(done)
            }
          >
            <SelectField
              label="What becomes of it"
              value={decision}
              onChange={(event) => setDecision(event.currentTarget.value as SettleInput['decision'])}
            >
              <option value="repair">repair, then look again</option>
              <option value="accept">accept as it is</option>
              <option value="reject">reject the panel</option>
            </SelectField>
          </ReasonForm>
        ) : null}
        {doing === 'inspect' ? (
          <ReasonForm
            label="What was seen"
            button={inspectDefect.label}
            about={defect.text}
            busy={busy}
            fault={fault}
            optional
            onCancel={() => setDoing('nothing')}
            onReason={(reason) =>
              void run(() =>
                record.add(
                  inspectDefect.draft(place, {
                    about: defect.entry,
                    verdict: passed ? 'pass' : 'fail',
                    reason,
                  }),
                ),
              ).then(done)
            }
          >
            <SelectField
              label="The repair"
              value={passed ? 'pass' : 'fail'}
              onChange={(event) => setPassed(event.currentTarget.value === 'pass')}
            >
              <option value="pass">passes</option>
              <option value="fail">fails</option>
            </SelectField>
          </ReasonForm>
        ) : null}
        {doing === 'nothing' && defect.open ? (
          <div className="check-acts">
            {mayDo(person.role, 'disposition') ? (
              <Button look="plain" onClick={() => setDoing('settle')}>
                decide<span className="only-read">: {defect.text}</span>
              </Button>
            ) : null}
            {disposition?.decision === 'repair' && mayDo(person.role, 'inspection') ? (
              <Button look="plain" onClick={() => setDoing('inspect')}>
                look again<span className="only-read">: {defect.text}</span>
              </Button>
            ) : null}
          </div>
        ) : null}
      </div>
    </li>
  )
}
