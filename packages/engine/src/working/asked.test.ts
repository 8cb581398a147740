import { describe, expect, it } from 'vitest'
import { type Asked, judge, wantedOf } from './asked.ts'
import { COMMON_PRACTICE } from './source.ts'

function asked(part: Partial<Asked>): Asked {
  return {
    id: 'a',
    step: 'deliver',
    what: 'Slump',
    kind: 'number',
    unit: 'mm',
    source: COMMON_PRACTICE,
    ...part,
  }
}

describe('what is asked', () => {
  it('passes at both edges of its band and fails beyond them', () => {
    const slump = asked({ low: 80, high: 120 })
    expect([79.9, 80, 120, 120.1].map((value) => judge(slump, value))).toEqual([
      'fail',
      'pass',
      'pass',
      'fail',
    ])
  })

  it('is not known without a value, without limits, and where no limit is confirmed', () => {
    expect(judge(asked({ low: 80 }), null)).toBe('unknown')
    expect(judge(asked({ low: 80 }), Number.NaN)).toBe('unknown')
    expect(judge(asked({}), 90)).toBe('unknown')
    expect(judge(asked({ high: 5, unknown: ['no confirmed value'] }), 3)).toBe('unknown')
  })

  it('passes a tick only when it is set, a choice only when it is a good one', () => {
    expect(judge(asked({ kind: 'tick' }), true)).toBe('pass')
    expect(judge(asked({ kind: 'tick' }), 'yes')).toBe('unknown')
    const choices = [
      { value: 'clean', good: true },
      { value: 'rust', good: false },
    ]
    expect(['clean', 'rust', 'mud'].map((value) => judge(asked({ kind: 'choice', choices }), value))).toEqual(
      ['pass', 'fail', 'unknown'],
    )
  })

  it('shows a band rounded inward, so that what is shown as good is judged good', () => {
    const mass = asked({ low: 0.5887933681, high: 0.6442817484 })
    expect(wantedOf(mass)).toBe('0.5888 to 0.64428')
    expect(judge(mass, 0.5888)).toBe('pass')
    expect(judge(mass, 0.64428)).toBe('pass')
    expect(wantedOf(asked({ low: -25, high: 25 }))).toBe('-25 to 25')
    expect(wantedOf(asked({ low: 17, high: 17 }))).toBe(17)
    expect(wantedOf(asked({ high: 90 }))).toBe(90)
    expect(wantedOf(asked({ low: -0.12345, high: 3 }))).toBe('-0.12345 to 3')
  })
})
