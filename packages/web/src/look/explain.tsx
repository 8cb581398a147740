import type { Assumed, Source, Step } from '@castwright/engine/working'
import type { ReactElement, ReactNode } from 'react'
import { figure } from './figure.ts'

export interface ExplainProps {
  /** The word that is tapped: `how`. */
  readonly word?: ReactNode
  /** Read with the word by screen readers: `how: Strength now`. */
  readonly about: string
  readonly working: readonly Step[]
  readonly source?: Source | undefined
  readonly assumed?: readonly Assumed[] | undefined
  readonly children?: ReactNode
}

/** The working of a value: each step with symbol, formula, numbers put in, result, unit and source. */
export function Explain({
  word = 'how',
  about,
  working,
  source,
  assumed,
  children,
}: ExplainProps): ReactElement {
  return (
    <details className="explain">
      <summary>
        {word}
        <span className="only-read">: {about}</span>
      </summary>
      <div className="explain-body">
        {children}
        {working.length > 0 ? (
          <ol className="working">
            {working.map((step, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: the steps of one working never change places
              <li key={index}>
                <WorkingStep step={step} />
              </li>
            ))}
          </ol>
        ) : null}
        {assumed && assumed.length > 0 ? <AssumedList assumed={assumed} /> : null}
        {source ? <SourceLine source={source} /> : null}
      </div>
    </details>
  )
}

function WorkingStep({ step }: { readonly step: Step }): ReactElement {
  const given = Object.entries(step.given)
  return (
    <>
      <span className="working-line">
        {step.symbol} = {step.formula} = {figure(step.result)}
        {step.unit === '' ? '' : ` ${step.unit}`}
      </span>
      {given.length > 0 ? (
        <span className="working-given">
          with {given.map(([name, value]) => `${name} = ${figure(value)}`).join(', ')}
        </span>
      ) : null}
      {step.note ? <span>{step.note}</span> : null}
      <SourceLine source={step.source} />
    </>
  )
}

export function AssumedList({ assumed }: { readonly assumed: readonly Assumed[] }): ReactElement {
  return (
    <div>
      <strong>Assumed</strong>
      {assumed.map((item) => (
        <div key={item.field}>
          {item.field} = {figure(item.value)}
          {item.unit === '' ? '' : ` ${item.unit}`}: {item.why}
        </div>
      ))}
    </div>
  )
}

/** Standard, clause and how well it is known. */
export function SourceLine({ source }: { readonly source: Source }): ReactElement {
  const place = source.clause === '' ? source.standard : `${source.standard}, ${source.clause}`
  const known = source.status === 'from memory' ? ' (from memory: check before you rely on it)' : ''
  return (
    <span className="source">
      {place}
      {known}
    </span>
  )
}
