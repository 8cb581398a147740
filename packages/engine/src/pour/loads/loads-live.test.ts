import { describe, expect, it } from 'vitest'
import { loadAge } from './age.ts'
import { airAt } from './air.ts'
import { askedByDockets } from './docket-answers.ts'
import { decided, GOOD_LOAD, loadOf } from './example-load.ts'
import { nextLoad } from './next-load.ts'

const at = (clock: string): string => `2026-06-01T${clock}:00.000Z`
const reading = (clock: string, air: number | null) => ({
  at: at(clock),
  air,
  humidity: null,
  wind: null,
})

describe('age of a load on the clock', () => {
  const age = (now: string, limit: number | null = 90, discharged?: string) =>
    loadAge({ load: { batched: at('12:00'), discharged }, limit, now: at(now) })

  it.each([
    ['12:00', 'counting', 90],
    ['13:07', 'counting', 23],
    ['13:08', 'soon', 22],
    ['13:30', 'soon', 0],
    ['13:31', 'over', -1],
  ])('at %s it is %s with %d min left', (now, state, left) => {
    expect(age(now)).toMatchObject({ state, left, until: at('13:30') })
  })

  it('stands still once discharged, and knows no time left without a limit', () => {
    expect(age('15:00', 90, at('12:50'))).toMatchObject({ state: 'done', minutes: 50 })
    expect(age('15:00', null)).toMatchObject({ state: 'counting', left: null, until: null })
  })

  it('is not known without a batching time, or with one still to come', () => {
    expect(loadAge({ load: {}, limit: 90, now: at('13:00') })).toBeNull()
    expect(loadAge({ load: { batched: at('14:00') }, limit: 90, now: at('13:00') })).toBeNull()
  })
})

describe('air at the pour', () => {
  const logged = [reading('11:00', 14), reading('12:00', 16)]
  const forecast = [reading('12:00', 99), reading('13:00', 20), reading('14:00', 22)]
  it.each([
    ['11:30', 15, 'logged'],
    ['12:00', 16, 'logged'],
    ['12:30', 18, 'forecast'],
    ['13:30', 21, 'forecast'],
  ])('at %s: %d °C, %s', (clock, celsius, from) => {
    expect(airAt({ at: at(clock), logged, forecast })).toEqual({ celsius, from })
  })

  it('takes one reading for an hour on its own, and fills no gap', () => {
    expect(airAt({ at: at('12:45'), logged, forecast: [] })).toEqual({ celsius: 16, from: 'logged' })
    expect(airAt({ at: at('13:30'), logged, forecast: [] })).toBeNull()
    expect(airAt({ at: at('14:00'), logged: [...logged, reading('18:00', 10)], forecast: [] })).toBeNull()
    expect(airAt({ at: at('12:00'), logged: [reading('12:00', null)], forecast: [] })).toBeNull()
    expect(airAt({ at: 'today', logged, forecast })).toBeNull()
  })
})

describe('until when the next load must begin', () => {
  const air = () => ({ celsius: 18, from: 'forecast' as const })
  it('counts from the end of the last', () => {
    const { next } = nextLoad({ loads: [loadOf(GOOD_LOAD)], net: 5, air })
    expect(next).toMatchObject({ ended: at('12:50'), until: '2026-06-01T13:12:30.000Z', short: 2 })
  })

  it('says nothing where the panel is full, a load runs, or none has ended', () => {
    const good = loadOf(GOOD_LOAD)
    const running = loadOf({ ...GOOD_LOAD, number: '2', began: at('12:55'), discharged: undefined })
    expect(nextLoad({ loads: [good], net: 3, air }).next).toBeNull()
    expect(nextLoad({ loads: [good, running], net: 6, air }).next).toBeNull()
    expect(nextLoad({ loads: [], net: 6, air }).next).toBeNull()
  })

  it('goes on from the load before where the last one was sent back', () => {
    const back = loadOf(
      { ...GOOD_LOAD, number: '2', began: undefined, discharged: undefined },
      { decision: decided('send-back') },
    )
    expect(nextLoad({ loads: [loadOf(GOOD_LOAD), back], net: 6, air }).next?.after.number).toBe('7001')
  })

  it('names the air where nobody knows it', () => {
    expect(nextLoad({ loads: [loadOf(GOOD_LOAD)], net: 5, air: () => null }).gap).toContain('air temperature')
  })
})

describe('what dockets answer', () => {
  const loads = [loadOf({ ...GOOD_LOAD, slump: 95 })]
  it.each<[string, unknown, boolean]>([
    ['docket-number', undefined, true],
    ['truck', 'truck 9', true],
    ['slump', undefined, true],
    ['slump', 95, true],
    ['slump', 140, false],
    ['age-at-discharge', 50, true],
    ['age-at-discharge', 80, false],
    ['water-added', 'none', true],
    ['water-added', 'more, or after discharge began', false],
    ['air-temperature', undefined, false],
  ])('%s, recorded %j: %s', (id, recorded, expected) => {
    expect(askedByDockets(id, recorded, loads)).toBe(expected)
  })

  it('nothing where there is no docket, or what was said of a load that went back', () => {
    expect(askedByDockets('slump', undefined, [])).toBe(false)
    const back = [loadOf({ ...GOOD_LOAD, slump: 95 }, { decision: decided('send-back') })]
    expect(askedByDockets('slump', 95, back)).toBe(false)
  })
})
