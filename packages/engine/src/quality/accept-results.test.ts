import { describe, expect, it } from 'vitest'
import { codeFamily } from '../codes/index.ts'
import { replay } from '../working/replay.ts'
import { acceptResults, parseResults } from './accept-results.ts'

const eu = codeFamily('eu')
const us = codeFamily('us')
const few = {
  specified: 30,
  results: [
    [36, 38],
    [35, 37],
  ],
}

describe('acceptance of results', () => {
  it('a test is the mean of its specimens', () => {
    const { rules } = acceptResults({ results: few, family: us })
    expect(rules[1]).toMatchObject({ demand: 36, verdict: 'pass' })
  })

  it('of fewer than three tests is not known, though each test is judged', () => {
    for (const family of [us, eu]) {
      const found = acceptResults({ results: few, family })
      expect(found.verdict).toBe('unknown')
      expect(found.rules.map(({ verdict }) => verdict)).toEqual(['unknown', 'pass'])
      expect(found.unknown.join()).toMatch(/at least three/)
    }
  })

  it('a fail outranks what is not known', () => {
    const found = acceptResults({ results: { specified: 40, results: [[30]] }, family: us })
    expect(found.verdict).toBe('fail')
  })

  it('us looks at every run of three, eu at groups without overlap', () => {
    const results = [34, 34, 40, 28, 28, 50].map((value) => [value])
    const [overlapping, groups] = [us, eu].map((family) =>
      acceptResults({ results: { specified: 30, results }, family }),
    )
    expect(overlapping?.rules[0]?.demand).toBeCloseTo(32, 9)
    expect(groups?.rules[0]?.demand).toBeCloseTo(106 / 3, 9)
  })

  it('eu says how many results do not fill a group yet', () => {
    const results = [40, 41, 42, 43].map((value) => [value])
    const { rules } = acceptResults({ results: { specified: 30, results }, family: eu })
    expect(rules[0]?.note).toMatch(/the last 1/)
  })

  it('eu continuous needs fifteen results', () => {
    const make = (count: number) => Array.from({ length: count }, (_, i) => [40 + (i % 5)])
    const at = (count: number) =>
      acceptResults({ results: { specified: 30, results: make(count), sigma: 1.6 }, family: eu })
    expect(at(14).rules[0]?.verdict).toBe('unknown')
    expect(at(15).rules[0]?.verdict).toBe('pass')
    expect(at(15).verdict).toBe('pass')
  })

  it('us lists tests of a single cylinder as assumed', () => {
    const results = { specified: 30, results: [[36], [37, 38], [36]] }
    expect(acceptResults({ results, family: us }).assumed).toEqual([expect.objectContaining({ value: 2 })])
    expect(acceptResults({ results, family: eu }).assumed).toEqual([])
  })

  it.each(['nz', 'au'] as const)('is not known in %s, and says why', (id) => {
    const found = acceptResults({ results: few, family: codeFamily(id) })
    expect(found).toMatchObject({ verdict: 'unknown', rules: [] })
    expect(found.unknown[0]).toMatch(/not confirmed/)
  })

  it('is not known of impossible values that got past the edge', () => {
    for (const family of [us, eu]) {
      expect(family.quality.acceptance({ specified: Number.NaN, tests: [30] }).known).toBe(false)
      expect(family.quality.acceptance({ specified: 30, tests: [0] }).known).toBe(false)
      expect(family.quality.acceptance({ specified: 30, tests: [] })).toMatchObject({ known: true })
    }
    expect(eu.quality.acceptance({ specified: 30, tests: [30], sigma: 0 }).known).toBe(false)
  })

  it('its working gives its own numbers again', () => {
    const results = [34, 34, 40, 28, 28, 50, 41, 39, 38, 37, 42, 44, 41, 40, 39, 36].map((value) => [value])
    for (const [family, sigma] of [
      [us, undefined],
      [eu, undefined],
      [eu, 5],
    ] as const) {
      const { working } = acceptResults({
        results: { specified: 38, results, ...(sigma === undefined ? {} : { sigma }) },
        family,
      })
      expect(working.length).toBeGreaterThan(1)
      for (const step of working) {
        const value = replay(step)
        if (value !== null) expect(value, step.formula).toBeCloseTo(Number(step.result), 9)
      }
    }
  })

  it.each([
    [us, 30, 3, 18],
    [us, 45, 4, 40],
    [us, 45, null, 0],
    [eu, 45, 3, 40],
  ] as const)('so does that of the mean a mix must have (%#)', (family, specified, deviation, tests) => {
    const found = family.quality.meanWanted({ specified, deviation, tests })
    expect(found.known).toBe(true)
    if (!found.known) return
    const [step] = found.working
    expect(step === undefined ? null : replay(step)).toBeCloseTo(found.value.mean, 9)
  })

  it.each([
    [{ results: [[1]] }, /specified/],
    [{ specified: 0, results: [[1]] }, /specified: found 0/],
    [{ specified: 30, results: [] }, /results: .*at least 1/],
    [{ specified: 30, results: [[]] }, /results\[0\]/],
    [{ specified: 30, results: [[30], [-1]] }, /results\[1\]\[0\]: found -1/],
    [{ specified: 30, results: [[30]], sigma: 0 }, /sigma/],
    [{ specified: 30, results: [30] }, /results\[0\]/],
    [{ specified: 30, results: [['x']] }, /results\[0\]\[0\]/],
  ])('%j is refused', (value, message) => {
    expect(() => parseResults(value)).toThrow(message)
  })
})
