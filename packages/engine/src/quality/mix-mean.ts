import type { CodeFamily } from '../codes/family.ts'
import { type Check, compare } from '../working/check.ts'
import { commonPractice } from '../working/source.ts'
import type { Step } from '../working/worked.ts'

export interface MixMeanInput {
  /** MPa */
  readonly specified: number
  /** Tests of the mix, MPa; none of an age or cure of its own. */
  readonly tests: readonly number[]
  readonly family: CodeFamily
}

/**
 * Whether the mean of a mix is as high as its own scatter asks by the family: below it, missed tests are a matter of time, whatever the last ones
 * were. Unknown without tests, and where the family has no confirmed rule or asks for more tests.
 */
export function mixMean({ specified, tests, family }: MixMeanInput): Check {
  const n = tests.length
  const mean = n === 0 ? null : tests.reduce((sum, value) => sum + value, 0) / n
  const deviation =
    mean === null || n < 2
      ? null
      : Math.sqrt(tests.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (n - 1))
  const wanted = family.quality.meanWanted({ specified, deviation, tests: n })
  return compare({
    id: 'mix-mean',
    step: 'deliver',
    what: 'Mean of the mix, beside what its scatter asks',
    demand: mean,
    limit: wanted.known ? wanted.value.mean : null,
    unit: 'MPa',
    sense: 'at least',
    source: wanted.known ? wanted.value.source : commonPractice('no confirmed rule'),
    working: [...deviationStep(deviation, n), ...(wanted.known ? wanted.working : [])],
    missing: [...(mean === null ? ['results: at least one test'] : []), ...(wanted.known ? [] : wanted.gaps)],
    note: `${n} ${n === 1 ? 'test' : 'tests'}. It speaks of what is to come, not of a panel.`,
  })
}

function deviationStep(deviation: number | null, tests: number): Step[] {
  return deviation === null
    ? []
    : [
        {
          symbol: 's',
          formula: 'standard deviation of the tests',
          given: { n: tests },
          result: deviation,
          unit: 'MPa',
          source: { standard: 'sample standard deviation', clause: '', status: 'computed' },
          by: 'search',
        },
      ]
}
