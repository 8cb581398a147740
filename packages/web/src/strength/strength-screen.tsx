import './strength.css'
import { type PanelFacts, stepIsDone } from '@castwright/engine/steps'
import { Link } from '@tanstack/react-router'
import { type ReactElement, useMemo, useState } from 'react'
import { Caution, fixed, SelectField, Sheet, useTitle } from '../look/index.ts'
import { whenText } from '../panel/when.ts'
import { useNow, usePlans, useYardState } from '../record/index.ts'
import { StrengthFrame } from './strength-frame.tsx'
import { type StrengthLine, strengthLine } from './strength-line.ts'

/** Panels that are planned at a time. */
const MOST = 60
/** A log that is older is told, h. */
const OLD = 1

/** Panels that gain strength now: how far they are, when the low edge meets what is wanted, and what that stands on. */
export function StrengthScreen(): ReactElement {
  useTitle('Strength')
  const { panels, yard } = useYardState()
  const [which, setWhich] = useState<'curing' | 'cast'>('curing')
  const chosen = useMemo(
    () =>
      [...panels.values()]
        .filter((facts) => facts.cast !== null && (which === 'cast' || !stepIsDone('strip', facts)))
        .sort((a, b) => ((a.cast?.at ?? '') < (b.cast?.at ?? '') ? 1 : -1))
        .slice(0, MOST),
    [panels, which],
  )
  const plans = usePlans(chosen)
  const minute = useNow(60_000)
  const lines = useMemo(
    () =>
      chosen.map((facts, at) => {
        const state = plans[at]
        return state?.status === 'ready'
          ? strengthLine({ facts, plan: state.plan, yard, now: minute.getTime() })
          : null
      }),
    [chosen, plans, yard, minute],
  )
  const zone = yard.yard?.timezone ?? 'UTC'
  return (
    <StrengthFrame page="Tonight">
      <div className="row">
        <SelectField
          label="Panels"
          value={which}
          onChange={(event) => setWhich(event.currentTarget.value === 'cast' ? 'cast' : 'curing')}
        >
          <option value="curing">cast, before their first lift</option>
          <option value="cast">all that were cast</option>
        </SelectField>
        <p role="status">
          {chosen.length} panels{chosen.length === MOST ? ', the last cast ones' : ''}
        </p>
      </div>
      {chosen.length === 0 ? (
        <Sheet
          title="Nothing is gaining strength"
          note="A panel stands here from the pour to its first lift."
        />
      ) : (
        <ul className="strength-list">
          {chosen.map((facts, at) => (
            <li key={`${facts.job}/${facts.mark}`}>
              <StrengthRow facts={facts} line={lines[at] ?? null} zone={zone} now={minute} />
            </li>
          ))}
        </ul>
      )}
      <Caution
        order="A curve lifts nothing."
        text="Strength from temperature is an estimate for this mix. The first lift waits for results of this pour and for the signature of the lead. The engineer’s lifting design and the local code come first."
      />
    </StrengthFrame>
  )
}

function StrengthRow({
  facts,
  line,
  zone,
  now,
}: {
  readonly facts: PanelFacts
  readonly line: StrengthLine | null
  readonly zone: string
  readonly now: Date
}): ReactElement {
  const { job, mark } = facts
  return (
    <Link className="strength-row" to="/strength/$job/$mark" params={{ job, mark }}>
      <span className="strength-mark">
        <strong>{mark}</strong>
        <span className="field-note">
          {job}
          {facts.cast?.bed ? `, bed ${facts.cast.bed}` : ''}
        </span>
      </span>
      {line === null ? (
        <span>Computing …</span>
      ) : (
        <>
          <span className="strength-number">
            <strong>
              {line.now === null ? 'not known' : `${fixed(line.now.low ?? line.now.strength, 1)} MPa`}
            </strong>
            <span className="field-note">
              {line.now === null
                ? (line.cure.unknown[0] ?? 'no curve')
                : line.now.low === null
                  ? 'expected; the mix has no scatter, so no low edge'
                  : `low edge now, expected ${fixed(line.now.strength, 1)}`}
            </span>
          </span>
          <span className="strength-number">
            <strong>{metText(line, zone, now)}</strong>
            <span className="field-note">
              {line.wanted === null ? 'strength wanted not known' : `${fixed(line.wanted, 1)} MPa wanted`}
            </span>
          </span>
          <span className="strength-number">
            <strong>{line.last === null ? 'no log' : `${fixed(line.last.celsius, 1)} °C`}</strong>
            <span className="field-note">{logText(line)}</span>
          </span>
        </>
      )}
    </Link>
  )
}

export function metText({ met, first }: StrengthLine, zone: string, now: Date): string {
  if (met === null) return first.open.length > 0 ? 'not known' : 'not in sight'
  return met <= now.getTime() ? 'met' : whenText(new Date(met).toISOString(), zone, now)
}

function logText({ last, cure, age }: StrengthLine): string {
  const aged = `${fixed(age, 1)} h old`
  if (last === null) return `${aged}, by the planned temperature`
  const old = last.old > OLD ? `, last read ${fixed(last.old, 1)} h ago` : ''
  return `${aged}, ${last.channel}${old}${cure.temperature === 'planned' ? ', not used' : ''}`
}
