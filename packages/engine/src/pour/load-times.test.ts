import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { replay } from '../working/replay.ts'
import { jointMinutes, latestBegin, loadTimes } from './load-times.ts'

const CASE = { ordered: 9, body: 6, rate: 12, haul: 25, checking: 10, limit: 90, joint: 30 }

describe('trucks of one pour', () => {
  it('two loads: the second is batched so that it begins as the first ends', () => {
    const found = loadTimes(CASE)
    if (!found.known) throw new Error(found.gaps.join())
    expect(
      found.value.loads.map(({ volume, batched, arrives, begins, ends, age }) => [
        volume,
        batched,
        arrives,
        begins,
        ends,
        age,
      ]),
    ).toEqual([
      [6, 0, 25, 35, 65, 65],
      [3, 30, 55, 65, 80, 50],
    ])
    expect([found.value.minutes, found.value.oldest, found.value.longestGap]).toEqual([80, 65, 0])
    for (const step of found.working) expect(replay(step)).toBeCloseTo(Number(step.result), 9)
  })

  it('says so where a load would grow too old before it is placed', () => {
    const found = loadTimes({ ...CASE, rate: 5 })
    expect(found.known ? '' : found.gaps.join()).toContain('107 min')
    expect(loadTimes({ ...CASE, rate: 5, limit: null }).known).toBe(true)
  })

  it('takes no truck for a few litres', () => {
    const found = loadTimes({ ...CASE, ordered: 6.1 })
    expect(found.known ? found.value.loads.map(({ volume }) => volume) : []).toEqual([
      expect.closeTo(5.6, 9),
      0.5,
    ])
  })

  it('lets a surface wait by the temperature, half as long where it shows', () => {
    expect([26, 25, 15, 14].map((air) => jointMinutes({ air, visible: false }))).toEqual([30, 45, 45, 60])
    expect(jointMinutes({ air: 30, visible: true })).toBe(15)
    expect(latestBegin({ joint: 30 }, { ends: 65 })).toBe(95)
  })

  it('is not known for impossible numbers', () => {
    for (const change of [{ ordered: 0 }, { body: -1 }, { rate: Number.NaN }, { haul: -1 }, { limit: 0 }])
      expect(loadTimes({ ...CASE, ...change }).known).toBe(false)
  })

  it('brings all that was ordered, no load over the body, each begun as the one before ended', () => {
    const cubic = (min: number, max: number) => fc.double({ min, max, noNaN: true })
    fc.assert(
      fc.property(cubic(0.1, 60), cubic(1, 10), cubic(2, 30), (ordered, body, rate) => {
        const found = loadTimes({ ...CASE, ordered, body, rate, limit: null })
        if (!found.known) throw new Error(found.gaps.join())
        const { loads } = found.value
        expect(loads.reduce((sum, { volume }) => sum + volume, 0)).toBeCloseTo(ordered, 6)
        for (const [at, load] of loads.entries()) {
          expect(load.volume).toBeLessThanOrEqual(body + 1e-9)
          expect(load.volume).toBeGreaterThan(0)
          if (at > 0) expect(load.begins).toBeCloseTo(loads[at - 1]?.ends ?? 0, 9)
          expect(load.age).toBeCloseTo(load.ends - load.batched, 9)
        }
      }),
    )
  })
})
