import { notAboveZero } from '../../../working/guard.ts'
import type { Source } from '../../../working/source.ts'
import { known, type Step, unknown, type Worked } from '../../../working/worked.ts'
import type { MeanWanted, MeanWantedInput } from '../../quality-rules.ts'

/** ACI 318 printed it until 2011; since 2014 it stands in ACI 301. */
const REQUIRED: Source = {
  standard: 'ACI 301-16',
  clause: '4.2.3.3 (ACI 318-11 Table 5.3.2.1)',
  status: 'from memory',
}
const FEW: Source = {
  standard: 'ACI 301-16',
  clause: '4.2.3.3 (ACI 318-11 Table 5.3.1.2)',
  status: 'from memory',
}

/** What the deviation of few tests is raised by. */
const RAISED: readonly (readonly [tests: number, factor: number])[] = [
  [15, 1.16],
  [20, 1.08],
  [25, 1.03],
  [30, 1],
]

/**
 * Mean that a mix must have so that about one run of three, or one test, in a hundred misses the rules of acceptance.
 *
 * From the deviation of at least 15 tests, raised for fewer than 30; without it by the specified strength alone. Unknown where a
 * strength or deviation is not above 0. Example: 35 MPa, deviation 3.5 of 30 tests: 39.69; of 15 tests: 40.96.
 */
export function meanWantedAci301({ specified, deviation, tests }: MeanWantedInput): Worked<MeanWanted> {
  const few = deviation === null || tests < (RAISED[0]?.[0] ?? 0)
  const gaps = notAboveZero({ specified, ...(few ? {} : { deviation }) })
  if (gaps.length > 0) return unknown(...gaps)
  return few ? withoutDeviation(specified) : withDeviation(specified, deviation, tests)
}

function withDeviation(specified: number, s: number, tests: number): Worked<MeanWanted> {
  const k = factorOf(tests)
  const low = specified <= 35
  const mean = Math.max(
    specified + 1.34 * k * s,
    low ? specified + 2.33 * k * s - 3.5 : 0.9 * specified + 2.33 * k * s,
  )
  const step: Step = {
    symbol: "f'cr",
    formula: low ? 'max(f + 1.34 k s, f + 2.33 k s − 3.5)' : 'max(f + 1.34 k s, 0.90 f + 2.33 k s)',
    given: { f: specified, k, s },
    result: mean,
    unit: 'MPa',
    source: REQUIRED,
    note: `${tests} tests; ${low ? 'up to' : 'above'} 35 MPa`,
  }
  return known({ mean, source: REQUIRED }, [step])
}

function withoutDeviation(specified: number): Worked<MeanWanted> {
  const [mean, formula] =
    specified < 21
      ? [specified + 7, 'f + 7.0']
      : specified <= 35
        ? [specified + 8.3, 'f + 8.3']
        : [1.1 * specified + 5, '1.10 f + 5.0']
  const step: Step = {
    symbol: "f'cr",
    formula,
    given: { f: specified },
    result: mean,
    unit: 'MPa',
    source: FEW,
    note: 'fewer than 15 tests',
  }
  return known({ mean, source: FEW }, [step])
}

/** Straight between the rows; 1 from 30 tests on. */
function factorOf(tests: number): number {
  const at = RAISED.findIndex(([count]) => count > tests)
  const [after, before] = [RAISED[at], RAISED[at - 1]]
  if (after === undefined || before === undefined) return 1
  return before[1] + ((after[1] - before[1]) * (tests - before[0])) / (after[0] - before[0])
}
