import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { hourMet } from '../hour-met.ts'
import { mixMethod } from '../strength-from-log.ts'
import { strengthModel } from '../strength-model.ts'
import { after, alongNight } from './along-night.ts'
import { changedNight } from './changed-night.ts'
import { comparedLog, placeOf } from './compare-log.ts'
import { nightCase } from './night-case.ts'
import { nightNow, runNight } from './night-now.ts'
import { nightInput, pour, weather, YARD } from './testing.ts'

const [MIX] = YARD.mixes

function nightOf(part: Parameters<typeof nightInput>[0] = {}) {
  const night = nightNow(nightInput(part))
  if (!night.known) throw new Error(night.gaps.join('; '))
  return night.value
}

function caseOf(part: Parameters<typeof nightInput>[0] = {}) {
  const made = nightCase(nightInput(part))
  if (!made.known) throw new Error(made.gaps.join('; '))
  return made.value
}

const flat = (celsius: number, hours = 48) => {
  const times = Array.from({ length: hours * 4 + 1 }, (_, at) => at / 4)
  const level = times.map(() => celsius)
  return { times, core: level, top: level, bottom: level, coldest: level }
}

describe('a night of a panel now', () => {
  it('takes a clear sky all the time for a sky with a hole in it, and says so', () => {
    const forecast = [...weather(0, 6, { sky: 2 }), ...weather(7, 14), ...weather(15, 40, { sky: 2 })]
    const holed = nightOf({ weather: [], forecast })
    expect(holed.assumed.map(({ field }) => field)).toContain('weather.sky')
    expect(holed.coldest.celsius).toBe(nightOf({ weather: [], forecast: weather(0, 40) }).coldest.celsius)
  })

  it('has its curves, its coldest place, its findings and its working', () => {
    const night = nightOf()
    expect(night.curves.times.at(-1)).toBe(night.hours)
    expect(night.peak.celsius).toBeGreaterThan(19)
    expect(night.coldest.place).toBe('top')
    expect(night.checks.map(({ id }) => id)).toEqual([
      'night-peak',
      'night-least',
      'night-core-face',
      'night-frost',
      'night-uncovering:17.5',
    ])
    expect(night.checks.every(({ step }) => step === 'cure')).toBe(true)
    // The balance of energy stands in the working, and nothing is left over.
    expect(Math.abs(Number(night.working.find(({ symbol }) => symbol === 'E')?.result))).toBeLessThan(0.01)
    expect(night.forecastFrom).toBe(4)
  })

  it('meets the strength later on a colder forecast and earlier on a warmer one', () => {
    const { strength, cold, warm } = nightOf()
    expect(strength.hourLow).not.toBeNull()
    expect(cold?.hourLow ?? 0).toBeGreaterThan(strength.hourLow ?? 99)
    expect(warm?.hourLow ?? 99).toBeLessThan(strength.hourLow ?? 0)
  })

  it('has no colder and warmer night where all of the weather was logged', () => {
    const { forecastFrom, cold, warm } = nightOf({ weather: weather(-1, 40), forecast: [] })
    expect([forecastFrom, cold, warm]).toEqual([null, null, null])
  })

  it('says no hour where the strength is not met before the weather ends', () => {
    const { strength, hours } = nightOf({ forecast: weather(0, 12) })
    expect(hours).toBe(12)
    expect(strength.hourLow).toBeNull()
  })

  it('is unknown without the heat of the mix', () => {
    const { heat: _, ...cold } = MIX
    const night = nightNow(nightInput({ yard: { yard: { ...YARD, mixes: [cold] }, limits: {} } }))
    expect(night.known ? [] : night.gaps[0]).toMatch(/^mix M: heat is not given/)
  })
})

