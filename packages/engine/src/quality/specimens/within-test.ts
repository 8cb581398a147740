import type { Source } from '../../working/source.ts'
import { known, unknown, type Worked } from '../../working/worked.ts'

const RANGES: Source = {
  standard: 'ACI 214R',
  clause: 'within-test variation from the ranges of companion specimens',
  status: 'from memory',
}
const EXPECTED: Source = {
  standard: 'ASTM C670',
  clause: 'difference limits: 2.8 s of two, 3.3 s of three results',
  status: 'from memory',
}

/** Mean range of that many normal values over their standard deviation. */
const D2: Readonly<Record<number, number>> = { 2: 1.128, 3: 1.693 }
/** Range of that many results that is passed once in twenty, over their standard deviation. */
const LIMIT: Readonly<Record<number, number>> = { 2: 2.8, 3: 3.3 }

/** Tests of two or three specimens that the variation stands on, at least. ACI 214R, from memory. */
export const LEAST_RANGES = 10

export interface WithinTest {
  /** Standard deviation within a test, MPa. */
  readonly deviation: number
  /** Over the mean of those tests. */
  readonly variation: number
  /** Tests that it stands on. */
  readonly count: number
  /** Largest range expected of two and of three specimens, MPa. */
  readonly ofTwo: number
  readonly ofThree: number
  /** Places of the tests whose specimens lie farther apart. */
  readonly apart: readonly number[]
}

/** Range of the specimens of a test, MPa. */
export function rangeOf(specimens: readonly number[]): number {
  return Math.max(...specimens) - Math.min(...specimens)
}

/** Result of a test: the mean of its specimens, MPa. */
export function meanOfTest(specimens: readonly number[]): number {
  return specimens.reduce((sum, each) => sum + each, 0) / specimens.length
}

/**
 * How far specimens of one test lie apart, and which tests lie farther apart than one in twenty should: look at the press, the caps
 * and the making before the concrete.
 *
 * Each inner list is one test, MPa. Only tests of two or three specimens tell; unknown with fewer than ten of them.
 * Source: ACI 214R, ASTM C670 (from memory). Example: ranges of two with a mean of 1.128 MPa: s 1 MPa, 2.8 MPa expected at most.
 */
export function withinTest({
  tests,
}: {
  readonly tests: readonly (readonly number[])[]
}): Worked<WithinTest> {
  const odd = tests.findIndex((test) => test.some((each) => !(each > 0) || !Number.isFinite(each)))
  if (odd >= 0) return unknown(`tests[${odd}]: strengths above 0`)
  const telling = tests.filter(({ length }) => D2[length] !== undefined)
  if (telling.length < LEAST_RANGES)
    return unknown(`tests: at least ${LEAST_RANGES} of two or three specimens, found ${telling.length}`)
  const mean = (of: (test: readonly number[]) => number) =>
    telling.reduce((sum, test) => sum + of(test), 0) / telling.length
  const deviation = mean((test) => rangeOf(test) / (D2[test.length] ?? Number.NaN))
  if (!(deviation > 0)) return unknown('tests: specimens that differ')
  const strength = mean(meanOfTest)
  const [ofTwo, ofThree] = [2, 3].map((count) => (LIMIT[count] ?? Number.NaN) * deviation) as [number, number]
  return known(
    {
      deviation,
      variation: deviation / strength,
      count: telling.length,
      ofTwo,
      ofThree,
      apart: tests.flatMap((test, at) =>
        rangeOf(test) > (LIMIT[test.length] ?? Number.POSITIVE_INFINITY) * deviation * (1 + 1e-12)
          ? [at]
          : [],
      ),
    },
    [
      {
        symbol: 's',
        formula: 'mean of range / d2',
        given: { n: telling.length, 'd2 of two': 1.128, 'd2 of three': 1.693 },
        result: deviation,
        unit: 'MPa',
        source: RANGES,
        by: 'search',
      },
      {
        symbol: 'R2',
        formula: '2.8 s',
        given: { s: deviation },
        result: ofTwo,
        unit: 'MPa',
        source: EXPECTED,
      },
      {
        symbol: 'R3',
        formula: '3.3 s',
        given: { s: deviation },
        result: ofThree,
        unit: 'MPa',
        source: EXPECTED,
      },
    ],
  )
}
