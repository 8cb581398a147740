import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { AgeMethod } from './age-method.ts'
import { hourMet } from './hour-met.ts'
import type { Reading } from './readings.ts'
import { strengthFromLog } from './strength-from-log.ts'
import { type StrengthModel, type StrengthSource, strengthModel } from './strength-model.ts'
import { SEED } from './testing.ts'

const METHOD: AgeMethod = { kind: 'arrhenius', reference: 20, activation: 40_000 }
const SOURCE: StrengthSource = {
  curve: { form: 'hyperbolic', ultimate: 55, rate: 0.036, offset: 4 },
  scatter: 0.07,
}

function modelOf(source: StrengthSource): StrengthModel {
  const model = strengthModel({ source, method: METHOD })
  if (!model.known) throw new Error(model.gaps.join())
  return model.value
}

const ask = { model: modelOf(SOURCE), method: METHOD, wanted: 15, celsius: 20, edge: 'expected' } as const

describe('the hour at which a strength is met', () => {
  it('is that of the curve at its reference temperature', () => {
    // t0 + S / (k (Su − S)) = 4 + 15 / (0.036 · 40), by hand.
    expect(hourMet(ask)).toMatchObject({ known: true, value: 4 + 15 / 1.44 })
  })

  it('is later at the low edge', () => {
    const low = hourMet({ ...ask, edge: 'low' })
    expect(low.known && low.value).toBeCloseTo(16.376, 3)
  })

  it('is later in the cold', () => {
    const cold = hourMet({ ...ask, celsius: 10 })
    expect(cold.known && cold.value).toBeCloseTo(25.739, 2)
  })

  it('counts what was logged, and goes on from there', () => {
    const readings: Reading[] = [
      [0, 20],
      [6, 20],
    ]
    const on = hourMet({ ...ask, readings, celsius: 10 })
    expect(on.known && on.value).toBeCloseTo(6 + (4 + 15 / 1.44 - 6) / 0.5601, 2)
    const inside = hourMet({
      ...ask,
      readings: [
        [0, 20],
        [24, 20],
      ],
      celsius: 5,
    })
    expect(inside.known && inside.value).toBeCloseTo(4 + 15 / 1.44, 8)
  })

  it.each([
    ['the mix never reaches it', { wanted: 55 }],
    ['the low edge never reaches it', { wanted: 50, edge: 'low' as const }],
    ['nothing is wanted', { wanted: 0 }],
    ['the temperature is none', { celsius: Number.NaN }],
    [
      'readings are not in order',
      {
        readings: [
          [2, 20],
          [1, 20],
        ] as Reading[],
      },
    ],
  ])('is not known when %s', (_, change) => {
    expect(hourMet({ ...ask, ...change }).known).toBe(false)
  })

  it('is not known at the low edge of a mix without scatter', () => {
    const model = modelOf({ curve: SOURCE.curve })
    expect(hourMet({ ...ask, model }).known).toBe(true)
    expect(hourMet({ ...ask, model, edge: 'low' })).toMatchObject({
      gaps: [expect.stringMatching(/scatter/)],
    })
  })

  it('is not known where frost stops the clock', () => {
    const method: AgeMethod = { kind: 'nurse-saul', reference: 20, datum: 0 }
    expect(hourMet({ ...ask, method, celsius: -1 }).known).toBe(false)
  })

  it('of a mix known by tests lies between them, or at the first', () => {
    const model = modelOf({
      tests: [
        [12, 11.1],
        [18, 18.6],
        [24, 22.5],
        [48, 34.3],
        [72, 38.6],
        [168, 47.4],
      ].map(([age = 0, strength = 0]) => ({ age, strength })),
    })
    const at = hourMet({ ...ask, model, wanted: 20 })
    expect(at.known && at.value).toBeGreaterThan(18)
    expect(at.known && at.value).toBeLessThan(24)
    const low = hourMet({ ...ask, model, wanted: 20, edge: 'low' })
    expect(low.known && at.known && low.value > at.value).toBe(true)
    expect(hourMet({ ...ask, model, wanted: 5 })).toMatchObject({ value: 12 })
    expect(hourMet({ ...ask, model, wanted: 60 }).known).toBe(false)
  })

  it(`has just that strength in a log held to it (seed ${SEED})`, () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 45, noNaN: true }),
        fc.double({ min: 3, max: 60, noNaN: true }),
        fc.double({ min: 3, max: 60, noNaN: true }),
        (wanted, first, then) => {
          const readings: Reading[] = [
            [0, first],
            [5, then],
          ]
          const met = hourMet({ ...ask, wanted, celsius: then, readings, edge: 'low' })
          if (!met.known) return
          const log: Reading[] = met.value > 5 ? [...readings, [met.value, then]] : readings
          if (met.value <= 5) return
          const found = strengthFromLog({ readings: log, source: SOURCE, method: METHOD, datum: 0 })
          expect(found.low).toBeCloseTo(wanted, 6)
        },
      ),
      { seed: SEED },
    )
  })
})
