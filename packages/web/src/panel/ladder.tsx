import type { StepId } from '@castwright/engine/steps'
import { type ReactElement, useId, useRef, useState } from 'react'
import { RUNG_WORD, type Rung } from './rungs.ts'

export interface LadderProps {
  readonly rungs: readonly Rung[]
  readonly onStep: (step: StepId) => void
}

/** Fourteen rungs side by side; where they do not fit, one target that opens the list of steps. */
export function Ladder({ rungs, onStep }: LadderProps): ReactElement {
  const [listed, setListed] = useState(false)
  const id = useId()
  const opener = useRef<HTMLButtonElement>(null)
  const here = rungs.find(({ shown }) => shown)
  const done = rungs.filter(({ state }) => state === 'done').length
  const pick = (step: StepId): void => {
    setListed(false)
    onStep(step)
    opener.current?.focus()
  }
  return (
    <nav className="ladder" aria-label="Steps of this panel">
      <ol className="ladder-wide">
        {rungs.map((rung) => (
          <li key={rung.step}>
            <button
              type="button"
              className={rungClass(rung)}
              aria-current={rung.shown ? 'step' : undefined}
              title={rung.name}
              onClick={() => onStep(rung.step)}
            >
              <span className="rung-bar" aria-hidden="true" />
              <span className="only-read">
                {rung.number}: {rung.name}, {RUNG_WORD[rung.state]}
                {rung.hold ? ', hold point' : ''}
              </span>
            </button>
          </li>
        ))}
      </ol>
      <div className="ladder-narrow">
        <button
          ref={opener}
          type="button"
          className="ladder-one"
          aria-expanded={listed}
          aria-controls={id}
          onClick={() => setListed(!listed)}
        >
          <span className="ladder-strip" aria-hidden="true">
            {rungs.map((rung) => (
              <span key={rung.step} className={rungClass(rung)}>
                <span className="rung-bar" />
              </span>
            ))}
          </span>
          <span className="only-read">
            Steps: {done} of {rungs.length} done, card of step {here?.number}: {here?.name}. Open the list of
            steps.
          </span>
        </button>
        <ol id={id} className="ladder-list" hidden={!listed}>
          {rungs.map((rung) => (
            <li key={rung.step}>
              <button
                type="button"
                className={rungClass(rung)}
                aria-current={rung.shown ? 'step' : undefined}
                onClick={() => pick(rung.step)}
              >
                <span className="rung-bar" aria-hidden="true" />
                <span>
                  {rung.number}. {rung.name}
                </span>
                <span className="rung-word">
                  {RUNG_WORD[rung.state]}
                  {rung.hold ? ', hold' : ''}
                </span>
              </button>
            </li>
          ))}
        </ol>
      </div>
    </nav>
  )
}

function rungClass({ state, hold, shown }: Rung): string {
  return ['rung', `rung-${state}`, hold ? 'rung-hold' : '', shown ? 'rung-shown' : '']
    .filter((name) => name !== '')
    .join(' ')
}
