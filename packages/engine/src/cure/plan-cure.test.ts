import { describe, expect, it } from 'vitest'
import { codeFamily, FAMILIES } from '../codes/index.ts'
import { type Drawing, parseDrawing } from '../panel/drawing.ts'
import { panelOf } from '../panel/panel.ts'
import { mixFor } from '../yard/mix-for.ts'
import { parseYard } from '../yard/yard.ts'
import { PEAK_LIMIT } from './cure-asked.ts'
import { planCure } from './plan-cure.ts'

function drawing(change: Record<string, unknown> = {}): Drawing {
  return parseDrawing({
    format: 'castwright.drawing/1',
    mark: 'P1',
    outline: [
      [0, 0],
      [5000, 0],
      [5000, 2500],
      [0, 2500],
    ],
    thickness: 160,
    concrete: { strength: 40, aggregate: 20 },
    inserts: [{ mark: 'A', at: [1000, 1250], kind: 'face', type: 'F40' }],
    lifting: { strength: 18, load: 20, reference: 'L1', by: 'designer' },
    ...change,
  })
}

const MIX = {
  mark: 'M40',
  strength: 40,
  aggregate: 16,
  curve: { form: 'hyperbolic', ultimate: 55, rate: 0.036, offset: 4 },
  scatter: 0.07,
  reference: 20,
  activation: 38_000,
}

function yard(mixes: unknown[] = [MIX]) {
  return parseYard({
    format: 'castwright.yard/1',
    name: 'Yard',
    code: 'eu',
    timezone: 'Europe/Dublin',
    mixes,
    insertKinds: [{ mark: 'F40', kind: 'face', rated: 40, ratedStrength: 25, leastStrength: 15 }],
  })
}

const family = codeFamily('eu')
const panel = panelOf(drawing())

describe('the cure plan', () => {
  it('gives the hour at which the wanted strength is met, later at the low edge', () => {
    const plan = planCure({ panel, yard: yard(), family })
    expect(plan.wanted?.strength).toBe(18)
    expect(plan.hour).toBeCloseTo(17.5135, 3)
    expect(plan.hourLow).toBeCloseTo(20.304, 3)
    expect(plan.mix).toBe('M40')
    expect(plan.unknown).toEqual([])
  })

  it('draws its curve with the band, hour by hour', () => {
    const { curve } = planCure({ panel, yard: yard(), family })
    const day = curve.find(([hour]) => hour === 24)
    expect(day?.[1]).toBeCloseTo(39.6 / 1.72, 8)
    expect(day?.[2]).toBeLessThan(day?.[1] ?? 0)
    expect(curve.every(([hour], index) => index === 0 || hour > (curve[index - 1]?.[0] ?? hour))).toBe(true)
  })

  it('lists its temperature as assumed', () => {
    const plan = planCure({ panel, yard: yard(), family })
    expect(plan.temperature).toEqual({ celsius: 20, assumed: true })
    expect(plan.assumed).toEqual([expect.objectContaining({ field: 'cure.temperature', value: 20 })])
  })

  it('lists what the mix does not give', () => {
    const { reference: _, activation: __, ...bare } = MIX
    const { assumed } = planCure({ panel, yard: yard([bare]), family })
    expect(assumed.map(({ field }) => field)).toEqual(['cure.temperature', 'reference', 'activation'])
  })

  it('knows no hour without a yard, and says why', () => {
    const plan = planCure({ panel, yard: null, family })
    expect(plan).toMatchObject({ hour: null, hourLow: null, curve: [], mix: null, temperature: null })
    expect(plan.unknown.join()).toMatch(/yard/)
    expect(plan.checks[0]?.verdict).toBe('unknown')
  })

  it('has an expected hour but none at the low edge where the mix has no scatter', () => {
    const { scatter: _, ...bare } = MIX
    const plan = planCure({ panel, yard: yard([bare]), family })
    expect(plan.hour).not.toBeNull()
    expect(plan.hourLow).toBeNull()
    expect(plan.checks[0]).toMatchObject({ id: 'strength-reached', verdict: 'unknown' })
  })

  it('fails a mix that never reaches what is wanted', () => {
    const weak = { ...MIX, curve: { ...MIX.curve, ultimate: 18.5 } }
    const plan = planCure({ panel, yard: yard([weak]), family })
    expect(plan.hourLow).toBeNull()
    expect(plan.checks[0]).toMatchObject({ verdict: 'fail', limit: 18 })
  })

  it.each(Object.keys(FAMILIES) as (keyof typeof FAMILIES)[])('asks the same of the floor in %s', (id) => {
    const { toRecord } = planCure({ panel, yard: yard(), family: codeFamily(id) })
    expect(toRecord.map((item) => item.id)).toEqual([
      'covered',
      'temperature-log',
      'peak-temperature',
      'least-temperature',
      'cover-off',
    ])
    for (const item of toRecord.filter(({ kind }) => kind === 'number'))
      expect((item.low ?? item.high ?? null) !== null || (item.unknown ?? []).length > 0).toBe(true)
  })

  it('takes a limit that an engineer entered where the family has none, never instead of one', () => {
    const entered = {
      entry: 'e1',
      value: 65,
      unit: '°C',
      standard: 'EN 13369:2018',
      edition: '4.2.1.4',
      by: { id: 'i', name: 'I. Engineer', role: 'engineer' },
    } as const
    const ask = (id: 'eu' | 'us') =>
      planCure({
        panel,
        yard: yard(),
        family: codeFamily(id),
        limits: { [PEAK_LIMIT]: entered },
      }).toRecord.find((item) => item.id === 'peak-temperature')
    expect(ask('eu')).toMatchObject({ high: 65, source: { status: 'entered' } })
    expect(ask('us')).toMatchObject({ high: 70 })
  })
})

describe('the mix for a drawing', () => {
  const strong = { ...MIX, mark: 'M50', strength: 50 }
  it('is the weakest that is strong enough', () => {
    expect(mixFor({ yard: yard([strong, MIX]), drawing: drawing() })?.mark).toBe('M40')
    expect(
      mixFor({ yard: yard([strong, MIX]), drawing: drawing({ concrete: { strength: 41 } }) })?.mark,
    ).toBe('M50')
  })

  it('has no coarser aggregate than drawn', () => {
    const coarse = { ...MIX, aggregate: 20.1 }
    expect(mixFor({ yard: yard([coarse]), drawing: drawing() })).toBeNull()
    expect(mixFor({ yard: yard([{ ...MIX, aggregate: 20 }]), drawing: drawing() })?.mark).toBe('M40')
  })

  it('is none where the yard has none', () => {
    expect(mixFor({ yard: null, drawing: drawing() })).toBeNull()
    expect(mixFor({ yard: yard([]), drawing: drawing() })).toBeNull()
    expect(mixFor({ yard: yard(), drawing: drawing({ concrete: { strength: 60 } }) })).toBeNull()
  })
})
