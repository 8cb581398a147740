import type { CodeFamily } from '@castwright/engine/codes'
import { permittedActs } from '@castwright/engine/steel'
import { type BundleStanding, bundleStanding, mayAccept } from '@castwright/engine/steel/incoming'
import { stepIsDone } from '@castwright/engine/steps'
import type { BundleFacts } from '@castwright/record'
import { Link } from '@tanstack/react-router'
import { type ReactElement, useState } from 'react'
import { Button, Notice, SelectField, Sheet, VerdictMark } from '../../look/index.ts'
import { useActing } from '../../panel/acting.ts'
import { mayDo } from '../../panel/entitled.ts'
import { KeptWord } from '../../panel/kept-word.tsx'
import { ReasonForm } from '../../panel/reason-form.tsx'
import { usePerson, useRecord, useYardState } from '../../record/index.ts'
import { decideBundle } from './acts/decide-bundle.ts'
import { recordBundle } from './acts/record-bundle.ts'
import { useOfBundle } from './acts/use-of-bundle.ts'
import { bundleText } from './bundle-draft.ts'
import { BundleForm } from './bundle-form.tsx'
import { FindingsList } from './findings-list.tsx'

export const STANDING: Readonly<
  Record<
    BundleStanding['standing'],
    { readonly verdict: 'pass' | 'fail' | 'unknown'; readonly words: string }
  >
> = {
  accepted: { verdict: 'pass', words: 'accepted' },
  waiting: { verdict: 'unknown', words: 'waits' },
  apart: { verdict: 'fail', words: 'kept apart' },
}

/** One bundle: where it stands, what was found, who decided, and which panels hold its steel. */
export function BundleSheet({
  facts,
  family,
  onClose,
}: {
  readonly facts: BundleFacts
  readonly family: CodeFamily
  readonly onClose: () => void
}): ReactElement {
  const record = useRecord()
  const acting = useActing()
  const [correcting, setCorrecting] = useState(false)
  const { came, decisions } = facts
  const { standing, found, why } = bundleStanding({ bundle: came, decisions, rules: family.steel })
  if (correcting) {
    return (
      <Sheet title={`Bundle ${facts.id}: readings`}>
        <BundleForm
          family={family}
          from={bundleText(facts.id, came)}
          taken={new Set()}
          correcting
          busy={acting.busy}
          fault={acting.fault}
          onLeave={() => setCorrecting(false)}
          onSave={(id, bundle, reason) =>
            void acting
              .run(() =>
                record.add(recordBundle.draft({ id, bundle, corrects: { entry: facts.entry, reason } })),
              )
              .then((done) => done && setCorrecting(false))
          }
        />
      </Sheet>
    )
  }
  return (
    <Sheet
      title={`Bundle ${facts.id}`}
      note={`${came.ordered.diameter} mm ${came.ordered.grade}, recorded by ${facts.by.name}`}
    >
      <div className="stack">
        <p className="bundle-outcome">
          <VerdictMark verdict={STANDING[standing].verdict} size={32} silent />{' '}
          <strong>
            {STANDING[standing].words}
            {why === null ? '' : `. ${why}`}
          </strong>{' '}
          <KeptWord entry={facts.entry} />
        </p>
        <FindingsList found={found} />
        <Decide facts={facts} outcome={found.outcome} />
        <div className="row">
          <Button onClick={() => setCorrecting(true)}>Enter what was read since</Button>
          <Button look="plain" onClick={onClose}>
            close
          </Button>
        </div>
        <Acts facts={facts} family={family} />
        <WhereItWent id={facts.id} cutBars={facts.cutBars} />
      </div>
    </Sheet>
  )
}

const DECISIONS = [
  { decision: 'accept', label: 'Accept' },
  { decision: 'quarantine', label: 'Keep apart' },
  { decision: 'return', label: 'Send back' },
] as const

