import { describe, expect, it } from 'vitest'
import { recordedWeather } from './recorded-weather.ts'

const reading = (entry: string, hour: number) => ({
  entry,
  at: `2026-09-16T${String(hour).padStart(2, '0')}:00:00.000Z`,
  air: 10,
  humidity: null,
  wind: null,
})

describe('what each entry brought of the weather', () => {
  it('is its hours that still count, the latest first, log and forecast apart', () => {
    expect(
      recordedWeather(
        [reading('a', 1), reading('a', 2), reading('b', 3)],
        [reading('c', 4), reading('c', 9), reading('d', 6)],
      ).map(({ entry, forecast, from, to, count }) => [
        entry,
        forecast,
        from.slice(11, 13),
        to.slice(11, 13),
        count,
      ]),
    ).toEqual([
      ['c', true, '04', '09', 2],
      ['d', true, '06', '06', 1],
      ['b', false, '03', '03', 1],
      ['a', false, '01', '02', 2],
    ])
    expect(recordedWeather([], [])).toEqual([])
  })
})
