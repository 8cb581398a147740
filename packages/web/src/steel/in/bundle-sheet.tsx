import type { CodeFamily } from '@castwright/engine/codes'
import { permittedActs } from '@castwright/engine/steel'
import { type BundleStanding, mayAcceptNow } from '@castwright/engine/steel/incoming'
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
import { sizeName } from '../size-name.ts'
import { standingOf } from '../standing-of.ts'
import { decideBundle } from './acts/decide-bundle.ts'
import { recordBundle } from './acts/record-bundle.ts'
import { takeBackBundle } from './acts/take-back-bundle.ts'
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
  // The readings that the form began with: others that came meanwhile must not be lost under it.
  const [correcting, setCorrecting] = useState<string | null>(null)
  const { came } = facts
  const { standing, found, why } = standingOf(facts, family.steel)
  if (correcting !== null) {
    const overtaken = correcting !== facts.entry
    return (
      <Sheet title={`Bundle ${facts.id}: readings`}>
        <BundleForm
          family={family}
          from={bundleText(facts.id, came)}
          taken={new Set()}
          correcting
          busy={acting.busy}
          fault={overtaken ? OVERTAKEN : acting.fault}
          onLeave={() => setCorrecting(null)}
          onSave={(id, bundle, reason) => {
            if (overtaken) return
            void acting
              .run(() =>
                record.add(recordBundle.draft({ id, bundle, corrects: { entry: correcting, reason } })),
              )
              .then((done) => done && setCorrecting(null))
          }}
        />
      </Sheet>
    )
  }
  return (
    <Sheet
      title={`Bundle ${facts.id}`}
      note={`${sizeName(family, came.ordered.diameter)} ${came.ordered.grade}, recorded by ${facts.by.name}`}
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
        {facts.others.length === 0 ? null : <SameName facts={facts} />}
        <FindingsList found={found} />
        <Decide facts={facts} outcome={found.outcome} />
        <div className="row">
          <Button onClick={() => setCorrecting(facts.entry)}>Enter what was read since</Button>
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

const OVERTAKEN =
  'Other readings of this bundle came while you typed. Leave it, look at them, and enter yours again.'

/** Two devices used one name: neither counts until one is taken back and recorded under a name of its own. */
function SameName({ facts }: { readonly facts: BundleFacts }): ReactElement {
  const person = usePerson()
  const record = useRecord()
  const { busy, fault, run } = useActing()
  const [asked, setAsked] = useState(false)
  return (
    <Notice kind="unknown" title={`${facts.others.length + 1} bundles were recorded under this name`}>
      <p>
        Neither is accepted while both stand, since nobody can tell whose bars were meant. Below is the one
        that came last. Take it back where it is the wrong one, and record it anew under a name of its own.
      </p>
      {!mayDo(person.role, 'bundle') ? null : asked ? (
        <ReasonForm
          label="Reason"
          button={takeBackBundle.label}
          about={`bundle ${facts.id}`}
          busy={busy}
          fault={fault}
          onCancel={() => setAsked(false)}
          onReason={(reason) =>
            void run(() =>
              record.add(takeBackBundle.draft({ id: facts.id, entry: facts.entry, reason })),
            ).then((done) => done && setAsked(false))
          }
        />
      ) : (
        <Button onClick={() => setAsked(true)}>{takeBackBundle.label}</Button>
      )}
    </Notice>
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
  const entitled = mayAcceptNow(outcome, facts.decisions)
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
      {facts.others.length > 0 ? null : chosen === null ? (
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
              record.add(
                decideBundle.draft({ id: facts.id, on: facts.entry, decision: chosen.decision, reason }),
              ),
            ).then((done) => done && setChosen(null))
          }
        />
      )}
    </div>
  )
}

/** Product standard that the type letters on the bar stand for; null where they say none. Example: `A706`. */
export function standardOf(candidates: readonly { readonly process: string | null }[]): string | null {
  const named = new Set(candidates.flatMap(({ process }) => process?.match(/\bA\d{3}\b/g) ?? []))
  // S and W on one bar: it meets both.
  return named.has('A706') ? 'A706' : ([...named][0] ?? null)
}

const ANSWER = { yes: 'pass', no: 'fail', engineer: 'unknown', unknown: 'unknown' } as const

/** What may be done with bars of this bundle. */
function Acts({ facts, family }: { readonly facts: BundleFacts; readonly family: CodeFamily }): ReactElement {
  const { ordered, certificate, galvanised, seen = [] } = facts.came
  const { findings } = standingOf(facts, family.steel).found
  const holds = (id: string): boolean => findings.some((each) => each.id === id && each.verdict === 'pass')
  const ofThese = holds('heat') && holds('proof')
  const { acts, notes, unknown } = permittedActs({
    family,
    grade: ordered.grade,
    // A certificate that is not of these bars does not tell how they were made.
    process: ofThese ? (certificate?.process ?? 'unknown') : 'unknown',
    diameter: ordered.diameter,
    galvanised: galvanised ?? null,
    standard: standardOf(family.steel.identify({ seen }).candidates),
  })
  const open = [
    ...(holds('grade')
      ? []
      : [`The grade of these bars is not settled: this holds for ${ordered.grade} only.`]),
    ...(ofThese || certificate?.process === undefined
      ? []
      : ['How they were made counts as not known: nothing ties the certificate to these bars.']),
  ]
  return (
    <details>
      <summary>What may be done with these bars</summary>
      {[...open, ...notes, ...unknown].map((note) => (
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
