import type { TrialView } from '@castwright/engine/lift/trial'
import type { ReactElement } from 'react'
import { fixed } from '../look/index.ts'
import { loadText } from './load-text.ts'

export interface CompareDrawnProps {
  readonly drawn: TrialView | null
  readonly trial: TrialView | null
}

/** Drawn and trial side by side: the peak and the load of each insert. */
export function CompareDrawn({ drawn, trial }: CompareDrawnProps): ReactElement {
  if (drawn === null || trial === null) {
    return (
      <p role="status">
        {drawn === null
          ? 'The drawn inserts carry nothing at this stage that could be compared.'
          : 'Nothing to compare: the trial is not known.'}
      </p>
    )
  }
  const marks = drawn.supports.map(({ mark }) => mark)
  return (
    <table className="compare">
      <caption>{drawn.how}</caption>
      <thead>
        <tr>
          <td />
          <th scope="col" className="figure">
            drawn
          </th>
          <th scope="col" className="figure">
            trial
          </th>
        </tr>
      </thead>
      <tbody>
        <tr>
          <th scope="row">Peak, MPa</th>
          <td className="figure number">{fixed(drawn.peak?.stress, 2)}</td>
          <td className="figure number">{fixed(trial.peak?.stress, 2)}</td>
        </tr>
        <tr>
          <th scope="row">Greatest sag, mm</th>
          <td className="figure">{fixed(drawn.sag?.most, 2)}</td>
          <td className="figure">{fixed(trial.sag?.most, 2)}</td>
        </tr>
        {marks.map((mark) => (
          <tr key={mark}>
            <th scope="row">Load at {mark}</th>
            <td className="figure">{loadAt(drawn, mark)}</td>
            <td className="figure">{loadAt(trial, mark)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

function loadAt({ supports }: TrialView, mark: string): string {
  const load = supports.find((support) => support.mark === mark)?.load ?? null
  return load === null ? 'not known' : loadText(load)
}
