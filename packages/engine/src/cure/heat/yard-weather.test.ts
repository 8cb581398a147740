import { describe, expect, it } from 'vitest'
import { weatherGaps } from './weather.ts'
import { weatherOfPour, type YardWeather } from './yard-weather.ts'

const MIXED = '2026-03-02T06:30:00.000Z'

function reading(hour: number, air: number | null, more: Partial<YardWeather> = {}): YardWeather {
  const at = new Date(Date.parse('2026-03-02T00:00:00.000Z') + hour * 3_600_000).toISOString()
  return { at, air, humidity: 70, wind: 18, ...more }
}

describe('weather as a pour sees it', () => {
  it('is logged as far as the log goes and forecast from there, in hours from mixing and metres a second', () => {
    const { weather, humidity, loggedTo } = weatherOfPour({
      logged: [reading(6, 8), reading(7, 9), reading(8, 10)],
      forecast: [reading(7, 99), reading(8, 77), reading(9, 12, { humidity: null }), reading(10, 13)],
      mixed: MIXED,
      until: 3,
    })
    expect(loggedTo).toBe(1.5)
    expect(weather.air).toEqual([
      [-0.5, 8],
      [0.5, 9],
      [1.5, 10],
      [2.5, 12],
      [3.5, 13],
    ])
    expect(weather.wind[0]).toEqual([-0.5, 5])
    expect(humidity.map(([hour]) => hour)).toEqual([-0.5, 0.5, 1.5, 3.5])
    expect(weatherGaps(weather, 'air', 3)).toEqual([])
  })

  it('leaves a hole a hole, and air that no instrument gives out', () => {
    const { weather } = weatherOfPour({
      logged: [reading(6, 8), reading(7, 850), reading(8, null), reading(12, 9)],
      forecast: [],
      mixed: MIXED,
      until: 5,
    })
    expect(weather.air).toHaveLength(2)
    expect(weatherGaps(weather, 'air', 5)).toEqual(['weather.air: nothing from -0.5 to 5.5 h'])
  })

  it('says that nothing is known where nothing is', () => {
    const { weather, loggedTo } = weatherOfPour({ logged: [], forecast: [], mixed: MIXED, until: 12 })
    expect(loggedTo).toBeNull()
    expect(weatherGaps(weather, 'air', 12)).toEqual(['weather.air: no readings'])
  })
})
