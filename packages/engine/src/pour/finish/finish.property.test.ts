// What always holds of a fresh surface, whatever the numbers.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { menzelRate, unoRate } from '../drying.ts'
import { dryingAdvice } from './advice.ts'
import { setShare } from './set-share.ts'
import { surfaceTemperature } from './surface-temperature.ts'
import { sheenGone, surfaceWater } from './water.ts'
import { finishWindows } from './windows.ts'

const SEED = 20_261_129
const run = { seed: SEED, numRuns: 150 }
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })

const CASE = fc.record({
  concrete: number(3, 35),
  air: number(-5, 38),
  humidity: number(10, 95),
  wind: number(0, 40),
  thickness: number(80, 400),
  initial: number(2, 9),
  activation: number(30_000, 45_000),
  placed: number(0.2, 1.5),
  passes: fc.integer({ min: 1, max: 6 }),
  kind: fc.constantFrom('plain', 'little', 'hardly' as const),
  seen: fc.option(fc.record({ hour: number(0.5, 8), share: number(0.05, 1) }), { nil: null }),
})

type Case = typeof CASE extends fc.Arbitrary<infer T> ? T : never

function surface(one: Case) {
  const temperature = surfaceTemperature({
    readings: [{ hour: 0.4, celsius: one.concrete, from: 'truck' }],
    air: () => one.air,
    thickness: one.thickness,
    until: 72,
  })
  const set = setShare({ temperature, reference: 20, ...one })
  const held = { air: [[0, one.air] as const, [72, one.air] as const] }
  const hours = Array.from({ length: 73 }, (_, hour) => hour)
  const water = surfaceWater({
    temperature,
    air: {
      air: hours.map((hour) => [hour, held.air[0]?.[1] ?? 0]),
      humidity: hours.map((hour) => [hour, one.humidity]),
      wind: hours.map((hour) => [hour, one.wind]),
    },
    placed: one.placed,
    until: one.placed + 10,
    thickness: one.thickness,
    kind: one.kind,
    activation: one.activation,
  })
  return { temperature, set, water, sheen: sheenGone(water) }
}

describe(`a fresh surface, seed ${SEED}`, () => {
  it('warmer concrete never sets later', () => {
    fc.assert(
      fc.property(CASE, number(0, 10), (one, warmer) => {
        const cold = surface({ ...one, seen: null }).set.hourOf(1)
        const warm = surface({ ...one, seen: null, concrete: one.concrete + warmer }).set.hourOf(1)
        if (cold !== null) expect(warm ?? Number.NaN).toBeLessThanOrEqual(cold + 1e-9)
      }),
      run,
    )
  })

  it('warmer air never makes it set later', () => {
    fc.assert(
      fc.property(CASE, number(0, 15), (one, warmer) => {
        const cold = surface({ ...one, seen: null }).set.hourOf(1)
        const warm = surface({ ...one, seen: null, air: one.air + warmer }).set.hourOf(1)
        if (cold !== null) expect(warm ?? Number.NaN).toBeLessThanOrEqual(cold + 1e-9)
      }),
      run,
    )
  })

  it('more wind never dries slower, and never keeps the sheen longer where it dries', () => {
    fc.assert(
      fc.property(CASE, number(0, 30), (one, more) => {
        const windy = { ...one, wind: one.wind + more }
        for (const rate of [unoRate, menzelRate]) {
          const [still, blown] = [rate(one), rate(windy)]
          if (still >= 0) expect(blown).toBeGreaterThanOrEqual(still - 1e-12)
        }
        const still = surface(one)
        if (still.water.some(({ rate }) => (rate ?? -1) < 0)) return
        const blown = surface(windy).sheen
        if (typeof still.sheen === 'number')
          expect(typeof blown === 'number' ? blown : Number.NaN).toBeLessThanOrEqual(still.sheen + 1e-9)
      }),
      run,
    )
  })

  it('the windows stand in order, one after the other, and no number is missing', () => {
    fc.assert(
      fc.property(CASE, fc.constantFrom('computed', 'stays', 'not known'), (one, told) => {
        const { set, sheen } = surface(one)
        const windows = finishWindows({
          set,
          reference: 20,
          ...one,
          sheen: told === 'computed' ? sheen : (told as 'stays'),
        })
        if (windows === null) return
        expect(windows).toHaveLength(one.passes + 3)
        let before = one.placed
        for (const { from, to } of windows) {
          expect(Number.isFinite(from) && Number.isFinite(to)).toBe(true)
          expect(from).toBeGreaterThanOrEqual(before - 1e-9)
          expect(to).toBeGreaterThanOrEqual(from - 1e-9)
          before = to
        }
      }),
      run,
    )
  })

  it('a sign that says it is further on never moves initial set later', () => {
    fc.assert(
      fc.property(CASE, number(0.5, 6), number(0.05, 0.9), number(0, 0.1), (one, hour, share, more) => {
        const less = surface({ ...one, seen: { hour, share } }).set.hourOf(1)
        const further = surface({ ...one, seen: { hour, share: share + more } }).set.hourOf(1)
        if (less !== null) expect(further ?? Number.NaN).toBeLessThanOrEqual(less + 1e-9)
      }),
      run,
    )
  })

  it('the share at the hour of a sign is that of the sign, and never falls with time', () => {
    fc.assert(
      fc.property(CASE, number(0.5, 6), number(0.05, 1), (one, hour, share) => {
        const { set } = surface({ ...one, seen: { hour, share } })
        expect(set.shareAt(hour)).toBeCloseTo(share, 9)
        for (let at = 0.25; at < 20; at += 0.25)
          expect(set.shareAt(at)).toBeGreaterThanOrEqual(set.shareAt(at - 0.25) - 1e-12)
      }),
      run,
    )
  })

  it('advice stands in order of what it takes off, and never takes off more than there is', () => {
    fc.assert(
      fc.property(CASE, ({ air, humidity, wind, concrete }) => {
        const advice = dryingAdvice({ over: { air, humidity, wind }, concrete })
        const now = unoRate({ air, humidity, wind, concrete })
        if (now <= 0) expect(advice).toEqual([])
        for (const [at, { less, rate }] of advice.entries()) {
          expect(rate).toBeGreaterThanOrEqual(0)
          expect(less + rate).toBeCloseTo(now, 9)
          expect(less).toBeLessThanOrEqual(advice[at - 1]?.less ?? Number.POSITIVE_INFINITY)
        }
      }),
      run,
    )
  })
})
