import { describe, expect, it } from 'vitest'
import { codeFamily } from '../codes/index.ts'
import { acceptResults } from './accept-results.ts'
import { asBuilt } from './as-built.ts'
import { parseMeasured } from './measured.ts'
import { cornerHeights, warpOf } from './out-of-plane.ts'

const eu = codeFamily('eu')
const us = codeFamily('us')

function tests(values: readonly number[]): number[][] {
  return values.map((value) => [value])
}

function measured(change: Record<string, unknown>, length = 6000, width = 3000) {
  return parseMeasured({
    drawing: {
      format: 'castwright.drawing/1',
      mark: 'P1',
      outline: [
        [0, 0],
        [length, 0],
        [length, width],
        [0, width],
      ],
      thickness: 200,
      concrete: { strength: 40 },
    },
    ...change,
  })
}

function deviation(what: string, change: Record<string, unknown>, family = eu) {
  return asBuilt({ measured: measured(change), family }).deviations.find((found) => found.what === what)
}

describe('ACI 318-19, 26.12.3', () => {
  const RUN = [31.2, 27.0, 25.8, 29.4, 30.1, 26.2, 28.9, 24.1, 33.0, 29.5]
  it('a run for 28 MPa: lowest mean 26.40 and lowest test 24.1 of 24.5 both fail', () => {
    const found = acceptResults({ results: { specified: 28, results: tests(RUN) }, family: us })
    expect(found.verdict).toBe('fail')
    expect(found.rules[0]?.demand).toBeCloseTo(26.4, 9)
    expect(found.rules[0]).toMatchObject({ limit: 28, verdict: 'fail' })
    expect(found.rules[1]).toMatchObject({ demand: 24.1, limit: 24.5, verdict: 'fail' })
  })

  it('its first three tests: a mean of exactly 28.0 passes', () => {
    const found = acceptResults({ results: { specified: 28, results: tests(RUN.slice(0, 3)) }, family: us })
    expect(found.verdict).toBe('pass')
  })

  it('its first four: the second mean, 27.40, fails', () => {
    const found = acceptResults({ results: { specified: 28, results: tests(RUN.slice(0, 4)) }, family: us })
    expect(found.rules[0]?.demand).toBeCloseTo(27.4, 9)
    expect(found.rules.map(({ verdict }) => verdict)).toEqual(['fail', 'pass'])
  })

  it.each([
    [35, 31.5],
    [35.01, 31.509],
    [28, 24.5],
    [50, 45],
  ])('every test, %f MPa: at least %f', (specified, limit) => {
    const { rules } = acceptResults({ results: { specified, results: [[60]] }, family: us })
    expect(rules[1]?.limit).toBeCloseTo(limit, 9)
  })
})

describe('EN 206:2013+A2, 8.2.1.3', () => {
  const RUN = [44.1, 46.3, 42.8, 45.0, 47.9, 43.6, 41.9, 48.2, 44.7, 45.5, 46.0, 43.1, 47.0, 44.4, 45.8]

  it('continuous, 37 MPa, sigma 3.0: mean 45.087 of 41.44, least 41.9 of 33', () => {
    const { rules } = acceptResults({ results: { specified: 37, results: tests(RUN), sigma: 3 }, family: eu })
    expect(rules[0]?.demand).toBeCloseTo(45.087, 3)
    expect(rules[0]?.limit).toBeCloseTo(41.44, 9)
    expect(rules.at(-1)).toMatchObject({ demand: 41.9, limit: 33, verdict: 'pass' })
  })

  it('the same: deviation 1.840 below its window of 1.89 to 4.11, so sigma must be estimated again', () => {
    const found = acceptResults({ results: { specified: 37, results: tests(RUN), sigma: 3 }, family: eu })
    expect(found.rules[1]?.demand).toBeCloseTo(1.84, 3)
    expect([found.rules[1]?.limit, found.rules[2]?.limit]).toEqual([
      expect.closeTo(1.89, 9),
      expect.closeTo(4.11, 9),
    ])
    expect(found.verdict).toBe('unknown')
    expect(found.unknown.join()).toMatch(/sigma.*estimated again/)
  })

  it('the same with sigma 2.0: all within, passes', () => {
    const found = acceptResults({ results: { specified: 37, results: tests(RUN), sigma: 2 }, family: eu })
    expect(found.verdict).toBe('pass')
  })

  it('initial, 38.0, 42.5, 41.1 for 35 MPa: mean 40.533 of 39, least 38 of 31', () => {
    const found = acceptResults({ results: { specified: 35, results: tests([38, 42.5, 41.1]) }, family: eu })
    expect(found.rules[0]?.demand).toBeCloseTo(40.533, 3)
    expect(found.rules[0]?.limit).toBe(39)
    expect(found.rules[1]).toMatchObject({ demand: 38, limit: 31 })
    expect(found.verdict).toBe('pass')
  })
})

