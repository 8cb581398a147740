import { describe, expect, it } from 'vitest'
import { clockText, dayName, dayOf, dayWindow, isDay, shiftDay } from './day-window.ts'

const DUBLIN = 'Europe/Dublin'
const HOUR = 3_600_000

describe('the yard’s day', () => {
  it('runs from 05:00 to 05:00 in its own zone', () => {
    const window = dayWindow('2026-06-10', DUBLIN) // summer time: an hour before UTC
    expect(new Date(window.from).toISOString()).toBe('2026-06-10T04:00:00.000Z')
    expect(window.to - window.from).toBe(24 * HOUR)
  })

  it('has 23 hours when clocks go forward and 25 when they go back', () => {
    const spring = dayWindow('2026-03-28', DUBLIN)
    const autumn = dayWindow('2026-10-24', DUBLIN)
    expect((spring.to - spring.from) / HOUR).toBe(23)
    expect((autumn.to - autumn.from) / HOUR).toBe(25)
  })

  it('is still yesterday at 04:59 and today at 05:00', () => {
    expect(dayOf(new Date('2026-06-10T03:59:59.000Z'), DUBLIN)).toBe('2026-06-09')
    expect(dayOf(new Date('2026-06-10T04:00:00.000Z'), DUBLIN)).toBe('2026-06-10')
  })

  it('belongs to the zone, not to the device', () => {
    expect(dayOf(new Date('2026-06-10T18:00:00.000Z'), 'Pacific/Fiji')).toBe('2026-06-11')
  })

  it('steps over months and leap days', () => {
    expect(shiftDay('2028-02-28', 1)).toBe('2028-02-29')
    expect(shiftDay('2026-01-01', -1)).toBe('2025-12-31')
  })

  it('is told with the month in letters and the time in 24 h', () => {
    expect(dayName('2026-04-14')).toBe('Tuesday 14 April')
    expect(clockText(Date.parse('2026-04-14T23:05:00.000Z'), 'UTC')).toBe('23:05')
    expect(clockText(Date.parse('2026-04-14T00:00:00.000Z'), 'UTC')).toBe('00:00')
  })

  it.each(['2026-13-01', '14 April', '', null, 20260414])('%j is no day', (text) => {
    expect(isDay(text)).toBe(false)
  })
})
