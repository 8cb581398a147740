import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { CurvePoint } from '../cure/cure-plan.ts'
import { replay } from '../working/replay.ts'
import { liftHours } from './hour.ts'
import { LIFT_STAGE_IDS, type LiftCondition } from './stages/stage.ts'

const seed = 20261125

/** Low edge 1 MPa an hour from 4 h on; expected strength 20 % above. */
const CURVE: readonly CurvePoint[] = Array.from({ length: 49 }, (_, hour): CurvePoint => {
  const low = Math.max(0, hour - 4)
  return [hour, low * 1.2, low, low * 1.4]
})
const WANTED = { strength: 15, from: 'lifting design LD-3' }

function condition(change: Partial<LiftCondition>): LiftCondition {
  return {
    check: 'lift-peak:release',
    stage: 'release',
    what: 'Tension, leaves the mould',
    strength: 12.5,
    never: false,
    gaps: [],
    ...change,
  }
}

function one(change: Partial<LiftCondition>, curve = CURVE) {
  const found = liftHours({ conditions: [condition(change)], wanted: WANTED, curve }).conditions[1]
  if (found === undefined) throw new Error('no condition')
  return found
}

describe('the hour of one condition', () => {
  it('is where the low edge of the band meets its strength, on a straight line between two hours', () => {
    // Low edge is the hour less 4: 12.5 MPa at 16.5 h, by hand.
    expect(one({})).toMatchObject({ state: 'at', hour: 16.5, why: [] })
    expect(one({ strength: 12 }).hour).toBe(16)
  })

  it('replays from its own numbers', () => {
    const [step] = one({ strength: 12.34 }).working
    if (step === undefined) throw new Error('no step')
    expect(replay(step)).toBeCloseTo(16.34, 9)
    expect(replay(step)).toBeCloseTo(Number(step.result), 9)
  })

  it.each<[string, Partial<LiftCondition>, object]>([
    ['always where strength does not matter', { strength: 0 }, { state: 'always', hour: 0, why: [] }],
    [
      'never where it fails at any strength',
      { strength: null, never: true },
      { state: 'never', hour: null, why: ['Tension, leaves the mould: at no strength'] },
    ],
    [
      'not known, with the reason, where the strength is not',
      { strength: null, gaps: ['load factor: no confirmed value'] },
      { state: 'unknown', hour: null, why: ['load factor: no confirmed value'] },
    ],
    [
      'not known where the strength is no number',
      { strength: Number.NaN },
      { state: 'unknown', hour: null, why: ['Tension, leaves the mould: strength not known'] },
    ],
    [
      'beyond the curve: nothing is said past its end',
      { strength: 44.01 },
      { state: 'beyond', hour: null, why: ['not within the computed hours'] },
    ],
    ['the last hour of the curve', { strength: 44 }, { state: 'at', hour: 48 }],
  ])('is %s', (_name, change, expected) => {
    expect(one(change)).toMatchObject(expected)
  })

  it('counts a dip: the hour is one from which the low edge does not fall below again', () => {
    const dip = CURVE.map(([hour, mean, low, high]): CurvePoint => [hour, mean, hour === 20 ? 10 : low, high])
    expect(one({ strength: 12 }, dip).hour).toBe(20 + 2 / 7)
  })

  it('is that of the first computed hour where the curve begins above it', () => {
    expect(one({ strength: 5 }, CURVE.slice(12)).hour).toBe(12)
  })

  it.each<[string, readonly CurvePoint[], string]>([
    ['no curve', [], 'strength by the hour'],
    [
      'a mix without scatter',
      CURVE.map(([hour, mean]): CurvePoint => [hour, mean, null, null]),
      'low edge of the strength: a scatter of the mix',
    ],
    [
      'a curve that is no number',
      [[10, Number.NaN, Number.NaN, Number.NaN]],
      'low edge of the strength: a scatter of the mix',
    ],
  ])('is not known with %s', (_name, curve, why) => {
    expect(one({}, curve)).toMatchObject({ state: 'unknown', hour: null, why: [why] })
  })
})

