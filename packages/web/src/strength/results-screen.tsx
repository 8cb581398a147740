import './strength.css'
import { codeFamily } from '@castwright/engine/codes'
import { acceptResults } from '@castwright/engine/quality'
import { cusumChart, earlyRelation, individualsChart } from '@castwright/engine/quality/control-chart'
import { type ReactElement, useMemo, useState } from 'react'
import {
  Explain,
  fixed,
  Notice,
  NumberField,
  readNumber,
  SelectField,
  Sheet,
  useTitle,
  VerdictMark,
} from '../look/index.ts'
import { dayText } from '../panel/when.ts'
import { useYardState } from '../record/index.ts'
import { earlyPairs, type ResultSeries, resultSeries } from './result-series.ts'
import { StrengthFrame } from './strength-frame.tsx'
import { TimeChart } from './time-chart.tsx'

/** Results of all pours by mix and age: the chart of single values with the rules that fired, cumulative sums, acceptance. */
export function ResultsScreen(): ReactElement {
  useTitle('Strength: results')
  const { panels } = useYardState()
  const series = useMemo(() => resultSeries(panels.values()), [panels])
  const [chosen, setChosen] = useState('')
  const of = series.find(({ mix, age }) => `${mix}/${age}` === chosen) ?? longest(series)
  if (of === undefined) {
    return (
      <StrengthFrame page="Results">
        <Sheet
          title="No results yet"
          note="Cylinders, cubes and probes are entered on the cure card of their panel."
        />
      </StrengthFrame>
    )
  }
  return (
    <StrengthFrame page="Results">
      <div className="row">
        <SelectField
          label="Mix and age"
          value={`${of.mix}/${of.age}`}
          onChange={(event) => setChosen(event.currentTarget.value)}
        >
          {series.map(({ mix, age, results }) => (
            <option key={`${mix}/${age}`} value={`${mix}/${age}`}>
              {mix}, {age}: {results.length}
            </option>
          ))}
        </SelectField>
      </div>
      <Individuals key={`${of.mix}/${of.age}`} of={of} />
      <Sums of={of} />
      {of.age === '28 d' ? <Accepted of={of} /> : <Later of={of} series={series} />}
    </StrengthFrame>
  )
}

function longest(series: readonly ResultSeries[]): ResultSeries | undefined {
  return [...series].sort((a, b) => b.results.length - a.results.length)[0]
}

function nameOf({ results }: ResultSeries, at: number): string {
  const result = results[Math.round(at)]
  return result === undefined ? '' : dayText(result.mixed.slice(0, 10), { year: false })
}

function Individuals({ of }: { readonly of: ResultSeries }): ReactElement {
  const values = of.results.map(({ strength }) => strength)
  const chart = individualsChart({ values })
  return (
    <Sheet
      title={`Single results: ${of.mix}, ${of.age}`}
      note="Limits from the mean moving range; a rule that fired asks for a cause, it judges no panel."
    >
      <TimeChart
        title={`${values.length} results of ${of.mix} at ${of.age}`}
        unit="MPa"
        lines={[
          {
            name: 'results in order of their pours',
            look: 'main',
            points: values.map((value, at) => [at, value]),
          },
        ]}
        dots={of.results.map(({ strength, panel, specimen }, at) => ({
          x: at,
          y: strength,
          text: `${panel} ${specimen}: ${strength} MPa`,
        }))}
        levels={
          chart.known
            ? [
                { y: chart.value.high, text: `${fixed(chart.value.high, 1)} upper limit` },
                { y: chart.value.centre, text: `${fixed(chart.value.centre, 1)} mean` },
                { y: chart.value.low, text: `${fixed(chart.value.low, 1)} lower limit` },
              ]
            : []
        }
        xText={(at) => nameOf(of, at)}
      />
      {chart.known ? (
        <>
          <p role="status">
            {chart.value.signals.length === 0
              ? 'No rule fired.'
              : `${chart.value.signals.length} signals: look for a cause.`}
          </p>
          <ul className="plain-list">
            {chart.value.signals.slice(-20).map(({ rule, at, side, text }) => (
              <li key={`${rule} ${at} ${side}`}>
                {nameOf(of, at)}, {of.results[at]?.panel}: {text}
              </li>
            ))}
          </ul>
          <Explain about="limits of the chart" working={chart.working} />
        </>
      ) : (
        <Notice kind="unknown" title="No limits yet">
          {chart.gaps.join('; ')}
        </Notice>
      )}
    </Sheet>
  )
}

