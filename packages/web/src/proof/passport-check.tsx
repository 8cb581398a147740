import { InputError, issueSentence } from '@castwright/engine/working'
import { type PassportVerdict, problemText, verifyPassport } from '@castwright/record'
import { type ReactElement, useDeferredValue, useMemo, useState } from 'react'
import { Button } from '../look/button.tsx'
import { Field, FileField, massText, Notice, Sheet, VerdictMark } from '../look/index.ts'
import { createApi } from '../record/api.ts'

interface Checked {
  readonly name: string
  readonly outcome: PassportVerdict | null
  /** It is no passport, or the key is none. */
  readonly fault: string | null
}

/** Checks a passport file in this browser alone. The file goes nowhere. */
export function PassportCheck({ yardKey = false }: { readonly yardKey?: boolean }): ReactElement {
  const [key, setKey] = useState('')
  const [bytes, setBytes] = useState<{ readonly name: string; readonly bytes: Uint8Array } | null>(null)
  const [fault, setFault] = useState<string | null>(null)
  const typed = useDeferredValue(key)
  const checked = useMemo(() => (bytes === null ? null : check(bytes, typed)), [bytes, typed])
  const fill = (): void => {
    createApi()
      .key()
      .then(
        ({ publicKey }) => setKey(publicKey),
        (error: unknown) => setFault(error instanceof Error ? error.message : String(error)),
      )
  }
  return (
    <Sheet
      title="Check a passport"
      note="It is read in this browser alone: no server is asked, the file goes nowhere."
    >
      <div className="stack">
        <FileField
          label="Passport file"
          accept=".json,application/json"
          onFiles={([file]) => {
            if (file)
              void file
                .arrayBuffer()
                .then((read) => setBytes({ name: file.name, bytes: new Uint8Array(read) }))
          }}
        />
        <Field
          label="Key that the yard publishes"
          value={key}
          spellCheck={false}
          autoComplete="off"
          note="64 hex digits, from the yard by its own way: a letter, its sign, its site. Without it the verdict stays not known."
          fault={fault}
          onChange={(event) => setKey(event.currentTarget.value)}
        />
        {yardKey ? (
          <Button look="plain" onClick={fill}>
            Take the key of this server
          </Button>
        ) : null}
        <div aria-live="polite" className="stack">
          {checked === null ? null : <Outcome checked={checked} />}
        </div>
      </div>
    </Sheet>
  )
}

function check(
  { name, bytes }: { readonly name: string; readonly bytes: Uint8Array },
  typed: string,
): Checked {
  const key = typed.replace(/\s+/g, '').toLowerCase()
  try {
    return { name, outcome: verifyPassport(bytes, key === '' ? {} : { key }), fault: null }
  } catch (error) {
    if (error instanceof InputError) {
      return { name, outcome: null, fault: error.issues.map((issue) => issueSentence(issue)).join(' ') }
    }
    throw error
  }
}

function Outcome({ checked: { name, outcome, fault } }: { readonly checked: Checked }): ReactElement {
  if (outcome === null) {
    return (
      <Notice kind="fail" title={`${name} cannot be checked`}>
        {fault}
      </Notice>
    )
  }
  const { verdict, problems, unknown, passport } = outcome
  const words = {
    pass: 'Everything fits: bytes, proofs, head and signature, with the key you gave.',
    fail: `${problems.length} ${problems.length === 1 ? 'thing does' : 'things do'} not fit.`,
    unknown: 'What is inside fits together; whose key signed it is not known.',
  }[verdict]
  return (
    <>
      <div className="verdict">
        <VerdictMark verdict={verdict} size={32} withWord />
        <strong>{name}</strong>
      </div>
      <p>{words}</p>
      {unknown.map((gap) => (
        <p key={gap}>Not known: {gap}</p>
      ))}
      {problems.length > 0 ? (
        <ul className="proof-flags">
          {problems.map((problem) => (
            <li key={`${problem.at} ${problem.expected}`} className="hash">
              {problemText(problem)}
            </li>
          ))}
        </ul>
      ) : null}
      {passport === null ? null : (
        <dl className="facts">
          <dt>Panel</dt>
          <dd>
            {passport.panel.mark}, job {passport.panel.job}, revision {passport.panel.revision ?? 'none'}
          </dd>
          <dt>Yard’s log</dt>
          <dd>{passport.yard.log}</dd>
          <dt>Made</dt>
          <dd>{madeText(passport.made)}</dd>
          <dt>Entries</dt>
          <dd>
            {passport.entries.length}, each with its proof of being in the log of {passport.head.size}
          </dd>
          <dt>Planned by</dt>
          <dd>
            engine {passport.plan.engine}, {passport.plan.editions.join('; ')}
          </dd>
          <dt>Mass, planned</dt>
          <dd>{massOf(passport.plan.figures)}</dd>
          <dt>Key inside</dt>
          <dd className="hash">{passport.yard.publicKey}</dd>
        </dl>
      )}
      <p className="quiet">
        A passport proves what was recorded, by whom and in which order. It does not judge the panel, its
        lifting or its erection.
      </p>
    </>
  )
}

function madeText(instant: string): string {
  const format = new Intl.DateTimeFormat('en-GB', {
    timeZone: 'UTC',
    day: 'numeric',
    month: 'short',
    year: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  })
  return `${format.format(new Date(instant))} UTC`
}

function massOf(figures: Readonly<Record<string, unknown>>): string {
  return massText(typeof figures.mass === 'number' ? figures.mass : null)
}