describe('the hour of a stage', () => {
  const conditions = [
    condition({}),
    condition({ check: 'lift-insert:release:A', what: 'Insert A, leaves the mould', strength: 14 }),
    condition({ check: 'lift-insert:release:B', what: 'Insert B, leaves the mould', strength: 13 }),
    condition({ check: 'lift-peak:travel', stage: 'travel', what: 'Tension, on the trailer', strength: 30 }),
  ]

  it('is that of its last condition, which is named', () => {
    const { stages, first } = liftHours({ conditions, wanted: WANTED, curve: CURVE })
    expect(stages.map(({ stage, hour, governing }) => [stage, hour, governing?.check])).toEqual([
      ['release', 18, 'lift-insert:release:A'],
      ['travel', 34, 'lift-peak:travel'],
    ])
    // What the design asks, 15 MPa, comes last: 19 h.
    expect(first).toMatchObject({ stage: 'first', state: 'at', hour: 19, governing: { check: 'strength' } })
  })

  it('never and not known stand before any hour; never before not known', () => {
    const first = (more: readonly Partial<LiftCondition>[]) =>
      liftHours({ conditions: [...conditions, ...more.map(condition)], wanted: WANTED, curve: CURVE }).first
    expect(first([{ check: 'x', strength: 90 }])).toMatchObject({
      state: 'beyond',
      governing: { check: 'x' },
    })
    const open = { check: 'y', strength: null, gaps: ['rigging'] }
    expect(first([{ check: 'x', strength: 90 }, open])).toMatchObject({
      state: 'unknown',
      hour: null,
      why: ['rigging'],
    })
    expect(first([open, { check: 'z', strength: null, never: true }])).toMatchObject({
      state: 'never',
      hour: null,
      governing: { check: 'z' },
    })
  })

  it('of the first lift is not known while nobody knows what is asked', () => {
    const { first } = liftHours({ conditions, wanted: null, curve: CURVE, gaps: ['lifting: no design'] })
    expect(first).toMatchObject({
      state: 'unknown',
      why: ['lifting: no design'],
      governing: { check: 'strength' },
    })
  })

  it('is put off where the results of the pour lie below its curve', () => {
    const hours = (share: number) => liftHours({ conditions, wanted: WANTED, curve: CURVE, share }).first.hour
    // 15 MPa of 0.8 of the low edge: 18.75 MPa, at 22.75 h.
    expect(hours(0.8)).toBe(22.75)
    expect(hours(1)).toBe(19)
    for (const share of [0, -1, 1.2, Number.NaN])
      expect(liftHours({ conditions, wanted: WANTED, curve: CURVE, share }).first.state).toBe('unknown')
  })
})

describe('always', () => {
  it(`more strength wanted is never earlier, a lower share never earlier (seed ${seed})`, () => {
    const curve = fc.array(fc.double({ min: 0, max: 60, noNaN: true }), { minLength: 2, maxLength: 60 })
    fc.assert(
      fc.property(
        curve,
        fc.double({ min: 0.1, max: 60, noNaN: true }),
        fc.double({ min: 0.1, max: 60, noNaN: true }),
        fc.double({ min: 0.1, max: 1, noNaN: true }),
        (lows, a, b, share) => {
          const points = lows.map((low, hour): CurvePoint => [hour, low, low, low])
          const hour = (strength: number, part: number) => {
            const { state, hour: at } = liftHours({
              conditions: [condition({ strength })],
              wanted: WANTED,
              curve: points,
              share: part,
            }).conditions[1] as ReturnType<typeof one>
            expect(at === null || Number.isFinite(at)).toBe(true)
            return state === 'at' ? (at ?? 0) : Number.POSITIVE_INFINITY
          }
          const [less, more] = [Math.min(a, b), Math.max(a, b)]
          expect(hour(less, 1)).toBeLessThanOrEqual(hour(more, 1))
          expect(hour(less, 1)).toBeLessThanOrEqual(hour(less, share))
          // From that hour on the curve itself never falls below.
          const at = hour(less, 1)
          for (const [when, low] of points.map(([when, , low]) => [when, low ?? 0] as const))
            if (when >= at) expect(low).toBeGreaterThanOrEqual(less)
        },
      ),
      { seed, numRuns: 300 },
    )
  })

  it('every stage that has a condition has an hour or a reason', () => {
    const conditions = LIFT_STAGE_IDS.map((stage, index) =>
      condition({ check: `lift-peak:${stage}`, stage, strength: index % 2 ? 10 : null, gaps: ['factor'] }),
    )
    for (const { hour, why } of liftHours({ conditions, wanted: WANTED, curve: CURVE }).stages)
      expect(hour === null).toBe(why.length > 0)
  })
})
