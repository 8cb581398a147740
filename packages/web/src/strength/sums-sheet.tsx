import { cusumChart, individualsChart } from '@castwright/engine/quality/control-chart'
import { type ReactElement, useMemo, useState } from 'react'
import { Explain, fixed, NumberField, readNumber, Sheet } from '../look/index.ts'
import { dayOfTest } from './individuals-sheet.tsx'
import type { ResultSeries } from './result-series.ts'
import { TimeChart } from './time-chart.tsx'

/** One-sided sums against the mean that is aimed at. */
export function SumsSheet({ of, from }: { readonly of: ResultSeries; readonly from: number }): ReactElement {
  const values = useMemo(() => of.tests.map(({ strength }) => strength), [of])
  const own = useMemo(() => individualsChart({ values }), [values])
  const [target, setTarget] = useState('')
  const [sigma, setSigma] = useState('')
  const entered = { target: readNumber(target), sigma: readNumber(sigma) }
  const chart = useMemo(
    () =>
      cusumChart({
        values,
        target: entered.target ?? Number.NaN,
        sigma: entered.sigma ?? (own.known ? own.value.sigma : Number.NaN),
      }),
    [values, entered.target, entered.sigma, own],
  )
  const line = (sums: readonly number[]) => sums.slice(from).map((value, at) => [from + at, value] as const)
  return (
    <Sheet
      title="Cumulative sums"
      note="A slow shift of the mean shows here long before single tests pass a limit."
    >
      <div className="row">
        <NumberField
          label="Mean that is aimed at"
          unit="MPa"
          value={target}
          onText={setTarget}
          note="The yard’s own; no rule gives it."
        />
        <NumberField
          label="Standard deviation"
          unit="MPa"
          value={sigma}
          onText={setSigma}
          note={
            own.known ? `Empty: ${fixed(own.value.sigma, 2)} of these tests, assumed.` : 'The yard’s own.'
          }
        />
      </div>
      {chart.known ? (
        <>
          <TimeChart
            title="One-sided sums below and above the target"
            unit="MPa"
            from={0}
            lines={[
              { name: 'below the target', look: 'main', points: line(chart.value.low) },
              { name: 'above the target', look: 'second', points: line(chart.value.high) },
            ]}
            levels={[{ y: chart.value.decision, text: `${fixed(chart.value.decision, 1)} signals` }]}
            xText={(at) => dayOfTest(of, at)}
          />
          <p role="status">
            {chart.value.signals.length === 0
              ? 'No signal.'
              : chart.value.signals
                  .slice(-5)
                  .map(
                    ({ at, side }) =>
                      `${dayOfTest(of, at)}: the mean is ${side === 'low' ? 'under' : 'over'} the target`,
                  )
                  .join('; ')}
          </p>
          <Explain about="decision interval" working={chart.working} />
        </>
      ) : (
        <p>
          {entered.target === null
            ? 'Enter the mean that is aimed at.'
            : 'Enter a standard deviation: these tests are too few, or too much alike, to give one.'}
        </p>
      )}
    </Sheet>
  )
}
