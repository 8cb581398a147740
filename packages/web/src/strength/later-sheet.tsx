import { earlyRelation } from '@castwright/engine/quality/control-chart'
import { type ReactElement, useMemo } from 'react'
import { Explain, fixed, Sheet } from '../look/index.ts'
import { earlyPairs, type ResultSeries } from './result-series.ts'

/** What an early test lets expect at 28 days, by the yard's own pairs. */
export function LaterSheet({
  of,
  series,
}: {
  readonly of: ResultSeries
  readonly series: readonly ResultSeries[]
}): ReactElement {
  const last = of.tests.at(-1)
  const relation = useMemo(
    () =>
      last === undefined ? null : earlyRelation({ pairs: earlyPairs(series, of), early: last.strength }),
    [last, series, of],
  )
  return (
    <Sheet
      title="What it lets expect at 28 days"
      note="By the yard’s own early (14 to 24 h) and 28-day tests of the same pours of this mix."
    >
      {of.age !== '14 to 24 h' ? (
        <p>The relation starts from tests at 14 to 24 h.</p>
      ) : relation === null || !relation.known ? (
        <p>Not known: {relation === null ? 'no result' : relation.gaps.join('; ')}.</p>
      ) : (
        <>
          <p>
            {fixed(last?.strength, 1)} MPa early: {fixed(relation.value.late, 1)} MPa at 28 days,{' '}
            {fixed(relation.value.low, 1)} to {fixed(relation.value.high, 1)} for one later test, from{' '}
            {relation.value.count} pairs
            {relation.value.outside ? '; outside of the results that it stands on' : ''}.
          </p>
          <Explain about="relation of early and later strength" working={relation.working} />
        </>
      )}
    </Sheet>
  )
}
