import { describe, expect, it } from 'vitest'
import { instantsOf, nextClock, wallOf } from './wall-clock.ts'

const iso = (instant: number): string => new Date(instant).toISOString()

describe('clocks on the wall', () => {
  it('show the zone’s own time, an hour on in summer (IANA time zone data)', () => {
    expect(iso(wallOf(Date.parse('2026-01-10T12:00:00.000Z'), 'Europe/Dublin'))).toBe(
      '2026-01-10T12:00:00.000Z',
    )
    expect(iso(wallOf(Date.parse('2026-07-10T12:00:00.250Z'), 'Europe/Dublin'))).toBe(
      '2026-07-10T13:00:00.250Z',
    )
  })

  it('skip an hour in spring and show one twice in autumn', () => {
    expect(instantsOf(Date.parse('2026-03-29T01:30:00.000Z'), 'Europe/Dublin')).toEqual([])
    expect(instantsOf(Date.parse('2026-10-25T01:30:00.000Z'), 'Europe/Dublin').map(iso)).toEqual([
      '2026-10-25T00:30:00.000Z',
      '2026-10-25T01:30:00.000Z',
    ])
  })

  it('come to a time of day next, today or tomorrow, never at once', () => {
    const from = Date.parse('2026-09-16T14:00:00.000Z')
    expect(iso(nextClock('05:30', from, 'Europe/Dublin'))).toBe('2026-09-17T04:30:00.000Z')
    expect(iso(nextClock('16:00', from, 'Europe/Dublin'))).toBe('2026-09-16T15:00:00.000Z')
    expect(iso(nextClock('15:00', from, 'Europe/Dublin'))).toBe('2026-09-17T14:00:00.000Z')
    expect(iso(nextClock('03:00', from, 'Pacific/Fiji'))).toBe('2026-09-16T15:00:00.000Z')
    expect(iso(nextClock('01:30', Date.parse('2026-03-28T22:00:00.000Z'), 'Europe/Dublin'))).toBe(
      '2026-03-30T00:30:00.000Z',
    )
  })
})