describe('strength along a night', () => {
  // Computed, second method: at the mix's reference temperature an hour is an hour of age, and the curve is turned round by hand:
  // 15 = 55 k (t − 4) / (1 + k (t − 4)), k 0.036: t = 4 + 15 / (0.036 · 40) = 14.417 h.
  it('at the reference temperature all night: 15 MPa expected at 14.42 h', () => {
    const { hour, hourLow } = alongNight({ mix: MIX, logs: [], wanted: 15, run: flat(20) })
    expect(hour).toBeCloseTo(4 + 15 / (0.036 * 40), 3)
    expect(hourLow ?? 0).toBeGreaterThan(hour ?? 99)
  })

  it('is that of the plan at any other temperature that never changes', () => {
    const model = strengthModel({ source: MIX, method: mixMethod(MIX).method })
    if (!model.known) throw new Error('the mix has a curve')
    for (const celsius of [10, 15, 30]) {
      const planned = hourMet({
        model: model.value,
        method: mixMethod(MIX).method,
        wanted: 15,
        celsius,
        edge: 'low',
      })
      const { hourLow } = alongNight({ mix: MIX, logs: [], wanted: 15, run: flat(celsius) })
      expect(hourLow).toBeCloseTo(planned.known ? planned.value : Number.NaN, 3)
    }
  })

  it('goes on from the last reading along the computed night, never warmer than computed', () => {
    const seed = 77_120
    fc.assert(
      fc.property(fc.double({ min: -10, max: 60, noNaN: true }), (celsius) => {
        const log = [
          [0, 18],
          [5, celsius],
        ] as const
        const on = after(log, flat(20)).slice(2)
        for (const [, next] of on) expect(next).toBeCloseTo(Math.min(20, celsius), 9)
      }),
      { seed },
    )
  })

  it('takes the channel that is met last', () => {
    const log = (channel: string, celsius: number) => ({
      channel,
      readings: [0, 4, 8].map((hour): [number, number] => [hour, celsius]),
    })
    const [warm, cold] = [log('edge 1', 22), log('edge 2', 12)]
    const along = (logs: (typeof warm)[]) => alongNight({ mix: MIX, logs, wanted: 15, run: flat(20) }).hourLow
    expect(along([warm, cold])).toBe(along([cold]))
    expect(along([cold])).toBeGreaterThan(along([warm]) ?? 99)
  })
})

describe('a log held against the computed night', () => {
  it('says which place, bias, the largest difference and the last', () => {
    const readings = [0, 2, 4, 6].map((hour): [number, number] => [hour, hour === 4 ? 15 : 19])
    expect(comparedLog({ channel: 'core', readings }, flat(20))).toEqual({
      channel: 'core',
      place: 'core',
      count: 3,
      bias: (-1 - 5 - 1) / 3,
      largest: { kelvin: -5, hour: 4 },
      last: -1,
    })
    expect(comparedLog({ channel: 'core', readings: [[0.5, 19]] }, flat(20))).toBeNull()
  })

  it.each([
    ['panel edge', 'coldest'],
    ['core 2', 'core'],
    ['top face', 'top'],
    ['bottom face', 'bottom'],
  ])('%s is held against the %s', (channel, place) => expect(placeOf(channel)).toBe(place))
})

describe('what is tried on a night', () => {
  it('a cover that stays longer, a better one, a heated bed: each is warmer', () => {
    const of = caseOf()
    const least = (change: Parameters<typeof changedNight>[1]): number => {
      const night = runNight(changedNight(of, change))
      if (!night.known) throw new Error(night.gaps.join())
      return night.value.curves.coldest.at(-1) ?? Number.NaN
    }
    const asIs = least({})
    expect(least({ coverOff: 24 })).toBeGreaterThan(asIs)
    expect(least({ resistance: 1 })).toBeGreaterThan(asIs)
    expect(least({ resistance: 0 })).toBeLessThan(asIs)
    expect(least({ power: { watts: 200, from: 6, until: 20 } })).toBeGreaterThan(asIs)
  })

  it('refuses what cannot be', () => {
    const of = caseOf()
    expect(() => changedNight(of, { coverOff: 2 })).toThrow(/coverOff/)
    expect(() => changedNight(of, { resistance: -1 })).toThrow(/resistance/)
    expect(() => changedNight(of, { power: { watts: 100, from: 8, until: 4 } })).toThrow(/power.until/)
    expect(() => changedNight(of, { coverOff: Number.NaN })).toThrow(/coverOff/)
  })

  it('covers a bare panel from now on', () => {
    const facts = pour()
    const bare = {
      ...facts,
      steps: {
        ...facts.steps,
        finish: {
          ...facts.steps.finish,
          values: { 'cover-on': { ...facts.steps.finish.values['cover-on'], value: false } },
        },
      },
    } as typeof facts
    const of = caseOf({ facts: bare })
    expect(changedNight(of, { resistance: 0.5 }).input.top.covers).toEqual([
      [0, 0],
      [6, 0.5],
    ])
  })
})
