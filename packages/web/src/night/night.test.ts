import type { AlongNight, NightNow } from '@castwright/engine/cure/night'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { clockTicks, spread } from './clock-ticks.ts'
import { comparedText, hourText, nightSentence } from './night-words.ts'

const MIXED = Date.parse('2026-09-16T13:52:00.000Z')
const when = hourText({ mixed: MIXED, zone: 'UTC', now: new Date('2026-09-16T15:00:00.000Z') })

function along(hourLow: number | null, part: Partial<AlongNight> = {}): AlongNight {
  return { hour: hourLow, hourLow, curve: [], readings: [], unknown: [], assumed: [], ...part }
}

const NIGHT = {
  coldest: { celsius: 7.21, hour: 16.1, place: 'top' },
  frost: null,
  hours: 24,
  wanted: 15,
  strength: along(18.01),
  cold: along(20.5),
  warm: along(17),
} as unknown as NightNow

describe('a night in words', () => {
  it('says coldest place and hour, the hour of the strength and how far the forecast moves it', () => {
    expect(nightSentence(NIGHT, when, 4)).toBe(
      'Coldest 7.2 °C Thu 05:58 at the top face; strip strength 15.0 MPa expected Thu 07:55 (Thu 06:55 to Thu 10:25, if the air is 3 K warmer or colder).',
    )
  })

  it('says that the strength was met, that it is not before the weather ends, and that it is not known', () => {
    expect(nightSentence(NIGHT, when, 20)).toContain('strip strength 15.0 MPa met Thu 07:55.')
    expect(nightSentence({ ...NIGHT, strength: along(null) }, when, 4)).toContain(
      'strip strength of 15.0 MPa not before Thu 13:52, where the weather ends',
    )
    expect(nightSentence({ ...NIGHT, cold: along(null) }, when, 4)).toContain(
      '(Thu 06:55 or not before the weather ends, if',
    )
    expect(nightSentence({ ...NIGHT, wanted: null }, when, 4)).toContain('strip strength not known')
    const gone = along(null, { unknown: ['mix: no curve'] })
    expect(nightSentence({ ...NIGHT, strength: gone }, when, 4)).toContain('not known: mix: no curve')
  })

  it('says frost, and a night that never gets colder than the concrete came', () => {
    expect(nightSentence({ ...NIGHT, frost: 14 }, when, 4)).toContain('It freezes from Thu 03:52 on.')
    const warm = { ...NIGHT, coldest: { celsius: 19, hour: 0, place: 'inside' as const } }
    expect(nightSentence(warm, when, 4)).toContain('Never colder than the 19.0 °C it was placed at')
  })

  it('rounds on the clock, not from mixing', () => {
    expect(when(18.01)).toBe('Thu 07:52')
    expect(when(18.01, 'late')).toBe('Thu 07:55')
    expect(when(18.05, 'late')).toBe('Thu 07:55')
  })
})

describe('a log beside a night', () => {
  const compared = { channel: 'edge', place: 'coldest', count: 3, bias: -1.24, last: -1 } as const

  it('is told with its bias and its largest difference', () => {
    expect(comparedText({ ...compared, largest: { kelvin: -2, hour: 2 } }, when)).toBe(
      'Logged by edge, 3 readings: on average 1.2 K colder than the computed coldest place, at most 2.0 K colder (Wed 15:52). The log counts.',
    )
  })

  it('far colder asks for the cover', () => {
    expect(comparedText({ ...compared, largest: { kelvin: -9, hour: 2 } }, when)).toContain('is the cover on')
    expect(comparedText({ ...compared, largest: { kelvin: 9, hour: 2 } }, when)).not.toContain('cover')
  })
})

describe('under a night', () => {
  it('stand full hours of the yard’s clock, as many as there is room for', () => {
    const mixed = Date.parse('2026-09-16T10:35:00.000Z') // 11:35 in Dublin
    const ticks = (most: number) =>
      clockTicks({ mixed, from: 0, to: 24, zone: 'Europe/Dublin', most }).map(({ text }) => text)
    expect(ticks(10)).toEqual(['12:00', '15:00', '18:00', '21:00', '00:00', '03:00', '06:00', '09:00'])
    expect(ticks(5)).toEqual(['12:00', '18:00', '00:00', '06:00'])
    expect(ticks(3)).toEqual(['12:00', '00:00'])
  })

  it('names stand apart and in their order (seed 41)', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 300, noNaN: true }), { maxLength: 6 }), (wanted) => {
        const placed = spread(wanted, 18, 0, 300)
        const sorted = [...placed].sort((a, b) => a - b)
        for (const [at, y] of sorted.entries()) {
          expect(y).toBeLessThanOrEqual(300)
          if (at > 0) expect(y - (sorted[at - 1] ?? 0)).toBeGreaterThanOrEqual(18 - 1e-9)
        }
      }),
      { seed: 41 },
    )
  })
})
