import { describe, expect, it } from 'vitest'
import { type LiveCurveInput, liveCurve } from './live-curve.ts'
import { strengthNow } from './strength-from-log.ts'

const MIX = {
  curve: { form: 'hyperbolic', ultimate: 55, rate: 0.036, offset: 4 },
  scatter: 0.07,
  reference: 20,
  activation: 40_000,
} as const
const ask: LiveCurveInput = {
  mix: MIX,
  readings: [
    [0, 20],
    [4, 30],
    [10, 12],
  ],
  wanted: 15,
  until: 30,
}

describe('a curve that goes on from its log', () => {
  it('is that of the log as far as the log goes', () => {
    const { curve } = liveCurve(ask)
    for (const hour of [1, 5, 7, 10]) {
      const now = strengthNow({ mix: MIX, readings: ask.readings, hour })
      expect(curve[hour]?.[1]).toBeCloseTo(now.strength ?? Number.NaN, 9)
      expect(curve[hour]?.[2]).toBeCloseTo(now.low ?? Number.NaN, 9)
    }
  })

  it('goes on at the temperature of the last reading, which is listed as assumed', () => {
    const held = liveCurve({ ...ask, readings: [...ask.readings, [30, 12]] })
    const found = liveCurve(ask)
    expect(found.curve[30]?.[1]).toBeCloseTo(held.curve[30]?.[1] ?? Number.NaN, 8)
    expect(found.assumed).toEqual([expect.objectContaining({ field: 'cure.temperature', value: 12 })])
    expect(liveCurve({ ...ask, celsius: 12 }).assumed).toEqual([])
  })

  it('meets what is wanted where its low edge crosses it', () => {
    const { hourLow, hour, curve } = liveCurve(ask)
    expect(hour).toBeLessThan(hourLow ?? 0)
    const before = curve.find(([at]) => at === Math.floor(hourLow ?? 0))
    const after = curve.find(([at]) => at === Math.ceil(hourLow ?? 0))
    expect(before?.[2]).toBeLessThan(15)
    expect(after?.[2]).toBeGreaterThan(15)
  })

  it('in the cold meets it later than planned at 20 °C', () => {
    const cold = liveCurve({
      ...ask,
      readings: [
        [0, 14],
        [2, 8],
        [6, 8],
      ],
    })
    expect(cold.hourLow).toBeGreaterThan(25)
  })

  it.each<[string, Partial<LiveCurveInput>, RegExp]>([
    ['one reading', { readings: [[0, 20]] }, /readings/],
    ['no curve', { mix: { scatter: 0.1 } }, /neither curve nor tests/],
    ['a temperature that is none', { celsius: Number.NaN }, /celsius/],
    ['no end', { until: Number.NaN }, /until/],
  ])('is not known with %s', (_, change, gap) => {
    const found = liveCurve({ ...ask, ...change })
    expect(found).toMatchObject({ hour: null, hourLow: null, curve: [] })
    expect(found.unknown.join()).toMatch(gap)
  })

  it('draws the curve, and knows no hour, where nothing is known of what is wanted', () => {
    const found = liveCurve({ ...ask, wanted: null })
    expect(found.curve).toHaveLength(31)
    expect(found).toMatchObject({ hour: null, hourLow: null, unknown: [expect.stringMatching(/wanted/)] })
  })
})
