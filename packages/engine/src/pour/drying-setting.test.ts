import { describe, expect, it } from 'vitest'
import { replay } from '../working/replay.ts'
import { drying } from './drying.ts'
import { orderVolume } from './quantity.ts'
import { type SettingInput, setting } from './setting.ts'

const DAY = { air: 30, humidity: 40, wind: 20, concrete: 30 }

describe('drying', () => {
  it.each([
    ['air', { air: 61 }],
    ['air', { air: Number.NaN }],
    ['concrete', { concrete: -11 }],
    ['humidity', { humidity: 101 }],
    ['humidity', { humidity: -1 }],
    ['wind', { wind: -1 }],
    ['wind', { wind: Number.POSITIVE_INFINITY }],
    ['limit', { limit: 0 }],
  ])('is not known for an impossible %s', (field, change) => {
    const found = drying({ ...DAY, ...change })
    expect(found.known).toBe(false)
    if (!found.known) expect(found.gaps.join()).toContain(field)
  })

  it('fails over the limit, passes at it, keeps the sign of condensation', () => {
    const verdict = (input: Parameters<typeof drying>[0]) => {
      const found = drying(input)
      return found.known ? found.value.check.verdict : 'unknown'
    }
    expect(verdict(DAY)).toBe('fail')
    const found = drying(DAY)
    if (!found.known) throw new Error('not known')
    expect(verdict({ ...DAY, limit: found.value.rate })).toBe('pass')
    expect(verdict({ ...DAY, limit: found.value.rate * 0.999 })).toBe('fail')
    expect(verdict({ air: 30, humidity: 90, wind: 10, concrete: 15 })).toBe('pass')
    expect(found.assumed?.map(({ field }) => field)).toEqual(['limit'])
  })
})

const SET: SettingInput = { initial: 5, reference: 23, temperature: 15 }

describe('setting', () => {
  it.each<[string, Partial<SettingInput>]>([
    ['initial', { initial: 0 }],
    ['activation', { activation: -1 }],
    ['reference', { reference: Number.NaN }],
    ['final', { final: 4 }],
    ['temperature', { temperature: 101 }],
    ['temperature', { temperature: [[0, 10]] }],
    [
      'temperature',
      {
        temperature: [
          [1, 10],
          [5, 10],
        ],
      },
    ],
    [
      'temperature',
      {
        temperature: [
          [0, 10],
          [0, 11],
          [5, 10],
        ],
      },
    ],
    [
      'temperature',
      {
        temperature: [
          [0, 10],
          [5, Number.NaN],
        ],
      },
    ],
    [
      'temperature',
      {
        temperature: [
          [0, 15],
          [7.8, 15],
        ],
      },
    ],
  ])('is not known for a bad %s', (field, change) => {
    const found = setting({ ...SET, ...change })
    expect(found.known).toBe(false)
    if (!found.known) expect(found.gaps.join()).toContain(field)
  })

  it('a log of one temperature gives the same as that temperature', () => {
    const one = setting({ ...SET, final: 7 })
    const log = setting({
      ...SET,
      final: 7,
      temperature: [
        [0, 15],
        [3, 15],
        [20, 15],
      ],
    })
    if (!one.known || !log.known) throw new Error('not known')
    expect(log.value.initialSet).toBeCloseTo(one.value.initialSet, 9)
    expect(log.value.finalSet as number).toBeCloseTo(one.value.finalSet as number, 9)
  })

  it('lists the activation energy as assumed only where it was not given', () => {
    const fields = (input: SettingInput) => {
      const found = setting(input)
      return found.known ? (found.assumed ?? []).map(({ field }) => field) : null
    }
    expect(fields(SET)).toEqual(['activation'])
    expect(fields({ ...SET, activation: 40_000 })).toEqual([])
  })
})

describe('order', () => {
  const base = { net: 2.43, allowance: 0.05, underDelivery: 0, step: 0.1, body: 6 }
  it.each([
    ['net', { net: 0 }],
    ['step', { step: 0 }],
    ['body', { body: Number.NaN }],
    ['allowance', { allowance: -0.01 }],
    ['underDelivery', { underDelivery: 1 }],
  ])('is not known for a bad %s', (field, change) => {
    const found = orderVolume({ ...base, ...change })
    expect(found.known).toBe(false)
    if (!found.known) expect(found.gaps.join()).toContain(field)
  })
  it('what is a whole step already is not rounded further', () => {
    const found = orderVolume({ ...base, net: 3, allowance: 0 })
    expect(found.known && found.value.ordered).toBeCloseTo(3, 12)
    const full = orderVolume({ ...base, net: 12, allowance: 0 })
    expect(full.known && full.value.loads).toBe(2)
  })
})

it('every step of drying, setting and order replays', () => {
  const found = [
    drying(DAY),
    drying({ air: -5, humidity: 88, wind: 3, concrete: 12 }),
    setting({ ...SET, final: 8.5 }),
    setting({ ...SET, temperature: 37, activation: 33_500 }),
    orderVolume({ net: 5.502, allowance: 0.05, underDelivery: 0.02, step: 0.1, body: 6 }),
  ]
  let replayed = 0
  for (const one of found) {
    if (!one.known) throw new Error('not known')
    for (const step of one.working) {
      const again = replay(step)
      if (again === null) continue
      replayed += 1
      expect(Math.abs(again - (step.result as number))).toBeLessThanOrEqual(1e-9 * Math.abs(again))
    }
  }
  expect(replayed).toBeGreaterThan(12)
})
