import { describe, expect, test } from 'vitest'
import { orderText } from './order-text.ts'

const LOAD = { load: 1, volume: 6, batched: 0, arrives: 25, begins: 35, ends: 65, age: 65, gap: 0 }
const ORDER = {
  yard: 'Kettle Lane',
  panel: 'W1',
  job: 'J1',
  mix: 'K40',
  slump: [80, 130],
  net: 8.4,
  here: 0,
  ordered: 9,
  allowance: 0.05,
  limit: 90,
  joint: { minutes: 22.5, air: '18 °C, forecast' },
  loads: [LOAD, { ...LOAD, load: 2, volume: 3, batched: 30, arrives: 55 }],
  when: (minutes: number) => `${minutes} min`,
} as const

describe('an order to be read out', () => {
  test('says what, how much, when, and what holds for every load', () => {
    expect(orderText(ORDER)).toBe(
      [
        'Concrete for Kettle Lane: W1, J1',
        'Mix K40, slump 80 to 130 mm',
        '9.0 m³ in 2 loads (8.40 m³ in the panel, 5 % allowance)',
        'Load 1: 6.00 m³, batched 0 min, here 25 min',
        'Load 2: 3.00 m³, batched 30 min, here 55 min',
        'Each load discharged within 90 min of batching',
        'The next load begins within 22 min of the end of the one before (18 °C, forecast)',
        'With each load: docket with batching time, water that may be added, mix and volume',
      ].join('\n'),
    )
  })

  test('says what is not known, and nothing of a wait where there is one load', () => {
    const text = orderText({ ...ORDER, mix: null, slump: null, limit: null, joint: null })
    for (const part of ['Mix not known', 'slump not known', 'to be agreed', 'not known without the air'])
      expect(text).toContain(part)
    expect(orderText({ ...ORDER, here: 2.6 })).toContain('5 % allowance, 2.6 m³ here')
    expect(orderText({ ...ORDER, loads: [LOAD] })).not.toContain('next load')
  })
})