describe('geometry (computed, second method: by hand)', () => {
  const SHEARED = [
    [0, 0, 0],
    [6000, 0, 0],
    [6005, 3000, 0],
    [5, 3000, 0],
  ]
  it('6000 × 3000 sheared by 5: diagonals 6712.676 and 6703.732, difference 8.944', () => {
    const found = deviation('squareness', { corners: SHEARED })
    expect(found?.value).toBeCloseTo(8.944, 3)
    expect(found?.working[0]?.given).toMatchObject({
      d1: expect.closeTo(6712.676, 3),
      d2: expect.closeTo(6703.732, 3),
    })
  })

  it('the same taped', () => {
    expect(deviation('squareness', { diagonals: [6712.676, 6703.732] })?.value).toBeCloseTo(8.944, 3)
  })

  it('corners 0, 2, 5, −1 in order: warp 4', () => {
    expect(warpOf([0, 2, 5, -1])).toBe(4)
    const corners = [
      [0, 0, 0],
      [6000, 0, 2],
      [6000, 3000, 5],
      [0, 3000, -1],
    ]
    expect(deviation('warp', { corners })?.value).toBeCloseTo(4, 5)
  })

  it('the same: one quarter of it is left at each corner off the mean plane', () => {
    const heights = cornerHeights([
      [0, 0, 0],
      [6000, 0, 2],
      [6000, 3000, 5],
      [0, 3000, -1],
    ])
    for (const height of heights ?? []) expect(Math.abs(height)).toBeCloseTo(1, 5)
  })

  it('ends 2 and 4, middle 7: bow 4', () => {
    expect(deviation('bow', { edges: [[2, 7, 4]] })?.value).toBe(4)
  })
})

describe('EN 14992:2007, class B, diagonals', () => {
  it.each([
    [500, 8],
    [501, 14],
    [2500, 14],
    [3000, 14],
    [3001, 16],
    [6000, 16],
    [6100, 18],
    [10_000, 18],
    [10_100, 20],
  ])('%i mm: ±%i', (size, limit) => {
    expect(eu.quality.tolerance({ what: 'squareness', size })).toMatchObject({
      value: { low: -limit, high: limit, source: { status: 'seen' } },
    })
  })

  it('surface: 10 mm under 3 m (from memory)', () => {
    expect(eu.quality.tolerance({ what: 'flatness', size: 3000 })).toMatchObject({ value: { high: 10 } })
    expect(eu.quality.tolerance({ what: 'flatness', size: 2000 }).known).toBe(false)
  })
})

