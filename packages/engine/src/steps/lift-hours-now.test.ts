import { describe, expect, it } from 'vitest'
import { codeFamily } from '../codes/index.ts'
import type { CurvePoint } from '../cure/cure-plan.ts'
import { planCure } from '../cure/plan-cure.ts'
import { casting, liftYard } from '../lift/reference-panels.ts'
import type { Plan } from '../plan.ts'
import { liftOnlyPlan, readyToStrip, specimen, yardFacts } from './example-facts.ts'
import type { PanelFacts } from './facts.ts'
import { liftHoursNow } from './lift-hours-now.ts'

const yard = yardFacts({
  yard: liftYard({
    mixes: [
      {
        mark: 'M40',
        strength: 40,
        scatter: 0.08,
        reference: 20,
        curve: { form: 'hyperbolic', ultimate: 50, rate: 0.05, offset: 3 },
      },
    ],
  }),
})
const lift = liftOnlyPlan({ yard: yard.yard })
const cure = planCure({ panel: casting(), yard: yard.yard, family: codeFamily('eu') })
const TENSION = {
  check: 'lift-peak:release',
  stage: 'release',
  what: 'Tension, leaves the mould',
  strength: 12,
  never: false,
  gaps: [],
} as const
const plan = { ...lift, lift: { ...lift.lift, conditions: [TENSION] }, cure } as Plan
const CAST = Date.parse('2026-06-01T12:00:00.000Z')

function hours(change: Partial<PanelFacts>, age: number) {
  const facts = { ...readyToStrip(), specimens: [], ...change }
  return liftHoursNow({ plan, facts, yard, now: new Date(CAST + age * 3_600_000).toISOString() })
}

function log(celsius: number, until: number): PanelFacts['temperatures'] {
  return [
    {
      entry: 't1',
      entries: ['t1'],
      channel: 'core',
      by: { id: 'p1', name: 'Tom Reed', role: 'floor' },
      readings: [
        [0, celsius],
        [until, celsius],
      ],
    },
  ]
}

function lowAt(curve: readonly CurvePoint[], hour: number): number {
  const found = curve.find(([at]) => at === hour)?.[2]
  if (found === undefined || found === null) throw new Error(`no low edge at ${hour}`)
  return found
}

describe('the hours of the lift as they stand', () => {
  it('are the planned ones while nothing is on record, and nothing is met', () => {
    const found = hours({ cast: null }, 10)
    expect(found).toMatchObject({ temperature: 'planned', share: 1, age: null, low: null })
    expect(found.first.state).toBe('at')
    // The exact hour of the plan lies within the straight line's minute of ours.
    expect(Math.abs((found.first.hour ?? 0) - (cure.hourLow ?? 0))).toBeLessThan(1 / 60)
    expect(found.conditions.some(({ met }) => met)).toBe(false)
  })

  it('move with the temperatures: later in the cold, earlier in the warm', () => {
    const at = (celsius: number) => hours({ temperatures: log(celsius, 12) }, 12).first.hour ?? Number.NaN
    const planned = hours({}, 12).first.hour ?? Number.NaN
    expect(at(10)).toBeGreaterThan(planned)
    expect(at(30)).toBeLessThan(planned)
    expect(at(20)).toBeCloseTo(planned, 1)
    expect(hours({ temperatures: log(10, 12) }, 12).temperature).toBe('logged')
  })

  it('move with results below the curve, by their share of it; results above it raise nothing', () => {
    const low = lowAt(cure.curve, 12)
    // One result of a mix whose scatter is 0.08: its low edge is the result less what one later test may lack.
    const factor = Math.exp(-1.645 * 0.08 * Math.SQRT2)
    const poor = hours({ specimens: [specimen((0.8 * low) / factor, { age: 12 })] }, 13)
    expect(poor.share).toBeCloseTo(0.8, 6)
    expect(poor.first.hour ?? 0).toBeGreaterThan(hours({}, 13).first.hour ?? Number.NaN)
    const rich = hours({ specimens: [specimen(40, { age: 12 })] }, 13)
    expect(rich.share).toBe(1)
    expect(rich.first.hour).toBe(hours({}, 13).first.hour)
  })

  it('a condition is met only by a result of the pour, whatever the hour', () => {
    const late = hours({}, 40)
    expect(late.first.hour ?? 99).toBeLessThan(40)
    expect(late.conditions.filter(({ met }) => met)).toEqual([])
    const tested = hours({ specimens: [specimen(30, { age: 39 })] }, 40)
    expect(tested.conditions.find(({ check }) => check === 'strength')?.met).toBe(true)
    expect(tested.low).toBeCloseTo(30 * Math.exp(-1.645 * 0.08 * Math.SQRT2), 9)
  })

  it('a result of tomorrow, a cube, or a log that cannot be used moves nothing', () => {
    const planned = hours({}, 12).first.hour
    expect(hours({ specimens: [specimen(3, { age: 30 })] }, 12).first.hour).toBe(planned)
    expect(hours({ specimens: [specimen(3, { age: 11, kind: 'cube' })] }, 12).first.hour).toBe(planned)
    const lost = hours(
      {
        temperatures: log(20, 12),
        cast: { entry: 'c1', at: '2026-06-01T12:00:00.000Z', bed: null, mix: 'X' },
      },
      12,
    )
    expect(lost.first).toMatchObject({ state: 'unknown', hour: null })
    expect(lost.first.why).toContain('mix of the pour')
  })
})
