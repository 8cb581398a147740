import { individualsChart, LEAST_VALUES } from '@castwright/engine/quality/control-chart'
import { type ReactElement, useMemo } from 'react'
import { Explain, fixed, Notice, Sheet } from '../look/index.ts'
import { dayText } from '../panel/when.ts'
import type { ResultSeries } from './result-series.ts'
import { TimeChart } from './time-chart.tsx'

/** Signals that are listed, the last ones. */
const LISTED = 12
/** With more points than this they run into each other: then only those that gave a signal are drawn. */
const DOTS = 60

/** Day of the pour of a test. */
export function dayOfTest({ tests }: ResultSeries, at: number): string {
  const test = tests[Math.round(at)]
  return test === undefined ? '' : dayText(test.mixed.slice(0, 10), { year: false })
}

/** Single tests in the order of sampling, with limits and the rules that fired. */
export function IndividualsSheet({
  of,
  from,
}: {
  readonly of: ResultSeries
  /** First test on the chart. */
  readonly from: number
}): ReactElement {
  const values = useMemo(() => of.tests.map(({ strength }) => strength), [of])
  const chart = useMemo(() => individualsChart({ values }), [values])
  const signals = chart.known ? chart.value.signals : []
  const fired = new Set(signals.map(({ at }) => at))
  const shown = of.tests.slice(from)
  const old = signals.length - LISTED
  return (
    <Sheet
      title={`Single tests: ${of.mix}, ${of.age}`}
      note="A test is the mean of its specimens. Limits from the mean moving range; a rule that fired asks for a cause, it judges no panel."
    >
      <TimeChart
        title={`${shown.length} of ${values.length} tests of ${of.mix} at ${of.age}`}
        unit="MPa"
        lines={[
          {
            name: 'tests in the order of sampling',
            look: 'main',
            points: shown.map(({ strength }, at) => [from + at, strength]),
          },
        ]}
        dots={shown.flatMap(({ strength, panels, specimens }, at) => {
          const signal = fired.has(from + at)
          return signal || shown.length <= DOTS
            ? [
                {
                  x: from + at,
                  y: strength,
                  text: `${panels[0]} ${specimens.join(', ')}: ${fixed(strength, 1)} MPa`,
                  signal,
                },
              ]
            : []
        })}
        levels={
          chart.known
            ? [
                { y: chart.value.high, text: `${fixed(chart.value.high, 1)} upper limit` },
                { y: chart.value.centre, text: `${fixed(chart.value.centre, 1)} mean` },
                { y: chart.value.low, text: `${fixed(chart.value.low, 1)} lower limit` },
              ]
            : []
        }
        xText={(at) => dayOfTest(of, at)}
      />
      {chart.known ? (
        <>
          <p role="status">
            {signals.length === 0
              ? 'No rule fired.'
              : `${signals.length} ${signals.length === 1 ? 'signal' : 'signals'}: look for a cause.`}
          </p>
          {old > 0 ? <p className="field-note">The last {LISTED} of them:</p> : null}
          <ul className="plain-list">
            {signals
              .slice(-LISTED)
              .reverse()
              .map(({ rule, at, side, text }) => (
                <li key={`${rule} ${at} ${side}`}>
                  <strong>{dayOfTest(of, at)}</strong>, {of.tests[at]?.panels[0]}: {text}
                </li>
              ))}
          </ul>
          <Explain about="limits of the chart" working={chart.working} />
        </>
      ) : (
        <Notice kind="unknown" title="No limits yet">
          {values.length < LEAST_VALUES
            ? `${values.length} of the ${LEAST_VALUES} tests that limits want.`
            : chart.gaps.join('; ')}
        </Notice>
      )}
    </Sheet>
  )
}