function Decide({
  facts,
  outcome,
}: {
  readonly facts: BundleFacts
  readonly outcome: BundleStanding['found']['outcome']
}): ReactElement {
  const person = usePerson()
  const record = useRecord()
  const { busy, fault, run } = useActing()
  const [chosen, setChosen] = useState<(typeof DECISIONS)[number] | null>(null)
  const entitled = mayAccept(outcome)
  const allowed = DECISIONS.filter(
    ({ decision }) =>
      mayDo(person.role, 'release') && (decision !== 'accept' || entitled.includes(person.role)),
  )
  const free = chosen?.decision === 'accept' && outcome === 'accept'
  return (
    <div className="stack">
      <h3>Decided</h3>
      {facts.decisions.length === 0 ? (
        <p>Nobody has decided yet.</p>
      ) : (
        <ul className="plain-list">
          {facts.decisions.map(({ entry, decision, by, reason, stale }) => (
            <li key={entry}>
              {decision === 'accept' ? 'accepted' : decision === 'return' ? 'sent back' : 'kept apart'} by{' '}
              {by.name}, {by.role}
              {reason === null ? '' : `: ${reason}`}
              {stale ? ' (readings came after it)' : ''}, <KeptWord entry={entry} />
            </li>
          ))}
        </ul>
      )}
      {entitled.includes(person.role) ? null : <p>Accepting it is for {entitled.join(' or ')}.</p>}
      {chosen === null ? (
        <div className="row">
          {allowed.map((each) => (
            <Button
              key={each.decision}
              look={each.decision === 'accept' ? 'main' : 'frame'}
              onClick={() => setChosen(each)}
            >
              {each.label}
            </Button>
          ))}
        </div>
      ) : (
        <ReasonForm
          label={free ? 'Reason, where there is one' : 'Reason'}
          button={chosen.label}
          about={`bundle ${facts.id}`}
          optional={free}
          busy={busy}
          fault={fault}
          onCancel={() => setChosen(null)}
          onReason={(reason) =>
            void run(() =>
              record.add(decideBundle.draft({ id: facts.id, decision: chosen.decision, reason })),
            ).then((done) => done && setChosen(null))
          }
        />
      )}
    </div>
  )
}

const ANSWER = { yes: 'pass', no: 'fail', engineer: 'unknown', unknown: 'unknown' } as const

/** What may be done with bars of this bundle. */
function Acts({ facts, family }: { readonly facts: BundleFacts; readonly family: CodeFamily }): ReactElement {
  const { ordered, certificate, galvanised } = facts.came
  const { acts, notes, unknown } = permittedActs({
    family,
    grade: ordered.grade,
    process: certificate?.process ?? 'unknown',
    diameter: ordered.diameter,
    galvanised: galvanised ?? null,
  })
  return (
    <details>
      <summary>What may be done with these bars</summary>
      {[...notes, ...unknown].map((note) => (
        <p key={note}>{note}</p>
      ))}
      <ul className="plain-list">
        {acts.map(({ act, answer, conditions, source }) => (
          <li key={act} className="finding">
            <VerdictMark verdict={ANSWER[answer]} silent />
            <div>
              <strong>
                {act}:{' '}
                {answer === 'engineer' ? 'the engineer decides' : answer === 'unknown' ? 'not known' : answer}
              </strong>
              <div className="field-note">
                {conditions.join(' ')}{' '}
                {source === null ? '' : `${source.standard} ${source.clause} (${source.status})`}
              </div>
            </div>
          </li>
        ))}
      </ul>
    </details>
  )
}

function WhereItWent({ id, cutBars }: { readonly id: string; readonly cutBars: number }): ReactElement {
  const { steel, panels: all } = useYardState()
  const person = usePerson()
  const record = useRecord()
  const { busy, fault, run } = useActing()
  const [panel, setPanel] = useState('')
  const panels = [...steel.byPanel]
    .filter(([, its]) => its.some(({ bundle }) => bundle === id))
    .map(([name]) => name)
  const open = [...all.values()].filter((facts) => facts.drawing !== null && !stepIsDone('set', facts))
  return (
    <div className="stack">
      <h3>Where it went</h3>
      <p>{cutBars === 0 ? 'No bar of it was cut by the record yet.' : `${cutBars} bars cut.`}</p>
      {panels.length === 0 ? null : <PanelLinks panels={panels} />}
      {mayDo(person.role, 'used') ? (
        <details>
          <summary>Bars of it went into a panel without a cutting plan</summary>
          <div className="row steel-choice">
            <SelectField
              label="Panel"
              value={panel}
              onChange={(event) => setPanel(event.currentTarget.value)}
            >
              <option value="">choose</option>
              {open.map(({ job, mark }) => (
                <option key={`${job}/${mark}`} value={`${job}/${mark}`}>
                  {mark}, {job}
                </option>
              ))}
            </SelectField>
            <Button
              disabled={busy || panel === ''}
              onClick={() =>
                void run(() => record.add(useOfBundle.draft({ id, panel }))).then(
                  (done) => done && setPanel(''),
                )
              }
            >
              {useOfBundle.label}
            </Button>
          </div>
          {fault === null ? null : (
            <p role="alert" className="check-fault">
              {fault}
            </p>
          )}
        </details>
      ) : null}
    </div>
  )
}

/** Panels by `<job>/<mark>`, each a way to it. */
export function PanelLinks({ panels }: { readonly panels: readonly string[] }): ReactElement {
  return (
    <ul className="row plain-list">
      {panels.map((panel) => {
        const cut = panel.indexOf('/')
        return (
          <li key={panel}>
            <Link
              to="/panel/$job/$mark"
              params={{ job: panel.slice(0, cut), mark: panel.slice(cut + 1) }}
              className="button"
            >
              {panel}
            </Link>
          </li>
        )
      })}
    </ul>
  )
}

export function NoFamily(): ReactElement {
  return (
    <Notice kind="unknown" title="No steel is judged yet">
      The yard names no code family.
    </Notice>
  )
}
