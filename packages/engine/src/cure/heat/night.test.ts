import { describe, expect, it } from 'vitest'
import { type NightInput, nightOf } from './night.ts'
import { at, CONCRETE, heatOf } from './testing.ts'
import { weatherOf } from './weather.ts'

const HOURLY = Array.from({ length: 25 }, (_, hours) => ({ hours, air: 14 - hours / 4 }))
const NIGHT: NightInput = {
  thickness: 180,
  mix: { mark: 'C40', heat: CONCRETE },
  initial: 20,
  top: {
    film: 10,
    covers: [
      [0, 0],
      [4, 0.5],
      [15.5, 0],
    ],
  },
  bottom: { film: 8, resistance: 0.1 },
  weather: weatherOf(HOURLY),
  hours: 24,
}

function gapsOf(part: Partial<NightInput>): readonly string[] {
  const night = nightOf({ ...NIGHT, ...part })
  return night.known ? [] : night.gaps
}

describe('a night of a panel', () => {
  it('is the run of the same case', () => {
    const night = nightOf(NIGHT)
    if (!night.known) throw new Error(night.gaps.join())
    const same = heatOf({
      thickness: 180,
      top: {
        film: 10,
        resistance: [
          [0, 0],
          [4, 0.5],
          [15.5, 0],
        ],
      },
      bottom: { film: 8, resistance: 0.1 },
      air: [
        [0, 14],
        [24, 8],
      ],
    })
    for (const hour of [3, 12, 16, 24]) {
      expect(at(night.value.run, 'core', hour)).toBeCloseTo(at(same, 'core', hour), 2)
      expect(at(night.value.run, 'top', hour)).toBeCloseTo(at(same, 'top', hour), 2)
    }
  })

  it('names what is missing', () => {
    expect(gapsOf({ mix: null })).toEqual(['mix: not known'])
    expect(gapsOf({ mix: { mark: 'C40' } })[0]).toMatch(/^mix C40: heat is not given/)
    expect(gapsOf({ initial: null })[0]).toMatch(/^initial/)
    expect(gapsOf({ hours: 30 })).toEqual(['weather.air: nothing after 24 h, the run goes on to 30 h'])
    expect(gapsOf({ weather: weatherOf(HOURLY.filter(({ hours }) => hours < 5 || hours > 11)) })).toEqual([
      'weather.air: nothing from 4 to 12 h',
    ])
    expect(gapsOf({ top: { covers: [] } })).toEqual(['weather.wind: no readings (or top.film)'])
    expect(gapsOf({ bottom: {} })[0]).toMatch(/^bottom.film/)
  })

  it('takes the film from the wind, and says so', () => {
    const windy = weatherOf(HOURLY.map((row) => ({ ...row, wind: 2 })))
    const night = nightOf({ ...NIGHT, weather: windy, top: { covers: [] } })
    if (!night.known) throw new Error(night.gaps.join())
    expect(night.assumed?.map(({ field }) => field)).toContain('top.film')
    const same = nightOf({ ...NIGHT, top: { film: 13.5, covers: [] } })
    if (!same.known) throw new Error(same.gaps.join())
    expect(at(night.value.run, 'top', 12)).toBeCloseTo(at(same.value.run, 'top', 12), 3)
  })

  it('adds radiation to the film of the wind where the emissivity is known: 0.9 at 15 °C is 4.88 W/m²K (4 ε σ T³)', () => {
    const windy = weatherOf(HOURLY.map(({ hours }) => ({ hours, air: 15, wind: 2 })))
    const still = weatherOf(HOURLY.map(({ hours }) => ({ hours, air: 15 })))
    const night = nightOf({ ...NIGHT, weather: windy, top: { covers: [], emissivity: 0.9 } })
    const same = nightOf({ ...NIGHT, weather: still, top: { film: 13.5 + 4.884, covers: [] } })
    if (!night.known || !same.known) throw new Error('a night is not known')
    expect(at(night.value.run, 'top', 12)).toBeCloseTo(at(same.value.run, 'top', 12), 3)
  })

  it('warms in the sun by what the face takes in; leaves the sun out where that is not given, and says so', () => {
    const sunny = weatherOf(HOURLY.map((row) => ({ ...row, sun: 400 })))
    const [dark, taken, without] = [
      nightOf(NIGHT),
      nightOf({ ...NIGHT, weather: sunny, top: { ...NIGHT.top, absorptivity: 0.6 } }),
      nightOf({ ...NIGHT, weather: sunny }),
    ]
    if (!dark.known || !taken.known || !without.known) throw new Error('a night is not known')
    expect(at(taken.value.run, 'top', 3)).toBeGreaterThan(at(dark.value.run, 'top', 3) + 3)
    expect(at(without.value.run, 'top', 3)).toBeCloseTo(at(dark.value.run, 'top', 3), 6)
    expect(without.assumed?.map(({ field }) => field)).toContain('weather.sun')
  })

  it('follows a heated bed', () => {
    const night = nightOf({
      ...NIGHT,
      bottom: {
        temperature: [
          [0, 20],
          [4, 20],
          [6, 50],
          [24, 50],
        ],
      },
    })
    if (!night.known) throw new Error(night.gaps.join())
    expect(at(night.value.run, 'bottom', 12)).toBeCloseTo(50, 6)
  })
})
