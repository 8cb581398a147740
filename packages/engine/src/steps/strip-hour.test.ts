import { describe, expect, it } from 'vitest'
import { codeFamily } from '../codes/index.ts'
import { planCure } from '../cure/plan-cure.ts'
import { casting, liftYard } from '../lift/reference-panels.ts'
import type { LiftCondition } from '../lift/stages/stage.ts'
import type { Plan } from '../plan.ts'
import { liftOnlyPlan, readyToStrip, yardFacts } from './example-facts.ts'
import { stripHour } from './strip-hour.ts'

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
const asked = cure.wanted?.strength ?? Number.NaN

function condition(change: Partial<LiftCondition>): LiftCondition {
  return {
    check: 'lift-peak:release',
    stage: 'release',
    what: 'Tension, leaves the mould',
    strength: 12,
    never: false,
    gaps: [],
    ...change,
  }
}

function hourOf(...conditions: LiftCondition[]) {
  const plan = { ...lift, lift: { ...lift.lift, conditions }, cure } as Plan
  const facts = { ...readyToStrip(), specimens: [] }
  return stripHour({ plan, facts, yard, now: '2026-06-01T12:00:00.000Z' })
}

describe('the hour of the first lift for a day’s plan', () => {
  it('is that of the strength asked where every condition wants less', () => {
    const found = hourOf(condition({ strength: asked / 2 }))
    expect(found).toMatchObject({ strength: asked, governs: { check: 'strength' }, open: [] })
  })

  it('is later where a condition of the lift wants more, and names it', () => {
    const found = hourOf(condition({ strength: asked + 5 }))
    expect(found).toMatchObject({ strength: asked + 5, governs: { check: 'lift-peak:release' } })
    expect(found.hour ?? 0).toBeGreaterThan(hourOf().hour ?? Number.NaN)
  })

  it('does not wait for a later stage', () => {
    expect(
      hourOf(condition({ stage: 'travel', check: 'lift-peak:travel', strength: asked + 5 })),
    ).toMatchObject({
      strength: asked,
    })
  })

  it('names what is not known, and has no hour where a condition is met at no strength or never in time', () => {
    const gap = hourOf(condition({ strength: null, gaps: ['rigging'] }))
    expect(gap.strength).toBe(asked)
    expect(gap.open).toEqual(['Tension, leaves the mould: not known'])
    expect(hourOf(condition({ strength: null, never: true }))).toMatchObject({
      hour: null,
      open: ['Tension, leaves the mould: met at no strength'],
    })
    expect(hourOf(condition({ strength: 400 })).hour).toBeNull()
  })
})
