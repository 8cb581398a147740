import { notAboveZero } from '../../../working/guard.ts'
import type { Source } from '../../../working/source.ts'
import { known, type Step, unknown, type Worked } from '../../../working/worked.ts'
import { acceptanceRule, meanOf } from '../../acceptance-rule.ts'
import type { AcceptanceInput, AcceptanceRule } from '../../quality-rules.ts'

const STANDARD = 'EN 206:2013+A2'
const INDIVIDUAL: Source = { standard: STANDARD, clause: '8.2.1.3, individual results', status: 'seen' }
const MEAN: Source = { standard: STANDARD, clause: '8.2.1.3, Table 14', status: 'from memory' }
const SIGMA: Source = {
  standard: STANDARD,
  clause: '8.2.1.3, verification of the standard deviation',
  status: 'seen',
}

/** Results of a continuous production that the mean is taken over, at least. */
const CONTINUOUS = 15
const GROUP = 3

/**
 * Conformity of compressive strength. Without `sigma` initial production: groups of three without overlap; with it
 * continuous production: the mean of at least 15, and the standard deviation of the last 15 between 0.63 and 1.37 sigma.
 * Each result is held against the specified strength less 4 MPa in both.
 *
 * Fewer results than a rule needs: that rule is unknown. A standard deviation outside its window does not condemn the
 * concrete: sigma no longer holds and must be estimated again, so what rests on it is unknown.
 *
 * Source: EN 206:2013+A2, 8.2.1.3 (individual and sigma seen, means from memory).
 * Example: 38.0, 42.5, 41.1 for 35 MPa: mean 40.53 of 39, least 38.0 of 31.
 */
export function acceptanceEn206({
  specified,
  tests,
  sigma,
}: AcceptanceInput): Worked<readonly AcceptanceRule[]> {
  const gaps = [
    ...notAboveZero({ specified, ...(sigma === undefined ? {} : { sigma }) }),
    ...tests.flatMap((test, index) => notAboveZero({ [`tests[${index}]`]: test })),
  ]
  if (gaps.length > 0) return unknown(...gaps)
  const rules = [
    ...(sigma === undefined ? initial(specified, tests) : continuous(specified, tests, sigma)),
    individual(specified, tests),
  ]
  return known(
    rules,
    rules.flatMap(({ working }) => working),
  )
}

function individual(specified: number, tests: readonly number[]): AcceptanceRule {
  const limit = specified - 4
  return acceptanceRule({
    rule: 'each result',
    demand: tests.length > 0 ? Math.min(...tests) : null,
    limit,
    source: INDIVIDUAL,
    missing: tests.length > 0 ? [] : ['results: at least one'],
    working: [
      {
        symbol: 'fci,min',
        formula: 'fck − 4',
        given: { fck: specified },
        result: limit,
        unit: 'MPa',
        source: INDIVIDUAL,
      },
    ],
  })
}

function initial(specified: number, tests: readonly number[]): AcceptanceRule[] {
  const limit = specified + 4
  const groups = Array.from({ length: Math.floor(tests.length / GROUP) }, (_, index) =>
    meanOf(tests.slice(GROUP * index, GROUP * (index + 1))),
  )
  const left = tests.length % GROUP
  const least = Math.min(...groups)
  const first = GROUP * groups.indexOf(least)
  const [a = 0, b = 0, c = 0] = tests.slice(first, first + GROUP)
  const working: Step[] =
    groups.length === 0
      ? []
      : [
          {
            symbol: 'fcm',
            formula: '(a + b + c) / 3',
            given: { a, b, c },
            result: least,
            unit: 'MPa',
            source: MEAN,
            note: `lowest of ${groups.length} groups, tests ${first + 1} to ${first + GROUP}`,
          },
          {
            symbol: 'fcm,min',
            formula: 'fck + 4',
            given: { fck: specified },
            result: limit,
            unit: 'MPa',
            source: MEAN,
          },
        ]
  return [
    acceptanceRule({
      rule: 'mean of each group of three, initial production',
      demand: groups.length > 0 ? least : null,
      limit,
      source: MEAN,
      missing: groups.length > 0 ? [] : [`results: at least three, found ${tests.length}`],
      working,
      ...(left > 0 && groups.length > 0 ? { note: `the last ${left} do not fill a group yet` } : {}),
    }),
  ]
}

function continuous(specified: number, tests: readonly number[], sigma: number): AcceptanceRule[] {
  const limit = specified + 1.48 * sigma
  const enough = tests.length >= CONTINUOUS
  const missing = enough ? [] : [`results: at least ${CONTINUOUS}, found ${tests.length}`]
  const mean = enough ? meanOf(tests) : null
  const last = tests.slice(-CONTINUOUS)
  const deviation = enough ? deviationOf(last) : null
  const [lowest, highest] = [0.63 * sigma, 1.37 * sigma]
  const holds = deviation !== null && deviation >= lowest * (1 - 1e-9) && deviation <= highest * (1 + 1e-9)
  const again = 'sigma: no longer holds, to be estimated again from the last 35 results'
  const window = (rule: string, edge: number, factor: number): AcceptanceRule => ({
    rule,
    demand: deviation,
    limit: edge,
    verdict: holds ? 'pass' : 'unknown',
    source: SIGMA,
    working: [
      {
        symbol: 's limit',
        formula: 'c σ',
        given: { c: factor, σ: sigma },
        result: edge,
        unit: 'MPa',
        source: SIGMA,
      },
    ],
    ...(holds ? {} : { unknown: deviation === null ? missing : [again] }),
  })
  return [
    acceptanceRule({
      rule: 'mean of all results, continuous production',
      demand: mean,
      limit,
      source: MEAN,
      missing,
      working: [
        {
          symbol: 'fcm',
          formula: 'mean of the results',
          given: { n: tests.length },
          result: mean ?? 'not known',
          unit: 'MPa',
          source: MEAN,
          by: 'search',
        },
        {
          symbol: 'fcm,min',
          formula: 'fck + 1.48 σ',
          given: { fck: specified, σ: sigma },
          result: limit,
          unit: 'MPa',
          source: MEAN,
        },
      ],
    }),
    window('standard deviation of the last 15, at least 0.63 sigma', lowest, 0.63),
    window('standard deviation of the last 15, at most 1.37 sigma', highest, 1.37),
  ]
}

function deviationOf(values: readonly number[]): number {
  const mean = meanOf(values)
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0)
  return Math.sqrt(squares / (values.length - 1))
}
