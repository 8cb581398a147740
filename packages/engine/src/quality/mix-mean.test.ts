import { describe, expect, it } from 'vitest'
import { codeFamily } from '../codes/index.ts'
import { mixMean } from './mix-mean.ts'

const [us, eu, nz] = [codeFamily('us'), codeFamily('eu'), codeFamily('nz')]
/** Forty tests, 39 and 45 in turn: mean 42, deviation √(40 · 9 / 39) = 3.038 (computed, second method: by hand). */
const TESTS = Array.from({ length: 40 }, (_, at) => (at % 2 === 0 ? 39 : 45))

describe('mean of a mix', () => {
  it('is held against what its own scatter asks', () => {
    const found = mixMean({ specified: 35, tests: TESTS, family: us })
    expect(found.demand).toBe(42)
    expect(found.limit).toBeCloseTo(35 + 1.34 * Math.sqrt(360 / 39), 9)
    expect(found.verdict).toBe('pass')
    expect(mixMean({ specified: 38.5, tests: TESTS, family: us }).verdict).toBe('fail')
    expect(mixMean({ specified: 37, tests: TESTS, family: eu }).limit).toBeCloseTo(
      37 + 1.48 * Math.sqrt(360 / 39),
      9,
    )
  })

  it('goes by the strength alone with few tests in us, and is not known with few in eu', () => {
    expect(mixMean({ specified: 30, tests: [39, 40], family: us })).toMatchObject({
      limit: 38.3,
      verdict: 'pass',
    })
    expect(mixMean({ specified: 30, tests: [39, 40], family: eu }).verdict).toBe('unknown')
  })

  it('is not known without tests, or where the family has no confirmed rule', () => {
    expect(mixMean({ specified: 30, tests: [], family: us }).verdict).toBe('unknown')
    expect(mixMean({ specified: 30, tests: TESTS, family: nz }).verdict).toBe('unknown')
  })
})
