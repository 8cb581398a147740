import { describe, expect, it } from 'vitest'
import { curingTime } from '../codes/eu/en13670-2009/curing-time.ts'
import { replay } from '../working/replay.ts'
import type { Step } from '../working/worked.ts'
import type { StrengthCurve } from '../yard/yard.ts'
import type { AgeMethod } from './age-method.ts'
import { hourMet } from './hour-met.ts'
import type { Reading } from './readings.ts'
import { strengthFromLog } from './strength-from-log.ts'
import { type StrengthSource, strengthModel } from './strength-model.ts'

const METHODS: AgeMethod[] = [
  { kind: 'arrhenius', reference: 20, activation: 38_000 },
  { kind: 'nurse-saul', reference: 23, datum: -10 },
  { kind: 'ec2' },
]
const CURVES: StrengthCurve[] = [
  { form: 'hyperbolic', ultimate: 55, rate: 0.036, offset: 4 },
  { form: 'exponential', ultimate: 60, tau: 20, shape: 0.9 },
  { form: 'ec2', mean28: 48, s: 0.25 },
]
const TESTS = [12, 18, 24, 48, 72, 168].map((age, index) => ({
  age,
  strength: [11.1, 18.6, 22.5, 34.3, 38.6, 47.4][index] ?? 0,
}))
const SOURCES: StrengthSource[] = [
  ...CURVES.flatMap((curve) => [{ curve }, { curve, scatter: 0.08 }, { curve, scatter: 0.9 }]),
  { tests: TESTS },
  { tests: TESTS.slice(0, 3), scatter: 0.1 },
]
const LOGS: Reading[][] = [
  [
    [0, 18],
    [6, 34],
    [12, 38],
    [20, 25],
  ],
  [
    [0, 4],
    [3, 0.5],
    [9, 12],
    [40, 20],
  ],
  Array.from({ length: 80 }, (_, hour): Reading => [hour, 20 + 10 * Math.sin(hour)]),
]

function held(steps: readonly Step[]): number {
  let replayed = 0
  for (const step of steps) {
    const value = replay(step)
    if (value === null) continue
    replayed += 1
    const result = Number(step.result)
    expect(Math.abs(value - result), `${step.symbol} = ${step.formula}`).toBeLessThanOrEqual(
      1e-9 * Math.max(1, Math.abs(result)),
    )
  }
  return replayed
}

describe('the working of the cure room', () => {
  it('gives its own results again: strength of a log', () => {
    let replayed = 0
    for (const method of METHODS)
      for (const source of SOURCES)
        for (const datum of [0, -10, 5])
          for (const readings of LOGS)
            replayed += held(strengthFromLog({ readings, source, method, datum }).working)
    expect(replayed).toBeGreaterThan(500)
  })

  it('gives its own results again: hour met', () => {
    let replayed = 0
    for (const method of METHODS) {
      for (const source of SOURCES) {
        const model = strengthModel({ source, method })
        if (!model.known) throw new Error(model.gaps.join())
        for (const edge of ['expected', 'low'] as const)
          for (const wanted of [3, 15, 30]) {
            const met = hourMet({
              model: model.value,
              method,
              wanted,
              celsius: 12,
              edge,
              readings: LOGS[0] ?? [],
            })
            if (met.known) replayed += held(met.working)
          }
      }
    }
    expect(replayed).toBeGreaterThan(50)
  })

  it('says which row of a table it read', () => {
    const days = curingTime({ curingClass: 3, surface: 18, development: 0.4 })
    expect(days.known && days.working[0]).toMatchObject({ by: 'table', unit: 'd' })
  })
})
