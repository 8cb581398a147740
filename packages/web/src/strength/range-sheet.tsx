import { rangeOf, withinTest } from '@castwright/engine/quality/specimens'
import { type ReactElement, useMemo } from 'react'
import { Explain, fixed, Sheet } from '../look/index.ts'
import { dayOfTest } from './individuals-sheet.tsx'
import type { ResultSeries } from './result-series.ts'

/** Tests that are listed, the last ones. */
const LISTED = 10

/** How far specimens of one test lie apart. */
export function RangeSheet({ of }: { readonly of: ResultSeries }): ReactElement {
  const found = useMemo(() => withinTest({ tests: of.tests.map(({ strengths }) => strengths) }), [of])
  return (
    <Sheet
      title="Specimens of one test"
      note="Where companions lie far apart, look at the press, the caps and the making before the concrete."
    >
      {found.known ? (
        <>
          <p>
            {fixed(found.value.deviation, 2)} MPa within a test, {fixed(100 * found.value.variation, 1)} % of
            the mean, from {found.value.count} tests. One pair in twenty lies more than{' '}
            {fixed(found.value.ofTwo, 1)} MPa apart, one set of three more than{' '}
            {fixed(found.value.ofThree, 1)} MPa.
          </p>
          <p role="status">
            {found.value.apart.length === 0
              ? 'No test is farther apart.'
              : `${found.value.apart.length} ${found.value.apart.length === 1 ? 'test is' : 'tests are'} farther apart.`}
          </p>
          <ul className="plain-list">
            {found.value.apart
              .slice(-LISTED)
              .reverse()
              .map((at) => {
                const { specimens = [], strengths = [] } = of.tests[at] ?? {}
                return (
                  <li key={at}>
                    <strong>{dayOfTest(of, at)}</strong>, {specimens.join(', ')}:{' '}
                    {strengths.map((each) => fixed(each, 1)).join(' and ')} MPa,{' '}
                    {fixed(rangeOf(strengths), 1)} apart
                  </li>
                )
              })}
          </ul>
          <Explain about="range within a test" working={found.working} />
        </>
      ) : (
        <p>Not known: {found.gaps.join('; ')}.</p>
      )}
    </Sheet>
  )
}
