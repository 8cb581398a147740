import { describe, expect, it } from 'vitest'
import type { Yard } from '../yard/yard.ts'
import { cureNow } from './cure-now.ts'
import type { EnteredLimit, SpecimenResult } from './facts.ts'
import { pourResults } from './pour-results.ts'

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

describe('the cure of a panel with results of its pour', () => {
  // A mix whose pours differ by more than one test scatters, so that a result tells something of its pour.
  const wide = { ...yard, mixes: [{ ...yard.mixes[0], scatter: 0.1 }] }
  const by = { id: 'p1', name: 'Tom Reed', role: 'floor' as const }
  const logged = { cast, temperatures: [log('core', 18)] }
  const plain = cureNow({ cure, facts: logged, yard: wide, until: 60 })
  const at = (hour: number) => plain.curve.find(([each]) => each === hour)?.[1] ?? Number.NaN
  const result = (specimen: string, age: number, strength: number, more: Partial<SpecimenResult> = {}) => ({
    entry: specimen,
    specimen,
    kind: 'cylinder' as const,
    age,
    strength,
    by,
    seen: '',
    ...more,
  })
  const eu = { value: 20, source: { standard: 'EN 12390-2', clause: '', status: 'seen' } } as const
  const told = (specimens: readonly SpecimenResult[], ratio: EnteredLimit | null = null) =>
    cureNow({
      cure,
      facts: logged,
      yard: wide,
      until: 60,
      results: pourResults({ specimens, cubeRatio: ratio, standardCuring: eu }),
    })

  it('is later with a weak cylinder, names it, and says what the curve rests on', () => {
    const weak = told([result('S1', 12, 0.6 * at(12))])
    expect(weak.hour).toBeGreaterThan(plain.hour ?? Number.POSITIVE_INFINITY)
    expect(weak.kept.map(({ specimen }) => specimen)).toEqual(['S1'])
    expect(weak.restsOn).toMatch(/^1 cylinder of this pour/)
    expect(weak.taken).toHaveLength(1)
    expect(weak.loggedTo).toBe(24)
    expect(weak.assumed.map(({ field }) => field)).toContain('specimens[].cured')
    expect(plain).toMatchObject({ taken: [], kept: [], slipped: [], restsOn: 'the curve of the mix' })
  })

  it('takes one far too high for less, and names it', () => {
    const high = told([
      result('S1', 12, at(12), { cured: 'panel' }),
      result('S2', 12, 1.01 * at(12), { cured: 'panel' }),
      result('S3', 12, 1.9 * at(12), { cured: 'panel' }),
    ])
    expect(high.slipped.map(({ specimen }) => specimen)).toEqual(['S3'])
    expect(high.assumed.map(({ field }) => field)).not.toContain('specimens[].cured')
  })

  it('leaves a cube out without a ratio, and takes it by one that an engineer entered', () => {
    const cube = result('C1', 12, at(12) / 0.8, { kind: 'cube', cured: 'panel' })
    expect(told([cube])).toMatchObject({ taken: [], curve: plain.curve })
    const ratio: EnteredLimit = {
      entry: 'l1',
      value: 0.8,
      unit: '',
      standard: 'tests of the yard',
      edition: '2026',
      by: { id: 'p2', name: 'Ines Calder', role: 'engineer' },
    }
    const cylinder = told([result('C1', 12, at(12), { cured: 'panel' })])
    const counted = told([cube], ratio)
    expect(counted.hour).toBeCloseTo(cylinder.hour ?? Number.NaN, 9)
    expect(counted.assumed.map(({ why }) => why).join()).toMatch(/1 cube, entered by Ines Calder/)
    expect(told([cube], { ...ratio, value: 1.2 }).taken).toEqual([])
  })

  it('ages a specimen of standard curing at the standard’s temperature', () => {
    const beside = told([result('S1', 12, at(12), { cured: 'panel' })])
    const warmer = told([result('S1', 12, at(12), { cured: 'standard' })])
    // Cured at 20 °C and not at 18 it counts as older, so the pour is weaker than it looks.
    expect(warmer.hour).toBeGreaterThan(beside.hour ?? Number.POSITIVE_INFINITY)
    const left = pourResults({
      specimens: [result('S1', 12, 20, { cured: 'standard' })],
      cubeRatio: null,
      standardCuring: null,
    })
    expect(left.cylinders).toEqual([])
    expect(left.left[0]?.why).toMatch(/not confirmed for this code family/)
  })

  it('lets the mix speak alone where it has no scatter, and says so', () => {
    const { scatter: _, ...bare } = yard.mixes[0]
    const found = cureNow({
      cure,
      facts: logged,
      yard: { ...yard, mixes: [bare] },
      until: 60,
      results: pourResults({
        specimens: [result('S1', 12, 20)],
        cubeRatio: null,
        standardCuring: eu,
      }),
    })
    expect(found.curve.length).toBeGreaterThan(50)
    expect(found.taken).toEqual([])
    expect(found.unknown.join()).toMatch(/results not taken in: scatter/)
  })

  it('follows results at the reference temperature while nothing is logged, listed as assumed', () => {
    const found = cureNow({
      cure,
      facts: { cast, temperatures: [] },
      yard: wide,
      until: 60,
      results: pourResults({ specimens: [result('S1', 12, 10)], cubeRatio: null, standardCuring: eu }),
    })
    expect(found).toMatchObject({ temperature: 'planned', loggedTo: null })
    expect(found.taken).toHaveLength(1)
    expect(found.assumed).toContainEqual(expect.objectContaining({ field: 'temperatures', value: 20 }))
  })

  it('gives the probability of another strength where one is asked', () => {
    const at15 = cureNow({ cure, facts: logged, yard: wide, until: 60, wanted: 15 })
    const [soon, late] = [at15, plain].map(
      ({ chance }) => chance.find(([, p]) => p >= 0.9)?.[0] ?? Number.NaN,
    )
    expect(soon).toBeLessThan(late ?? Number.NaN)
  })
})
