import './strength.css'
import { type ReactElement, useMemo, useState } from 'react'
import { SelectField, Sheet, useTitle } from '../look/index.ts'
import { useYardState } from '../record/index.ts'
import { AcceptedSheet } from './accepted-sheet.tsx'
import { IndividualsSheet } from './individuals-sheet.tsx'
import { LaterSheet } from './later-sheet.tsx'
import { RangeSheet } from './range-sheet.tsx'
import { type ResultSeries, resultSeries, seriesText } from './result-series.ts'
import { StrengthFrame } from './strength-frame.tsx'
import { SumsSheet } from './sums-sheet.tsx'

/** Tests of all pours by mix and age: the chart of single values with the rules that fired, cumulative sums, ranges, acceptance. */
export function ResultsScreen(): ReactElement {
  useTitle('Strength: results')
  const { panels } = useYardState()
  const series = useMemo(() => resultSeries(panels.values()), [panels])
  const [chosen, setChosen] = useState('')
  const [shown, setShown] = useState(LAST[0])
  const of = series.find(({ key }) => key === chosen) ?? longest(series)
  if (of === undefined) {
    return (
      <StrengthFrame page="Results">
        <Sheet
          title="No results yet"
          note="Cylinders, cubes and probes are entered on the page Specimens, or on the cure card of their panel."
        />
      </StrengthFrame>
    )
  }
  const from = Math.max(0, of.tests.length - shown)
  return (
    <StrengthFrame page="Results">
      <div className="row">
        <SelectField
          label="Mix, age and specimens"
          value={of.key}
          onChange={(event) => setChosen(event.currentTarget.value)}
        >
          {series.map((each) => (
            <option key={each.key} value={each.key}>
              {seriesText(each)}
            </option>
          ))}
        </SelectField>
        {of.tests.length > LAST[0] ? (
          <SelectField
            label="On the charts"
            value={String(shown)}
            note="Limits and rules always look at all of them."
            onChange={(event) => setShown(Number(event.currentTarget.value))}
          >
            {LAST.map((count) => (
              <option key={count} value={count}>
                {count === Number.MAX_SAFE_INTEGER ? 'all tests' : `the last ${count}`}
              </option>
            ))}
          </SelectField>
        ) : null}
      </div>
      <IndividualsSheet key={of.key} of={of} from={from} />
      <SumsSheet key={`sums ${of.key}`} of={of} from={from} />
      <RangeSheet of={of} />
      {of.age === '28 d' ? (
        <AcceptedSheet key={`accepted ${of.key}`} of={of} />
      ) : (
        <LaterSheet of={of} series={series} />
      )}
    </StrengthFrame>
  )
}

/** How many tests a chart shows: what a phone can carry first. */
const LAST: readonly [number, ...number[]] = [40, 150, Number.MAX_SAFE_INTEGER]

function longest(series: readonly ResultSeries[]): ResultSeries | undefined {
  return [...series].sort((a, b) => b.tests.length - a.tests.length)[0]
}
