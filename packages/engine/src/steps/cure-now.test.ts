import { describe, expect, it } from 'vitest'
import type { Yard } from '../yard/yard.ts'
import { cureNow } from './cure-now.ts'

const yard = {
  format: 'castwright.yard/1',
  name: 'T',
  code: 'eu',
  timezone: 'UTC',
  mixes: [
    {
      mark: 'K40',
      strength: 40,
      curve: { form: 'hyperbolic', ultimate: 58, rate: 0.06, offset: 3 },
      scatter: 0.05,
      reference: 20,
      activation: 40_000,
    },
  ],
} as const satisfies Yard

const cure = {
  wanted: { strength: 18, from: 'the drawing', source: { standard: '', clause: '', status: 'entered' } },
  hour: 12,
  hourLow: 14,
  curve: [
    [0, 0, 0, 0],
    [24, 30, 27, 33],
  ],
} as const

const cast = { entry: 'e', at: '2026-05-12T08:00:00.000Z', bed: 'B1', mix: 'K40' }

function log(channel: string, celsius: number) {
  return {
    entry: channel,
    entries: [channel],
    channel,
    by: { id: 'p1', name: 'Tom Reed', role: 'floor' as const },
    readings: Array.from({ length: 25 }, (_, hour) => [hour, celsius] as const),
  }
}

describe('the cure of a panel as it stands now', () => {
  it('is the planned one while nothing is logged', () => {
    const now = cureNow({ cure, facts: { cast, temperatures: [] }, yard, until: 48 })
    expect(now).toMatchObject({ hourLow: 14, temperature: 'planned' })
  })

  it('follows the log once there is one: colder is later', () => {
    const hours = [20, 8].map(
      (celsius) =>
        cureNow({ cure, facts: { cast, temperatures: [log('core', celsius)] }, yard, until: 200 }).hourLow,
    )
    expect(hours[0]).not.toBeNull()
    expect(hours[1]).toBeGreaterThan(hours[0] ?? Number.POSITIVE_INFINITY)
  })

  it('goes by the slowest channel of the concrete and leaves the air out', () => {
    const slow = cureNow({ cure, facts: { cast, temperatures: [log('edge', 8)] }, yard, until: 200 })
    const all = cureNow({
      cure,
      facts: { cast, temperatures: [log('core', 20), log('edge', 8), log('air', 2)] },
      yard,
      until: 200,
    })
    expect(all.hourLow).toBe(slow.hourLow)
  })

  it('never falls back to the plan where a log is there and the mix is not known', () => {
    const now = cureNow({
      cure,
      facts: { cast: { ...cast, mix: null }, temperatures: [log('core', 20)] },
      yard,
      until: 48,
    })
    expect(now).toMatchObject({
      hour: null,
      hourLow: null,
      temperature: 'logged',
      unknown: ['mix of the pour'],
    })
  })
})
