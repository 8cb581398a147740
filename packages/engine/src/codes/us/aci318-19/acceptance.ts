import { notAboveZero } from '../../../working/guard.ts'
import type { Source } from '../../../working/source.ts'
import { known, type Step, unknown, type Worked } from '../../../working/worked.ts'
import { acceptanceRule, meanOf } from '../../acceptance-rule.ts'
import type { AcceptanceInput, AcceptanceRule } from '../../quality-rules.ts'

const RUNNING: Source = { standard: 'ACI 318-19', clause: '26.12.3.1(a)', status: 'seen' }
const SINGLE: Source = { standard: 'ACI 318-19', clause: '26.12.3.1(b)', status: 'seen' }
const RUN = 3

/**
 * Acceptance of strength tests: every mean of three consecutive tests reaches the specified strength, and no test is
 * below it by more than 3.5 MPa (up to 35 MPa) or 10 % (above). Tests are means of at least two cylinders.
 *
 * Fewer than three tests: the first rule is unknown. Missing only the first rule asks for a higher average, missing the
 * second for an investigation; both are fails here.
 *
 * Source: ACI 318-19, 26.12.3.1 (seen). Example: 31.2, 27.0, 25.8 for 28 MPa: mean 28.0 passes, least 25.8 of 24.5.
 */
export function acceptanceAci318({ specified, tests }: AcceptanceInput): Worked<readonly AcceptanceRule[]> {
  const gaps = [
    ...notAboveZero({ specified }),
    ...tests.flatMap((test, index) => notAboveZero({ [`tests[${index}]`]: test })),
  ]
  if (gaps.length > 0) return unknown(...gaps)
  const rules = [running(specified, tests), single(specified, tests)]
  return known(
    rules,
    rules.flatMap(({ working }) => working),
  )
}

function running(specified: number, tests: readonly number[]): AcceptanceRule {
  const means = tests.slice(RUN - 1).map((_, index) => meanOf(tests.slice(index, index + RUN)))
  const least = Math.min(...means)
  const first = means.indexOf(least)
  const [a = 0, b = 0, c = 0] = tests.slice(first, first + RUN)
  const working: Step[] =
    means.length === 0
      ? []
      : [
          {
            symbol: 'fcm3',
            formula: '(a + b + c) / 3',
            given: { a, b, c },
            result: least,
            unit: 'MPa',
            source: RUNNING,
            note: `lowest of ${means.length}, tests ${first + 1} to ${first + RUN}`,
          },
        ]
  return acceptanceRule({
    rule: 'every mean of three consecutive tests',
    demand: means.length > 0 ? least : null,
    limit: specified,
    source: RUNNING,
    missing: means.length > 0 ? [] : [`results: at least three tests, found ${tests.length}`],
    working,
  })
}

function single(specified: number, tests: readonly number[]): AcceptanceRule {
  const low = specified <= 35
  const limit = low ? specified - 3.5 : 0.9 * specified
  return acceptanceRule({
    rule: 'every test',
    demand: tests.length > 0 ? Math.min(...tests) : null,
    limit,
    source: SINGLE,
    missing: tests.length > 0 ? [] : ['results: at least one test'],
    working: [
      {
        symbol: 'f min',
        formula: low ? 'f − 3.5' : '0.90 f',
        given: { f: specified },
        result: limit,
        unit: 'MPa',
        source: SINGLE,
        note: low ? 'up to 35 MPa' : 'above 35 MPa',
      },
    ],
  })
}
