import { describe, expect, it } from 'vitest'
import { codeFamily } from '../../codes/index.ts'
import { replay } from '../../working/replay.ts'
import { withinTest } from './within-test.ts'

describe('specimens of one test', () => {
  // ACI 214R (from memory): s from the mean range over 1.128 (two) or 1.693 (three). Computed, second method: by hand.
  it('ranges of two with a mean of 1.128 MPa: 1 MPa, 2.8 MPa expected at most', () => {
    const tests = Array.from({ length: 10 }, (_, i) => [30, 30 + (i % 2 === 0 ? 0.628 : 1.628)])
    const found = withinTest({ tests })
    if (!found.known) throw new Error(found.gaps.join())
    expect(found.value.deviation).toBeCloseTo(1, 9)
    expect(found.value.ofTwo).toBeCloseTo(2.8, 9)
    expect(found.value.ofThree).toBeCloseTo(3.3, 9)
    expect(found.value.variation).toBeCloseTo(1 / 30.564, 6)
    expect(found.value.apart).toEqual([])
    for (const step of found.working.filter(({ by }) => by !== 'search'))
      expect(replay(step)).toBeCloseTo(Number(step.result), 9)
  })

  it('names the test whose specimens lie too far apart, and leaves single ones out', () => {
    const tests = [...Array.from({ length: 12 }, () => [40, 41]), [40, 47], [39]]
    const found = withinTest({ tests })
    // Mean range (12 · 1 + 7) / 13 = 1.4615: s 1.2957, 3.628 expected at most.
    expect(found.known && found.value.ofTwo).toBeCloseTo(3.628, 3)
    expect(found.known && found.value.apart).toEqual([12])
    expect(found.known && found.value.count).toBe(13)
  })

  it('is not known with fewer than ten tests of two or three, or with a strength that is none', () => {
    expect(withinTest({ tests: Array.from({ length: 9 }, () => [40, 41]) }).known).toBe(false)
    expect(withinTest({ tests: Array.from({ length: 12 }, () => [40]) }).known).toBe(false)
    expect(withinTest({ tests: Array.from({ length: 12 }, () => [40, 40]) }).known).toBe(false)
    expect(withinTest({ tests: Array.from({ length: 12 }, () => [40, Number.NaN]) }).known).toBe(false)
  })
})

describe('samples that a day wants', () => {
  // ACI 318-19, 26.12.2.1(a): once a day, once for each 115 m³, once for each 465 m² of slabs or walls.
  it.each([
    [10, 60, 1],
    [115, 60, 1],
    [115.1, 60, 2],
    [60, 500, 2],
    [400, 2000, 5],
  ])('us: %f m³ and %i m²: %i', (volume, area, tests) => {
    const found = codeFamily('us').quality.sampling({ volume, area })
    expect(found.known && found.value.tests).toBe(tests)
  })

  // EN 206:2013+A2, Table 17 (from memory): without certified control one for each 150 m³ or a production day.
  it.each([
    [10, 1],
    [150, 1],
    [151, 2],
  ])('eu: %i m³: %i, and what was assumed', (volume, tests) => {
    const found = codeFamily('eu').quality.sampling({ volume })
    expect(found.known && found.value.tests).toBe(tests)
    expect(found.assumed?.map(({ field }) => field)).toEqual(['production'])
  })

  it('is not known without volume, without surface in us, and where nothing is confirmed', () => {
    expect(codeFamily('us').quality.sampling({ volume: 10 }).known).toBe(false)
    expect(codeFamily('us').quality.sampling({ volume: 0, area: 1 }).known).toBe(false)
    expect(codeFamily('eu').quality.sampling({ volume: Number.NaN }).known).toBe(false)
    for (const family of ['nz', 'au'] as const)
      expect(codeFamily(family).quality.sampling({ volume: 10, area: 10 }).known).toBe(false)
  })
})

describe('tolerance on the test age', () => {
  // ASTM C39, permissible tolerance on the test age (from memory).
  it.each([
    [24, 0.5],
    [72, 2],
    [168, 6],
    [672, 20],
    [2160, 48],
  ])('us: %i h within %f h', (age, within) => {
    const found = codeFamily('us').quality.testAge(age)
    expect(found.known && found.value).toBe(within)
  })

  it('is not known for other ages and other families', () => {
    expect(codeFamily('us').quality.testAge(20).known).toBe(false)
    for (const family of ['eu', 'nz', 'au'] as const)
      expect(codeFamily(family).quality.testAge(672).known).toBe(false)
  })
})
