import type { PanelFacts } from '@castwright/engine/steps'
import type { ReactElement } from 'react'
import { AssumedList, fixed, Notice } from '../look/index.ts'
import type { StrengthLine } from './strength-line.ts'

/** In words what a curve stands on: mix, results, log, and what was assumed. */
export function RestsOn({
  facts,
  line,
  when,
}: {
  readonly facts: PanelFacts
  readonly line: StrengthLine
  readonly when: (hour: number) => string
}): ReactElement {
  const { cure, results } = line
  const { taken, slipped, kept } = cure
  return (
    <>
      <dl className="rests-on">
        <dt>Rests on</dt>
        <dd>
          {facts.cast?.mix ? `mix ${facts.cast.mix}: ` : ''}
          {cure.restsOn ?? 'the plan'}
        </dd>
        <dt>Results</dt>
        <dd>
          {taken.length === 0
            ? 'none taken in yet'
            : `brought up to date by ${taken.map(({ specimen }) => specimen).join(', ')}`}
        </dd>
        <dt>Temperature</dt>
        <dd>
          {cure.loggedTo === null
            ? 'planned: nothing is logged'
            : `logged to ${when(cure.loggedTo)} (${fixed(cure.loggedTo, 1)} h), then held at the last reading`}
        </dd>
      </dl>
      {slipped.length === 0 && kept.length === 0 ? null : (
        <Notice kind="unknown" title="Results that do not fit">
          <ul className="plain-list">
            {slipped.map((result) => (
              <li key={result.entry}>
                <strong>{result.specimen}</strong>, {fixed(result.strength, 1)} MPa at {fixed(result.age, 1)}{' '}
                h: too high to fit, counts for less. Find out why.
              </li>
            ))}
            {kept.map((result) => (
              <li key={result.entry}>
                <strong>{result.specimen}</strong>, {fixed(result.strength, 1)} MPa at {fixed(result.age, 1)}{' '}
                h: does not fit, counts in full, and the band is wider for it. Find out why.
              </li>
            ))}
          </ul>
        </Notice>
      )}
      {results.left.length === 0 ? null : (
        <ul className="plain-list">
          {results.left.map(({ result, why }) => (
            <li key={result.entry}>
              <strong>{result.specimen}</strong>, {fixed(result.strength, 1)} MPa, is left out: {why}.
            </li>
          ))}
        </ul>
      )}
      {cure.assumed.length === 0 ? null : (
        <details className="explain">
          <summary>
            {cure.assumed.length} assumed<span className="only-read"> for the curve</span>
          </summary>
          <div className="explain-body">
            <AssumedList assumed={cure.assumed} />
          </div>
        </details>
      )}
    </>
  )
}