describe('EN 13369:2013, 4.3.1.1 (from memory)', () => {
  it.each([
    [3000, 13],
    [6000, 16],
    [12_000, 22],
    [30_000, 40],
    [30_001, 40],
  ])('length %i: ±%i', (size, limit) => {
    expect(eu.quality.tolerance({ what: 'length', size })).toMatchObject({
      value: { low: -limit, high: limit },
    })
  })

  it.each([
    [100, -5, 10],
    [150, -5, 10],
    [200, -7, 11],
    [400, -15, 15],
    [1450, -22.5, 22.5],
    [2500, -30, 30],
    [4000, -30, 30],
  ])('section %i: %f, +%f', (size, low, high) => {
    expect(eu.quality.tolerance({ what: 'thickness', size })).toMatchObject({
      value: { low: expect.closeTo(low, 9), high: expect.closeTo(high, 9) },
    })
  })
})

describe('PCI MNL-135-00, architectural panels', () => {
  it.each([
    [3048, -3, 3],
    [3049, -5, 3],
    [6096, -5, 3],
    [6097, -6, 6],
    [12_192, -6, 6],
    [12_193, -7.6, 7.6],
    [15_240, -7.6, 7.6],
  ])('overall %i: %f, +%f', (size, low, high) => {
    expect(us.quality.tolerance({ what: 'length', size })).toMatchObject({
      value: { low: expect.closeTo(low, 9), high: expect.closeTo(high, 9) },
    })
  })

  it.each([
    ['bow', 6000, 16.67],
    ['bow', 3000, 8.33],
    ['bow', 9001, 25],
    ['warp', 3000, 15.63],
    ['flatness', 3000, 6],
    ['thickness', 200, 6],
  ] as const)('%s over %i: %f', (what, size, limit) => {
    const found = us.quality.tolerance({ what, size })
    expect(found.known && Math.abs(found.value.high - limit)).toBeLessThan(0.01)
  })

  it('squareness: no confirmed value', () => {
    expect(us.quality.tolerance({ what: 'squareness', size: 6700 }).known).toBe(false)
  })
})

describe('ACI 301-16, 4.2.3.3: mean that a mix must have (from memory)', () => {
  const mean = (specified: number, deviation: number | null, tests: number) => {
    const found = us.quality.meanWanted({ specified, deviation, tests })
    return found.known ? found.value.mean : null
  }
  it.each([
    [35, 3.5, 30, 39.69],
    [35, 3.5, 15, 40.96],
    [30, 5, 30, 38.15],
    [50, 4, 22, 55.68],
    [30, null, 0, 38.3],
    [30, 5, 14, 38.3],
    [20, null, 0, 27],
    [40, null, 0, 49],
  ] as const)('%s MPa, deviation %s of %s tests: %s', (specified, deviation, tests, wanted) => {
    expect(Math.abs((mean(specified, deviation, tests) ?? 0) - wanted)).toBeLessThan(0.0051)
  })

  it('the two chances behind it are one in a hundred (normal law, computed by the series of erf)', () => {
    expect(below(1.34 * Math.sqrt(3))).toBeCloseTo(0.01014, 5)
    expect(below(2.33)).toBeCloseTo(0.0099, 5)
  })

  it('nothing below 0 and no strength: not known', () => {
    expect(mean(0, 3, 30)).toBeNull()
    expect(mean(30, -1, 30)).toBeNull()
  })
})

describe('EN 206:2013+A2, Table 14: mean that continuous production must have (from memory)', () => {
  it('37 MPa with 3.0 of 35 results: 41.44; not known of 34', () => {
    const found = eu.quality.meanWanted({ specified: 37, deviation: 3, tests: 35 })
    expect(found.known ? found.value.mean : null).toBeCloseTo(41.44, 9)
    expect(eu.quality.meanWanted({ specified: 37, deviation: 3, tests: 34 }).known).toBe(false)
  })
})

/** Chance of a normal deviate more than z below its mean, by the alternating series of erf. */
function below(z: number): number {
  const x = z / Math.SQRT2
  let [term, sum] = [x, x]
  for (let n = 1; n < 200; n += 1) {
    term *= (-x * x) / n
    sum += term / (2 * n + 1)
  }
  return (1 - (2 / Math.sqrt(Math.PI)) * sum) / 2
}
