import { type Card, type CardRow, DECIDERS } from '@castwright/engine/steps'
import { type ReactElement, useState } from 'react'
import { Button, Explain, VERDICT_WORD, VerdictMark } from '../look/index.ts'
import { usePerson, useRecord } from '../record/index.ts'
import { useActing } from './acting.ts'
import { correctValue } from './acts/correct-value.ts'
import { decide } from './acts/decide.ts'
import { LOG_ASKED } from './acts/log-in-place.ts'
import { recordValue } from './acts/record-value.ts'
import { Answer } from './answer.tsx'
import { Correction } from './correction.tsx'
import { DifferencePart } from './difference-part.tsx'
import { mayDo } from './entitled.ts'
import { LimitForm } from './limit-form.tsx'
import { type LimitAsk, limitAsks } from './limit-key.ts'
import { usePanelRoom } from './panel-context.ts'
import { Photos } from './photos.tsx'
import { ReasonForm } from './reason-form.tsx'
import { assumedText, originText, valueText } from './row-text.ts'
import { WhereKept } from './where-kept.tsx'

export interface CardRowViewProps {
  readonly card: Card
  readonly row: CardRow
  readonly hold: boolean
}

/** One check: verdict, name, value of limit, what it depends on, and what a person may do about it. */
export function CardRowView({ card, row, hold }: CardRowViewProps): ReactElement {
  const { place } = usePanelRoom()
  const person = usePerson()
  const record = useRecord()
  const { busy, fault, run } = useActing()
  const [doing, setDoing] = useState<'nothing' | 'correct' | 'decide' | 'limit'>('nothing')
  const { asked, recorded, decision } = row
  const open = card.state === 'open'
  // What was recorded for an older revision is asked again.
  const stale = recorded !== null && recorded.revision !== place.revision
  const mayEnter = asked !== null && (recorded === null || stale) && open && mayDo(person.role, 'value')
  const mayDecide =
    !hold &&
    row.advice !== true &&
    row.waits === undefined &&
    row.verdict !== 'pass' &&
    decision === null &&
    open &&
    (asked === null || recorded !== null) &&
    (row.deciders ?? DECIDERS).includes(person.role)
  const asks = mayDo(person.role, 'limit') ? limitAsks(row) : []
  const done = (): void => setDoing('nothing')
  return (
    <li className="check-row">
      <VerdictMark verdict={row.verdict} silent />
      <div className="check-head">
        <h3>{row.what}</h3>
        <span className="number">{valueText(row)}</span>
      </div>
      <div className="check-body">
        <p className="check-note">
          <strong className="check-word">{VERDICT_WORD[row.verdict]}</strong>
          {[originText(row), row.note].filter((part) => part !== '').map((part) => ` · ${part}`)}
        </p>
        {row.unknown.length > 0 && recorded === null && asked === null ? (
          <p className="check-note">Missing: {row.unknown.join('; ')}.</p>
        ) : null}
        {asked?.unknown && asked.unknown.length > 0 ? (
          <p className="check-note">{asked.unknown.join('; ')}.</p>
        ) : null}
        {stale ? <p className="check-note">{row.unknown.join('; ')}.</p> : null}
        {row.assumed.length > 0 ? <p className="check-note">Assumed: {assumedText(row)}.</p> : null}
        {recorded === null ? null : (
          <p className="check-note">
            <WhereKept by={recorded.by.name} seen={recorded.seen} stored={recorded.stored} />
            {recorded.corrects.length > 0
              ? `. Corrected${recorded.reason === null ? '' : `: ${recorded.reason}`}`
              : ''}
          </p>
        )}
        {recorded !== null && recorded.attachments.length > 0 ? (
          <Photos attachments={recorded.attachments} />
        ) : null}
        {decision === null ? null : (
          <p className="check-note">
            Decided: {decision.reason}{' '}
            <WhereKept by={decision.by.name} seen={decision.seen} stored={decision.stored} />
          </p>
        )}
        <DifferencePart card={card} row={row} />
        {mayEnter && asked?.id === LOG_ASKED ? <p className="check-note">Bring the log in below.</p> : null}
        {mayEnter && asked !== null && asked.id !== LOG_ASKED ? (
          <Answer
            asked={asked}
            label={recordValue.label}
            busy={busy}
            onValue={(value) => void run(() => record.add(recordValue.draft(place, { asked, value })))}
          />
        ) : null}
        {doing === 'correct' && asked !== null && recorded !== null ? (
          <Correction
            busy={busy}
            onCancel={done}
            answer={(reason) => (
              <Answer
                asked={asked}
                label={correctValue.label}
                busy={busy}
                onValue={(value) => {
                  if (reason.value.trim() === '') reason.missing()
                  else
                    void run(() =>
                      record.add(
                        correctValue.draft(place, {
                          asked,
                          about: recorded.entry,
                          value,
                          reason: reason.value.trim(),
                        }),
                      ),
                    ).then((ok) => ok && done())
                }}
              >
                {reason.field}
              </Answer>
            )}
          />
        ) : null}
        {doing === 'decide' ? (
          <ReasonForm
            label="Why it goes on all the same"
            button="Record the decision"
            about={row.what}
            busy={busy}
            fault={fault}
            onCancel={done}
            onReason={(reason) =>
              void run(() => record.add(decide.draft(place, { step: card.step, row, reason }))).then(
                (ok) => ok && done(),
              )
            }
          />
        ) : null}
        {doing === 'limit' && isAsked(asks) ? <LimitForm asks={asks} onLeave={done} /> : null}
        {fault !== null && doing !== 'decide' ? (
          <p role="alert" className="check-fault">
            {fault}
          </p>
        ) : null}
        <div className="check-acts">
          {doing === 'nothing' &&
          recorded !== null &&
          !stale &&
          asked !== null &&
          card.state !== 'waiting' &&
          mayDo(person.role, 'correction') ? (
            <Button look="plain" onClick={() => setDoing('correct')}>
              correct<span className="only-read">: {row.what}</span>
            </Button>
          ) : null}
          {doing === 'nothing' && isAsked(asks) ? (
            <Button look="plain" onClick={() => setDoing('limit')}>
              {asks[0].reasoned ? 'enter factor or limit' : 'enter limit'}
              <span className="only-read">: {row.what}</span>
            </Button>
          ) : null}
          {doing === 'nothing' && mayDecide ? (
            <Button look="plain" onClick={() => setDoing('decide')}>
              decide<span className="only-read">: {row.what}</span>
            </Button>
          ) : null}
          <Explain
            about={row.what}
            working={row.working}
            source={row.source}
            assumed={row.assumed}
            word={row.working.length > 0 ? 'how' : 'source'}
          />
        </div>
      </div>
    </li>
  )
}

function isAsked(asks: readonly LimitAsk[]): asks is readonly [LimitAsk, ...LimitAsk[]] {
  return asks.length > 0
}
