import { codeFamily } from '@castwright/engine/codes'
import { acceptResults, mixMean } from '@castwright/engine/quality'
import { type ReactElement, useMemo, useState } from 'react'
import {
  AssumedList,
  Explain,
  fixed,
  Notice,
  NumberField,
  readNumber,
  Sheet,
  VerdictMark,
} from '../look/index.ts'
import { useYardState } from '../record/index.ts'
import type { ResultSeries } from './result-series.ts'

/** The family's rules of acceptance over the 28-day tests of a mix, in the order of sampling. */
export function AcceptedSheet({ of }: { readonly of: ResultSeries }): ReactElement {
  const { yard } = useYardState()
  const mix = yard.yard?.mixes?.find(({ mark }) => mark === of.mix)
  // The strength of a mix is that of cylinders.
  const own = of.kind === 'cylinder' && mix !== undefined ? String(mix.strength) : ''
  const [specified, setSpecified] = useState(own)
  const [sigma, setSigma] = useState('')
  const code = yard.yard?.code
  const strength = readNumber(specified)
  const deviation = readNumber(sigma)
  const found = useMemo(
    () =>
      code === undefined || strength === null || strength <= 0
        ? null
        : acceptResults({
            results: {
              specified: strength,
              results: of.tests.map(({ strengths }) => [...strengths]),
              ...(deviation !== null && deviation > 0 ? { sigma: deviation } : {}),
            },
            family: codeFamily(code),
          }),
    [code, strength, deviation, of],
  )
  const mean = useMemo(
    () =>
      code === undefined || strength === null || strength <= 0
        ? null
        : mixMean({
            specified: strength,
            tests: of.tests.map((test) => test.strength),
            family: codeFamily(code),
          }),
    [code, strength, of],
  )
  return (
    <Sheet
      title="Acceptance by the code family"
      note="The mean of a test’s specimens is one result. It judges the concrete of the mix, not one panel."
    >
      {of.cured === 'standard' ? null : (
        <Notice kind="unknown" title="Cured with the panels">
          Acceptance is written for specimens cured by the standard. These say how the panels fared.
        </Notice>
      )}
      <div className="row">
        <NumberField
          label="Strength specified"
          unit="MPa"
          value={specified}
          onText={setSpecified}
          note={own === '' ? `Of ${of.kind}s.` : `${own} is that of the mix in the yard’s file.`}
        />
        <NumberField
          label="Standard deviation of the production before"
          unit="MPa"
          value={sigma}
          onText={setSigma}
          note="Only where the family judges a continuous production by it."
        />
      </div>
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
          {found.assumed.length === 0 ? null : <AssumedList assumed={found.assumed} />}
          <Explain about="acceptance" working={found.working} />
        </>
      )}
      {mean === null ? null : (
        <>
          <p>
            <VerdictMark verdict={mean.verdict} withWord /> {mean.what}: {fixed(mean.demand, 1)} of{' '}
            {fixed(mean.limit, 1)} MPa ({mean.source.standard} {mean.source.clause}). {mean.note}
          </p>
          {(mean.unknown ?? []).map((gap) => (
            <p key={gap}>Not known: {gap}</p>
          ))}
          <Explain about="mean of the mix" working={mean.working} />
        </>
      )}
    </Sheet>
  )
}