function Sums({ of }: { readonly of: ResultSeries }): ReactElement {
  const values = of.results.map(({ strength }) => strength)
  const own = individualsChart({ values })
  const [target, setTarget] = useState('')
  const [sigma, setSigma] = useState('')
  const entered = { target: readNumber(target), sigma: readNumber(sigma) }
  const chart = cusumChart({
    values,
    target: entered.target ?? Number.NaN,
    sigma: entered.sigma ?? (own.known ? own.value.sigma : Number.NaN),
  })
  return (
    <Sheet
      title="Cumulative sums"
      note="A slow shift of the mean shows here long before single results pass a limit."
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
            own.known ? `Empty: ${fixed(own.value.sigma, 2)} of these results, assumed.` : 'The yard’s own.'
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
              {
                name: 'below the target',
                look: 'main',
                points: chart.value.low.map((value, at) => [at, value]),
              },
              {
                name: 'above the target',
                look: 'second',
                points: chart.value.high.map((value, at) => [at, value]),
              },
            ]}
            levels={[{ y: chart.value.decision, text: `${fixed(chart.value.decision, 1)} signals` }]}
            xText={(at) => nameOf(of, at)}
          />
          <p role="status">
            {chart.value.signals.length === 0
              ? 'No signal.'
              : chart.value.signals
                  .map(
                    ({ at, side }) =>
                      `${nameOf(of, at)}: the mean is ${side === 'low' ? 'under' : 'over'} the target`,
                  )
                  .join('; ')}
          </p>
          <Explain about="decision interval" working={chart.working} />
        </>
      ) : (
        <p>Enter the mean that is aimed at.</p>
      )}
    </Sheet>
  )
}

function Accepted({ of }: { readonly of: ResultSeries }): ReactElement {
  const { yard } = useYardState()
  const [specified, setSpecified] = useState('')
  const code = yard.yard?.code
  const strength = readNumber(specified)
  const found =
    code === undefined || strength === null || strength <= 0
      ? null
      : acceptResults({
          results: { specified: strength, results: of.results.map((result) => [result.strength]) },
          family: codeFamily(code),
        })
  return (
    <Sheet
      title="Acceptance by the code family"
      note="Each result counts as one test here; sets of several are judged by `castwright accept`."
    >
      <NumberField label="Strength specified" unit="MPa" value={specified} onText={setSpecified} />
      {found === null ? null : (
        <>
          <p>
            <VerdictMark verdict={found.verdict} withWord />
          </p>
          <ul className="plain-list">
            {found.rules.map((rule) => (
              <li key={rule.rule}>
                <VerdictMark verdict={rule.verdict} silent /> {rule.rule}: {fixed(rule.demand, 1)} of{' '}
                {fixed(rule.limit, 1)} MPa ({rule.source.standard} {rule.source.clause})
              </li>
            ))}
            {found.unknown.map((gap) => (
              <li key={gap}>Not known: {gap}</li>
            ))}
          </ul>
        </>
      )}
    </Sheet>
  )
}

function Later({
  of,
  series,
}: {
  readonly of: ResultSeries
  readonly series: readonly ResultSeries[]
}): ReactElement {
  const pairs = earlyPairs(series, of.mix)
  const last = of.results.at(-1)
  const relation = last === undefined ? null : earlyRelation({ pairs, early: last.strength })
  return (
    <Sheet
      title="What it lets expect at 28 days"
      note="By the yard’s own early and 28-day results of the same pours of this mix."
    >
      {relation === null || !relation.known ? (
        <p>Not known: {relation === null ? 'no result' : relation.gaps.join('; ')}.</p>
      ) : (
        <>
          <p>
            {last?.strength} MPa early: {fixed(relation.value.late, 1)} MPa at 28 days,{' '}
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
