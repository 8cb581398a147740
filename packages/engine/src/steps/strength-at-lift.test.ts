import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { specimen } from './example-facts.ts'
import { inDate } from './in-date.ts'
import { strengthAtLift } from './strength-at-lift.ts'

const seed = 20261130

function low(values: readonly number[], change: object = {}): number | null {
  const specimens = values.map((value) => specimen(value))
  const found = strengthAtLift({ specimens, hour: 18, scatter: 0.08, curveLow: null, ...change })
  return found.known ? found.value.low : null
}

describe('strength of this pour at this hour', () => {
  it('one cylinder of 24 MPa, scatter 0.08: 24 · exp(−1.645 · 0.08 · √2) = 19.92 MPa', () => {
    expect(low([24])).toBeCloseTo(19.924, 3)
  })

  it('three of 24 with scatter: narrower, 24 · exp(−1.645 · 0.08 · √(4/3)) = 20.62 MPa', () => {
    expect(low([24, 24, 24])).toBeCloseTo(20.6166, 4)
  })

  it('22, 24, 26 without scatter: 24 − 2.920 · 2 · √(4/3) = 17.26 MPa', () => {
    expect(low([22, 24, 26], { scatter: null })).toBeCloseTo(17.257, 3)
  })

  it('never above the least result', () => {
    expect(low([10, 40, 40])).toBe(10)
  })

  it('the curve at the equivalent age lowers it and never raises it', () => {
    expect(low([24], { curveLow: { low: 12, working: [], rests: ['t'] } })).toBe(12)
    expect(low([24], { curveLow: { low: 99, working: [], rests: ['t'] } })).toBeCloseTo(19.924, 3)
  })

  it('reads only the latest test: earlier results are lower by nature', () => {
    const specimens = [specimen(8, { age: 10 }), specimen(24, { age: 17 }), specimen(23, { age: 15.5 })]
    const found = strengthAtLift({ specimens, hour: 18, scatter: 0.08, curveLow: null })
    expect(found.known && found.value.rests).toEqual(['s-24', 's-23'])
  })

  it('counts a cube by the ratio that an engineer entered, rests on it, and not without one', () => {
    const cubeRatio = {
      entry: 'l1',
      value: 0.8,
      unit: '',
      standard: 'tests of the yard',
      edition: '2026',
      by: { id: 'p2', name: 'Ines Calder', role: 'engineer' },
    } as const
    const specimens = [specimen(30, { kind: 'cube' })]
    const found = strengthAtLift({ specimens, hour: 18, scatter: 0.08, curveLow: null, cubeRatio })
    // 24 MPa as a cylinder.
    expect(found.known && found.value.low).toBeCloseTo(19.924, 3)
    expect(found.known && found.value.rests).toEqual(['s-30', 'l1'])
    const without = strengthAtLift({ specimens, hour: 18, scatter: 0.08, curveLow: null })
    expect(without.known ? '' : without.gaps.join()).toMatch(/without a ratio that an engineer entered/)
  })

  it('does not count what was cured by the standard: it says nothing of the panel at this hour', () => {
    const cured = (how: 'panel' | 'standard') =>
      strengthAtLift({
        specimens: [specimen(24, { cured: how })],
        hour: 18,
        scatter: 0.08,
        curveLow: null,
      })
    expect(cured('panel').known).toBe(true)
    const standard = cured('standard')
    expect(standard.known ? '' : standard.gaps.join()).toMatch(/cured by the standard/)
  })

  it.each<[string, readonly number[], object]>([
    ['no result', [], {}],
    ['a result of nothing', [0], {}],
    ['a result that is no number', [Number.NaN], {}],
    ['an hour before mixing', [24], { hour: -1 }],
    ['no hour', [24], { hour: Number.NaN }],
    ['one result and no scatter', [24], { scatter: null }],
    ['two results and no scatter', [24, 25], { scatter: null }],
    ['a curve that is no number', [24], { curveLow: { low: Number.NaN, working: [], rests: [] } }],
  ])('is not known with %s', (_, values, change) => {
    expect(low(values, change)).toBeNull()
  })

  it(`is never above any result of the latest test (seed ${seed})`, () => {
    const results = fc.array(fc.double({ min: 1, max: 80, noNaN: true }), { minLength: 1, maxLength: 12 })
    fc.assert(
      fc.property(results, fc.option(fc.double({ min: 0.01, max: 0.5, noNaN: true })), (values, scatter) => {
        const found = low(values, { scatter })
        if (found !== null) expect(found).toBeLessThanOrEqual(Math.min(...values))
      }),
      { seed, numRuns: 300 },
    )
  })
})

describe('gear in date', () => {
  const zone = { timezone: 'Pacific/Fiji' }
  it.each([
    ['2026-06-02', '2026-06-02T11:59:59.999Z', 'pass'],
    ['2026-06-02', '2026-06-02T12:00:00.000Z', 'fail'],
    ['2026-06-03', '2026-06-02T12:00:00.000Z', 'pass'],
  ] as const)('due %s, in Fiji at %s: %s', (due, now, verdict) => {
    expect(inDate({ due, now, ...zone })).toBe(verdict)
  })
  it.each([
    [null, '2026-06-02T12:00:00.000Z', 'Europe/Dublin'],
    ['soon', '2026-06-02T12:00:00.000Z', 'Europe/Dublin'],
    ['2026-06-02', 'now', 'Europe/Dublin'],
    ['2026-06-02', '2026-06-02T12:00:00.000Z', null],
    ['2026-06-02', '2026-06-02T12:00:00.000Z', 'Mars/Base'],
  ])('due %s, now %s in %s: not known', (due, now, timezone) => {
    expect(inDate({ due, now, timezone })).toBe('unknown')
  })
})
