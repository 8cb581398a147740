import { describe, expect, it } from 'vitest'
import { hourAtChance } from './gain/chance-met.ts'
import { POPULATION_PRIOR } from './gain/population.ts'
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

describe('a curve brought up to date by cylinders of the pour', () => {
  const plain = liveCurve(ask)
  const at10 = plain.curve[10]?.[1] ?? Number.NaN

  it('gives the probability of the wanted strength by the hour, one half where the curve crosses it', () => {
    const { chance, hour } = plain
    expect(chance.map(([each]) => each)).toEqual(plain.curve.map(([each]) => each))
    const after = chance.find(([each]) => each >= (hour ?? Number.NaN))
    const before = chance.findLast(([each]) => each < (hour ?? Number.NaN))
    expect(after?.[1]).toBeGreaterThanOrEqual(0.5)
    expect(before?.[1]).toBeLessThan(0.5)
    expect(liveCurve({ ...ask, wanted: null }).chance).toEqual([])
  })

  it('names the hour of a probability, straight between its hours', () => {
    const chance = [
      [10, 0.2],
      [11, 0.6],
      [12, 0.95],
    ] as const
    expect(hourAtChance(chance, 0.5)).toBeCloseTo(10.75, 9)
    expect(hourAtChance(chance, 0.95)).toBe(12)
    expect(hourAtChance(chance, 0.1)).toBe(10)
    expect(hourAtChance(chance, 0.99)).toBeNull()
    expect(hourAtChance([], 0.5)).toBeNull()
    expect(hourAtChance(plain.chance, 0.95)).toBeCloseTo(plain.hourLow ?? Number.NaN, 1)
  })

  it('is later with a weak cylinder, and says what it rests on', () => {
    const weak = liveCurve({ ...ask, until: 60, cylinders: [{ hour: 10, strength: 0.8 * at10 }] })
    expect(weak.hour).toBeGreaterThan(plain.hour ?? Number.NaN)
    expect(weak.hourLow).toBeGreaterThan(weak.hour ?? Number.NaN)
    expect(weak.restsOn).toMatch(/^1 cylinder of this pour/)
    expect(weak.assumed.map(({ field }) => field)).toContain('cylinders[].celsius')
    expect(plain.restsOn).toBeNull()
  })

  it('takes a cylinder at its own temperature: cured colder it counts as younger, so the pour is stronger', () => {
    const cylinder = { hour: 10, strength: at10 }
    const beside = liveCurve({ ...ask, cylinders: [cylinder] })
    const cold = liveCurve({ ...ask, cylinders: [{ ...cylinder, celsius: 12 }] })
    expect(cold.hour).toBeLessThan(beside.hour ?? Number.NaN)
    expect(cold.assumed.map(({ field }) => field)).not.toContain('cylinders[].celsius')
  })

  it('is not known with a cylinder that cannot be, or a mix without scatter', () => {
    expect(liveCurve({ ...ask, cylinders: [{ hour: 0, strength: 9 }] }).unknown.join()).toMatch(
      /cylinders\[0\]\.hour/,
    )
    // An age of no concrete: the law of the curve is no number there.
    const old = { hour: 1e308, strength: 42 }
    const asked = { ...ask, cylinders: [{ hour: 370, strength: 47, celsius: 20 }, old] }
    expect(liveCurve(asked)).toMatchObject({ curve: [], unknown: [expect.stringMatching(/^cylinders\[1\]/)] })
    const bare = liveCurve({ ...ask, mix: { curve: MIX.curve }, cylinders: [{ hour: 10, strength: 9 }] })
    expect(bare.unknown).toEqual([expect.stringMatching(/^scatter/)])
    expect(bare.hourLow).toBeNull()
  })

  it('stands on open tests where the mix has neither curve nor tests, from one day on', () => {
    const log = {
      ...ask,
      until: 100,
      readings: [
        [0, 20],
        [100, 20],
      ] as const,
    }
    expect(liveCurve({ ...log, mix: {} }).unknown).toEqual(['mix: neither curve nor tests'])
    const open = liveCurve({ ...log, mix: {}, open: POPULATION_PRIOR })
    expect(open.curve[0]?.[0]).toBe(24)
    expect(open.restsOn).toMatch(/open tests of 339 mixes/)
    const told = liveCurve({
      ...log,
      mix: {},
      cylinders: [
        { hour: 30, strength: 14 },
        { hour: 48, strength: 19 },
      ],
    })
    const width = (of: typeof open) =>
      (of.curve.at(-1)?.[3] ?? Number.NaN) / (of.curve.at(-1)?.[2] ?? Number.NaN)
    expect(width(told)).toBeLessThan(0.6 * width(open))
    expect(told.restsOn).toMatch(/^2 cylinders of this pour; open tests/)
    const chances = told.chance.map(([, probability]) => probability)
    expect(chances.every((each) => each >= 0 && each <= 1)).toBe(true)
    expect(chances.at(-1)).toBeGreaterThan(chances[0] ?? 1)
  })
})
